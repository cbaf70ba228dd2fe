#include "core/drawing/cut_joint.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/hatching.h"
#include "core/drawing/joint_further.h"
#include "core/drawing/joint_section.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

// A plane through a joint: x to the right and y up in it, z towards the viewer; and what of it is
// shown, in millimetres of wood.
struct Cutting {
    // What is dimensioned: along x and y, and what its width and height are; none of an empty name.
    struct Hole {
        Rect rect;
        std::string wide;
        std::string high;
        DimensionSide highStands = DimensionSide::RightOf;
    };
    Frame frame;
    Box window;
    std::vector<Hole> holes;
    std::string label = {};  // where the joint has more pictures than one
};

using Solids = std::vector<ConvexSolid>;

// The wood of a part near the joint, as cut by it, in the plane's frame.
Solids woodIn(const ResolvedPart& part, const Cutting& cutting) {
    const Frame toPlane = relativeFrame(cutting.frame, part.frame);
    const ConvexSolid window = ConvexSolid::box(cutting.window);
    Solids wood;
    const BodySolids body = part.wood();
    for (const ConvexSolid& piece : body.pieces()) {
        if (std::optional<ConvexSolid> seen = intersection(piece.transformed(toPlane), window)) {
            wood.push_back(std::move(*seen));
        }
    }
    const auto take = [&](const ConvexSolid& hollow) {
        Solids left;
        for (const ConvexSolid& piece : wood) {
            Solids rest = difference(piece, hollow);
            left.insert(left.end(), rest.begin(), rest.end());
        }
        wood = std::move(left);
    };
    for (const ResolvedCut& cut : part.cuts) {
        take(cut.solid().transformed(toPlane));
    }
    for (const MortiseSolid& mortise : part.mortises) {
        take(mortise.solid().transformed(toPlane));
    }
    return wood;
}

std::vector<Ring> ringsOf(const Solids& wood, double scale) {
    constexpr double kHair = 1e-4;  // off the middle, so that no corner lies in the plane
    std::vector<Ring> rings;
    for (const ConvexSolid& solid : wood) {
        if (Ring ring = ringAt(solid.toPolyhedron(), kHair, scale); !ring.empty()) {
            rings.push_back(std::move(ring));
        }
    }
    return rings;
}

Frame through(Vec3 origin, Vec3 right, Vec3 up) {
    return {origin, right, up, cross(right, up)};
}

const ResolvedCut* firstCut(const ResolvedPart& part, std::size_t joint) {
    const auto it = std::find_if(part.cuts.begin(), part.cuts.end(), [joint](const auto& cut) {
        return cut.joint == joint;
    });
    return it == part.cuts.end() ? nullptr : &*it;
}

constexpr double kApart = 0.01;  // millimetres

Rect flat(const Box& box) {
    return {{box.min.x, box.min.y}, {box.max.x, box.max.y}};
}

// A panel's edge: to the right into the grooved part, upwards through the panel's thickness.
Cutting grooved(const ResolvedPiece& resolved, const ResolvedJoint& joint) {
    constexpr double kBefore = 3.0;  // times the depth of the groove
    const ResolvedPart& member = resolved.parts[joint.mortised];
    const double depth = joint.size(SizeName::GrooveDepth)->value.mm();
    const double width = joint.size(SizeName::GrooveWidth)->value.mm();
    Cutting cutting;
    cutting.frame = through(joint.frame.origin, joint.frame.x, joint.frame.z);
    const Box box = relativeFrame(cutting.frame, member.frame).outerBounds(member.bodyBox());
    const double beyond = std::min(box.max.x, depth * (1 + kBefore));
    const double over = std::max(width, resolved.parts[joint.tenoned].thickness.value.mm());
    cutting.window = {{-depth * kBefore, std::min(box.min.y, -over) - 1.0, -1.0},
                      {beyond, std::max(box.max.y, over) + 1.0, 1.0}};
    cutting.holes = {{{{0.0, -width / 2}, {depth, width / 2}}, "groove depth", "groove width"}};
    return cutting;
}

