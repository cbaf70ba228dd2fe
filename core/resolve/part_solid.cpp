#include <algorithm>
#include <cmath>

#include "core/geometry/box_solids.h"
#include "core/resolve/frames.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

namespace {

// Everything a box: exact and quick.
double volumeOfBoxes(const ResolvedPart& part, const std::vector<Box>& cuts) {
    std::vector<Box> wood{part.bodyBox()};
    for (const TenonSolid& tenon : part.tenons) {
        wood.push_back(tenon.box);
    }
    // What the cuts take is their union, as far as it lies in the wood: a mortise may run off the
    // part or into its neighbour.
    std::vector<Box> taken;
    for (const Box& cut : cuts) {
        for (const Box& solid : wood) {
            if (const std::optional<Box> shared = overlap(cut, solid)) {
                taken.push_back(*shared);
            }
        }
    }
    return unionVolume(wood) - unionVolume(taken);
}

}  // namespace

Box boundsInSpace(const ResolvedPart& part) {
    if (part.body.planes.empty()) {
        Box box = part.bodyBox();
        if (part.bend && part.body.edge) {
            const Rect edge = part.body.edge->bounds();
            box.min.z = edge.min.y;
            box.max.z = edge.max.y;
        }
        return part.frame.outerBounds(box);
    }
    std::optional<Box> around;
    const BodySolids wood = part.wood();
    for (const ConvexSolid& piece : wood.pieces()) {
        for (const Vec3& vertex : piece.vertices()) {
            const Vec3 at = part.frame.toOuter(vertex);
            around = around ? Box::around(*around, {at, at}) : Box{at, at};
        }
    }
    return around.value_or(part.frame.outerBounds(part.bodyBox()));
}

Box boundsOverTenons(const ResolvedPart& part) {
    Box box = boundsInSpace(part);
    for (const TenonSolid& tenon : part.tenons) {
        if (!tenon.exact) {
            box = Box::around(box, part.frame.outerBounds(tenon.box));
            continue;
        }
        for (const Vec3& vertex : tenon.exact->vertices()) {
            const Vec3 at = part.frame.toOuter(vertex);
            box = Box::around(box, {at, at});
        }
    }
    return box;
}

std::vector<Vec3> mouthRing(const MortiseSolid& mortise) {
    const auto [axis, way] = inwardOf(mortise.face);
    if (!mortise.exact) {
        const double at = way > 0 ? mortise.box.min[axis] : mortise.box.max[axis];
        const int u = (axis + 1) % 3;
        const int v = (axis + 2) % 3;
        const auto corner = [&, a = axis](double first, double second) {
            Vec3 p;
            p[a] = at;
            p[u] = first;
            p[v] = second;
            return p;
        };
        const Box& box = mortise.box;
        return {corner(box.min[u], box.min[v]),
                corner(box.max[u], box.min[v]),
                corner(box.max[u], box.max[v]),
                corner(box.min[u], box.max[v])};
    }
    // The side of the hollow that looks most nearly out of the face.
    const std::vector<ConvexSolid::Face>& sides = mortise.exact->faces();
    const auto open = std::min_element(
        sides.begin(), sides.end(), [&, a = axis, w = way](const auto& one, const auto& other) {
            return one.plane.normal[a] * w < other.plane.normal[a] * w;
        });
    std::vector<Vec3> ring;
    for (const int i : open->loop) {
        ring.push_back(mortise.exact->vertices()[static_cast<std::size_t>(i)]);
    }
    return ring;
}

Box mouthOf(const MortiseSolid& mortise) {
    const std::vector<Vec3> ring = mouthRing(mortise);
    Box mouth{ring.front(), ring.front()};
    for (const Vec3& corner : ring) {
        mouth = Box::around(mouth, {corner, corner});
    }
    return mouth;
}

namespace {

// Whether its mouth is not what it is behind: it goes in askew, or widens for wedges.
bool hasLeaningSides(const MortiseSolid& mortise) {
    if (!mortise.exact || mortise.isHaunch) {
        return false;
    }
    constexpr double kLeast = 1e-6;
    constexpr double kSide = 0.7;  // what looks into the wood more than that is its bottom
    const int axis = inwardOf(mortise.face).axis;
    const std::vector<ConvexSolid::Face>& faces = mortise.exact->faces();
    return std::any_of(faces.begin(), faces.end(), [&](const ConvexSolid::Face& side) {
        const double in = std::abs(side.plane.normal[axis]);
        return in > kLeast && in < kSide;
    });
}

}  // namespace

Box setOutBox(const MortiseSolid& mortise) {
    Box box = mortise.box;
    if (hasLeaningSides(mortise)) {
        const Box mouth = mouthOf(mortise);
        const int into = inwardOf(mortise.face).axis;
        for (int axis = 0; axis < 3; ++axis) {
            if (axis != into) {
                box.min[axis] = mouth.min[axis];
                box.max[axis] = mouth.max[axis];
            }
        }
    }
    return box;
}

Polyhedron polyhedronOf(const TenonSolid& tenon, const Frame& frame) {
    return tenon.exact ? tenon.exact->toPolyhedron().transformed(frame)
                       : Polyhedron::box(tenon.box, frame);
}

double volumeAsMade(const ResolvedPart& part) {
    std::vector<Box> cuts;
    bool areBoxes = part.body.isBox();
    for (const MortiseSolid& mortise : part.mortises) {
        cuts.push_back(mortise.box);
        areBoxes = areBoxes && !mortise.exact;
    }
    for (const TenonSolid& tenon : part.tenons) {
        areBoxes = areBoxes && !tenon.exact;
    }
    for (const ResolvedCut& cut : part.cuts) {
        cuts.push_back(cut.box);
        areBoxes = areBoxes && cut.kind != CutKind::Bore && !cut.exact;
    }
    if (areBoxes) {
        return volumeOfBoxes(part, cuts);
    }
    // With its arrises off, where those that are kept may have them still.
    const std::vector<ConvexSolid> wood =
        part.body.easings.empty() ? part.wood().pieces() : part.body.pieces();
    std::vector<ConvexSolid> tenons;
    for (const TenonSolid& tenon : part.tenons) {
        tenons.push_back(tenon.solid());
    }
    std::vector<ConvexSolid> taken;
    const auto take = [&](const ConvexSolid& cut) {
        for (const std::span<const ConvexSolid> present :
             {std::span(wood), std::span<const ConvexSolid>(tenons)}) {
            for (const ConvexSolid& solid : present) {
                if (std::optional<ConvexSolid> shared = intersection(cut, solid)) {
                    taken.push_back(std::move(*shared));
                }
            }
        }
    };
    for (const MortiseSolid& mortise : part.mortises) {
        take(mortise.solid());
    }
    for (const ResolvedCut& cut : part.cuts) {
        take(cut.solid());
    }
    // A body that could not be made came back as its blank, so its volume is there.
    return part.body.volume().value_or(0.0) + unionVolume(tenons) - unionVolume(taken);
}

}  // namespace shoulderline
