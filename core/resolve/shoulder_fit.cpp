#include "core/resolve/shoulder_fit.h"

#include <optional>
#include <vector>

#include "core/resolve/shaped_face.h"

namespace shoulderline {

namespace {

// The planes of its ends in the member's own frame, once its box is known.
void takePlanes(const std::vector<HalfSpace>& planes, PlacedMember& member) {
    const Frame frame = frameOnBox(member.box, member.faceSide, member.faceEdge);
    for (const HalfSpace& plane : planes) {
        const Vec3 normal = frame.directionToLocal(plane.normal);
        member.ends.push_back({{normal, dot(normal, frame.toLocal(plane.normal * plane.offset))}});
    }
}

// Runs the end of a member on, or back, to a face that is shaped where it meets it.
// A shoulder that follows it at an angle comes back as its plane, the member within.
std::optional<HalfSpace> fitToShape(ShoulderFit fit,
                                    const Neighbour& end,
                                    int along,
                                    PlacedMember& member) {
    const bool isHigh = end.box.centre()[along] > member.box.centre()[along];
    Vec3 corner = member.box.min;
    corner[along] = isHigh ? member.box.max[along] : member.box.min[along];
    EndOver over{end.part, end.frame, corner, {}, {}};
    over.way[along] = isHigh ? 1.0 : -1.0;
    const Vec3 size = member.box.size();
    for (std::size_t side = 0; side < 2; ++side) {
        const int axis = (along + 1 + static_cast<int>(side)) % 3;
        over.sides[side][axis] = size[axis];
    }
    const std::optional<ShoulderOnFace> shoulder = shoulderOn(over);
    if (!shoulder) {
        return std::nullopt;
    }
    const double on = fit == ShoulderFit::Level ? shoulder->deepest : shoulder->reach;
    (isHigh ? member.box.max : member.box.min)[along] += isHigh ? on : -on;
    member.length = sizeFrom(RuleId::ShoulderToShoulder, Length::mm(member.box.size()[along]));
    if (fit == ShoulderFit::Level || shoulder->isSquare) {
        return std::nullopt;
    }
    const Vec3 normal = end.frame.directionToOuter(shoulder->plane.normal);
    return HalfSpace{normal, shoulder->plane.offset + dot(normal, end.frame.origin)};
}

}  // namespace

void fitToShapes(ShoulderFit fit,
                 const std::array<Neighbour, 2>& ends,
                 int along,
                 PlacedMember& member) {
    std::vector<HalfSpace> planes;
    for (const Neighbour& end : ends) {
        if (const std::optional<HalfSpace> plane = fitToShape(fit, end, along, member)) {
            planes.push_back(*plane);
        }
    }
    takePlanes(planes, member);
}

}  // namespace shoulderline