// Along a part through a cut into it, as the part's sheet shows it: seen from its face side with
// the face edge up, or from its face edge with the face side down.
Frame alongCut(const ResolvedPart& part, Face cutInto, Vec3 origin) {
    const bool isInEdge = inwardOf(cutInto).axis == 1;
    const Vec3 up = isInEdge ? -part.frame.y : part.frame.z;
    const Vec3 viewer = isInEdge ? -part.frame.z : -part.frame.y;
    return through(origin, cross(up, viewer), up);
}

// A cross lap cut along one of the two: `isFirst` along the first.
Cutting lapped(const ResolvedPiece& resolved,
               const ResolvedJoint& joint,
               std::size_t index,
               bool isFirst) {
    const ResolvedPart& part = resolved.parts[isFirst ? joint.tenoned : joint.mortised];
    const ResolvedCut* cut = firstCut(part, index);
    Cutting cutting;
    cutting.label = part.of + ", cut along";
    cutting.frame = alongCut(part, cut != nullptr ? cut->face : Face::FaceEdge, joint.frame.origin);
    const Frame toPlane = relativeFrame(cutting.frame, part.frame);
    const Box wood = toPlane.outerBounds(part.bodyBox());
    const Box notch = cut != nullptr ? toPlane.outerBounds(cut->box) : wood;
    const double reach = notch.size().x * 1.5;
    const ResolvedPart& other = resolved.parts[isFirst ? joint.mortised : joint.tenoned];
    const Box there = relativeFrame(cutting.frame, other.frame).outerBounds(other.bodyBox());
    cutting.window = {{notch.min.x - reach, std::min(wood.min.y, there.min.y) - 1.0, -1.0},
                      {notch.max.x + reach, std::max(wood.max.y, there.max.y) + 1.0, 1.0}};
    cutting.holes = {{flat(notch), "lap width", "lap depth"}};
    return cutting;
}

// A butt through its first hole: to the right along the hole.
Cutting bored(const ResolvedPiece& resolved, const ResolvedJoint& joint, std::size_t index) {
    const ResolvedPart& through_ = resolved.parts[joint.tenoned];
    Cutting cutting;
    const ResolvedCut* hole = firstCut(through_, index);
    if (hole == nullptr) {
        return cutting;
    }
    const auto [axis, way] = inwardOf(hole->face);
    Vec3 right;
    right[axis] = way;
    Vec3 up;
    up[axis == 0 ? 1 : 0] = 1.0;
    Vec3 mouth = hole->box.centre();
    mouth[axis] = way > 0 ? hole->box.min[axis] : hole->box.max[axis];
    // A dowel's hole runs from the butt into the tenoned part: draw it the other way round.
    const double turn = joint.kind == JointKind::Dowelled ? -1.0 : 1.0;
    cutting.frame = through(through_.frame.toOuter(mouth),
                            through_.frame.directionToOuter(right) * turn,
                            through_.frame.directionToOuter(up));
    const ResolvedPart& into = resolved.parts[joint.mortised];
    const ResolvedCut* behind = firstCut(into, index);
    const Box far = behind != nullptr
                        ? relativeFrame(cutting.frame, into.frame).outerBounds(behind->box)
                        : Box{{0, 0, 0}, {10, 1, 1}};
    const Box own = relativeFrame(cutting.frame, through_.frame).outerBounds(hole->box);
    const double thick = std::max(own.size().y, far.size().y);
    const double margin = std::max(2.5 * thick, 8.0);
    cutting.window = {{std::min(own.min.x, far.min.x) - 2.0 * thick, -margin, -1.0},
                      {far.max.x + 2.0 * thick, margin, 1.0}};
    if (joint.kind == JointKind::Dowelled) {
        cutting.holes = {{flat(far), "bore depth", "dowel diameter"}};
        return cutting;
    }
    cutting.holes = {{flat(far), "pilot depth", "pilot diameter"},
                     {flat(own), "", "clearance diameter", DimensionSide::LeftOf}};
    for (const ResolvedCut& cut : through_.cuts) {
        const Box plug = relativeFrame(cutting.frame, through_.frame).outerBounds(cut.box);
        const bool isAtThisHole = cut.joint == index && plug.size().y > own.size().y + kApart &&
                                  std::abs(plug.centre().y) < kApart &&
                                  std::abs(plug.centre().z) < kApart;
        if (isAtThisHole) {
            cutting.holes.push_back(
                {flat(plug), "plug depth", "plug diameter", DimensionSide::LeftOf});
        }
    }
    return cutting;
}

