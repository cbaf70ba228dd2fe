#include "core/drawing/dimension_parts.h"
#include "core/drawing/joint_pictures.h"
#include "core/drawing/section_drawing.h"
#include "core/measure/length_text.h"

namespace shoulderline {

// The wedge of a tusk tenon by itself, as it is seen on the tenon's edge.
std::vector<Op> JointPictures::wedge() const {
    std::vector<Op> ops;
    const Polyhedron solid = members_.wedge->toPolyhedron();
    draw({solid}, {}, kOnEdge, ops);
    const Box box = members_.wedge->bounds();
    const Rect seen = onSheet(box, kOnEdge);
    double narrow = box.max.x;  // of the sloping side at the narrow end
    for (const Vec3& corner : solid.vertices) {
        const bool isAtNarrow = members_.isTurnedOver
                                    ? corner.z < box.min.z + kLengthTolerance.mm()
                                    : corner.z > box.max.z - kLengthTolerance.mm();
        if (isAtNarrow && corner.x > box.min.x + 1e-6) {
            narrow = corner.x;
        }
    }
    const double tip = onSheet(Vec3{narrow, 0.0, 0.0}, kOnEdge).x;
    append(ops,
           placeSizes({size(seen.min.y, seen.max.y, 0.0, box.size().z, "wedge length")},
                      DimensionSide::RightOf,
                      seen.max.x,
                      style_.dimensions,
                      metrics_,
                      FigureRoom::upTo(seen.max.y)));
    append(ops,
           placeSizes({size(seen.min.x, seen.max.x, 0.0, box.size().x, "wide end of the wedge")},
                      DimensionSide::Below,
                      seen.max.y,
                      style_.dimensions,
                      metrics_,
                      FigureRoom::upTo(seen.max.x + 2.0)));
    const std::vector<Op> placed = ops;
    append(ops,
           placeClearOf(placed,
                        {size(seen.min.x, tip, 0.0, narrow - box.min.x, "narrow end of the wedge")},
                        DimensionSide::Above,
                        seen.min.y,
                        style_.dimensions,
                        metrics_,
                        FigureRoom::upTo(seen.max.x)));
    addLabel("wedge, " + letterLength(Length::mm(box.size().y), piece_.style) + " thick", ops);
    return ops;
}

}  // namespace shoulderline