std::vector<Cutting> cuttingsOf(const ResolvedPiece& resolved, std::size_t index) {
    const ResolvedJoint& joint = resolved.joints[index];
    if (joint.form().isDry()) {
        return {grooved(resolved, joint)};
    }
    if (joint.kind == JointKind::CrossLap) {
        return {lapped(resolved, joint, index, true), lapped(resolved, joint, index, false)};
    }
    if (firstCut(resolved.parts[joint.tenoned], index) == nullptr) {
        return {};
    }
    return {bored(resolved, joint, index)};
}

// Sides that the window saws off are left open.
bool isSawn(const SectionLine& line, const Box& window, double scale) {
    const auto at = [&](double a, double b, double edge) {
        return std::abs(a - edge * scale) < 1e-6 && std::abs(b - edge * scale) < 1e-6;
    };
    return at(line.a.x, line.b.x, window.min.x) || at(line.a.x, line.b.x, window.max.x) ||
           at(line.a.y, line.b.y, window.min.y) || at(line.a.y, line.b.y, window.max.y);
}

// The way that a part's wood is hatched in a plane: with the grain that lies in it, else across.
Angle grainIn(const ResolvedPart& part, const Cutting& cutting, double across) {
    const Vec3 grain = cutting.frame.directionToLocal(part.frame.x);
    if (std::abs(grain.z) > 0.5) {
        return Angle::degrees(across);
    }
    return Angle::degrees(std::abs(grain.x) > 0.5 ? 0.0 : 90.0);
}

// The blank's face that a hole is measured from, where the wood has been shaped away from it.
void addBlankLine(const Cutting& cutting, const Rect& wood, double scale, std::vector<Op>& ops) {
    double face = wood.min.x;
    for (const Cutting::Hole& hole : cutting.holes) {
        face = std::min(face, hole.rect.min.x * scale);
    }
    if (wood.min.x - face > kApart) {
        ops.push_back(Stroke{{{face, wood.min.y}, {face, wood.max.y}}, LineRole::Neighbour});
    }
}

std::vector<Op> sectionThrough(const Piece& piece,
                               const ResolvedPiece& resolved,
                               std::size_t index,
                               const Cutting& cutting,
                               const JointStyle& style,
                               const TextMetrics& metrics) {
    const ResolvedJoint& joint = resolved.joints[index];
    const double scale = style.scale;
    std::vector<Op> ops;
    const auto flip = [](Vec2 p) { return Vec2{p.x, -p.y}; };
    for (const std::size_t p : {joint.mortised, joint.tenoned}) {
        const ResolvedPart& part = resolved.parts[p];
        std::vector<Ring> rings = ringsOf(woodIn(part, cutting), scale);
        for (const SectionLine& line : outlineOf(rings)) {
            if (!isSawn(line, cutting.window, scale)) {
                ops.push_back(Stroke{{flip(line.a), flip(line.b)}, LineRole::Visible});
            }
        }
        CutFace face;
        for (Ring& ring : rings) {
            std::transform(ring.begin(), ring.end(), ring.begin(), flip);
            face.rings.push_back(std::move(ring));
        }
        const double across = p == joint.mortised ? 45.0 : -45.0;
        std::vector<Op> lines = hatch(face, grainIn(part, cutting, across), kHatchSpacing);
        ops.insert(ops.end(), lines.begin(), lines.end());
    }
    addBlankLine(cutting, boundsOf(ops, metrics), scale, ops);
    const Rect drawn = boundsOf(ops, metrics);
    const Subject subject{SubjectKind::Joint, index};
    const auto size = [&](double from, double to, double depth, double value, std::string of) {
        return SizeToPlace{std::min(from, to) * scale,
                           std::max(from, to) * scale,
                           depth,
                           depth,
                           letterLength(Length::mm(value), piece.style),
                           value,
                           std::move(of),
                           subject,
                           0};
    };
    std::vector<SizeToPlace> above;
    std::vector<SizeToPlace> below;
    std::vector<SizeToPlace> right;
    std::vector<SizeToPlace> left;
    for (const Cutting::Hole& hole : cutting.holes) {
        const Rect& rect = hole.rect;
        const double down = drawn.max.y + rect.min.y * scale;
        if (!hole.wide.empty()) {
            const double up = -rect.max.y * scale - drawn.min.y;
            (up < down - kApart ? above : below)
                .push_back(size(rect.min.x,
                                rect.max.x,
                                std::max(0.0, std::min(up, down)),
                                rect.size().x,
                                hole.wide));
        }
        const bool isRight = hole.highStands == DimensionSide::RightOf;
        (isRight ? right : left)
            .push_back(size(-rect.max.y,
                            -rect.min.y,
                            isRight ? drawn.max.x - rect.max.x * scale
                                    : std::max(rect.min.x * scale - drawn.min.x, 0.0),
                            rect.size().y,
                            hole.high));
    }
    if (const Size* tongue = joint.size(SizeName::TongueLength)) {
        below.push_back(size(0.0,
                             tongue->value.mm(),
                             drawn.max.y + cutting.holes.front().rect.min.y * scale,
                             tongue->value.mm(),
                             "tongue length"));
        if (const auto own = tongueFromShoulder(resolved.parts[joint.tenoned], index)) {
            below.push_back(size((tongue->value - *own).mm(),
                                 tongue->value.mm(),
                                 0.0,
                                 own->mm(),
                                 "tongue from its shoulder"));
        }
    }
    const auto place = [&](std::vector<SizeToPlace> sizes, DimensionSide side, double edge) {
        const bool isFlat = side == DimensionSide::Below || side == DimensionSide::Above;
        std::vector<Op> placed =
            isFlat
                ? placeSizes(std::move(sizes), side, edge, style.dimensions, metrics)
                : placeSizes(
                      std::move(sizes), side, edge, style.dimensions, metrics, {-1e9, drawn.max.y});
        ops.insert(ops.end(), placed.begin(), placed.end());
    };
    place(std::move(above), DimensionSide::Above, drawn.min.y);
    place(std::move(below), DimensionSide::Below, drawn.max.y);
    place(std::move(right), DimensionSide::RightOf, drawn.max.x);
    place(std::move(left), DimensionSide::LeftOf, drawn.min.x);
    return ops;
}

}  // namespace

std::vector<Op> cutJointOps(const Piece& piece,
                            const ResolvedPiece& resolved,
                            std::size_t joint,
                            const JointStyle& style,
                            const TextMetrics& metrics) {
    constexpr double kBetween = 8.0;
    std::vector<Op> all;
    double x = 0.0;
    for (const Cutting& cutting : cuttingsOf(resolved, joint)) {
        std::vector<Op> ops = sectionThrough(piece, resolved, joint, cutting, style, metrics);
        if (!cutting.label.empty()) {
            const Rect drawn = boundsOf(ops, metrics);
            const double height = style.dimensions.height;
            ops.push_back(TextOp{{drawn.min.x, drawn.max.y + 2.0 + height},
                                 cutting.label,
                                 height,
                                 Align::Left,
                                 false,
                                 false});
        }
        const Rect bounds = boundsOf(ops, metrics);
        move(ops, Vec2{x, 0.0} - bounds.min);
        x += bounds.size().x + kBetween;
        all.insert(all.end(), ops.begin(), ops.end());
    }
    return all;
}

double widthOfCutJoint(const ResolvedPiece& resolved, std::size_t joint) {
    double width = 0.0;
    for (const Cutting& cutting : cuttingsOf(resolved, joint)) {
        width += cutting.window.size().x;
    }
    return std::max(width, 1.0);
}

}  // namespace shoulderline
