#include "core/drawing/tenon_pegs.h"

#include <algorithm>

#include "core/drawing/fraction_text.h"
#include "core/resolve/frames.h"
#include "core/resolve/pegs.h"

namespace shoulderline {

namespace {

void addHole(const ResolvedPart& tenoned,
             const ResolvedPart& mortised,
             const TenonPeg& peg,
             const PartView& view,
             double scale,
             std::vector<Op>& ops) {
    const Frame toTenoned = relativeFrame(tenoned.frame, mortised.frame);
    const Box hole = toTenoned.outerBounds(peg.hole);
    Vec3 way;
    way[inwardOf(peg.face).axis] = 1.0;
    const bool isSeenInto = mainAxis(toTenoned.directionToOuter(way)) == inwardOf(view.face).axis;
    const Rect seen = view.toPlane(hole);
    const Vec2 low = seen.min * scale;
    const Vec2 high = seen.max * scale;
    if (isSeenInto) {
        ops.push_back(
            Stroke{{low, {high.x, low.y}, high, {low.x, high.y}, low}, LineRole::Visible});
        return;
    }
    for (const double x : {low.x, high.x}) {
        ops.push_back(Stroke{{{x, low.y}, {x, high.y}}, LineRole::Hidden});
    }
}

}  // namespace

std::vector<TenonPeg> pegsThroughTenonOf(const ResolvedPiece& resolved, std::size_t joint) {
    const ResolvedPart& part = resolved.parts[resolved.joints[joint].mortised];
    std::vector<TenonPeg> pegs;
    for (const ResolvedCut& cut : part.cuts) {
        for (const MortiseSolid& mortise : part.mortises) {
            if (mortise.joint != joint || mortise.isHaunch || !pinsTenon(cut, mortise)) {
                continue;
            }
            TenonPeg peg{cut.box, pegIn(cut), cut.peg->side, cut.face};
            for (int axis = 0; axis < 3; ++axis) {
                peg.hole.min[axis] = std::max(cut.box.min[axis], mortise.tenon.min[axis]);
                peg.hole.max[axis] = std::min(cut.box.max[axis], mortise.tenon.max[axis]);
            }
            pegs.push_back(peg);
        }
    }
    return pegs;
}

std::optional<std::string> tenonPegsText(const Piece& piece,
                                         const ResolvedPiece& resolved,
                                         std::size_t joint) {
    const std::vector<TenonPeg> pegs = pegsThroughTenonOf(resolved, joint);
    if (pegs.empty()) {
        return std::nullopt;
    }
    return std::to_string(pegs.size()) + (pegs.size() > 1 ? " peg mortises " : " peg mortise ") +
           letterLength(pegs.front().side, piece.style) +
           " square through the tenon, with the joint together";
}

std::vector<Op> tenonPegLines(const ResolvedPiece& resolved,
                              std::size_t part,
                              const PartView& view,
                              double scale) {
    std::vector<Op> ops;
    if (view.face == Face::StartEnd || view.face == Face::FarEnd) {
        return ops;
    }
    for (std::size_t joint = 0; joint < resolved.joints.size(); ++joint) {
        const ResolvedJoint& made = resolved.joints[joint];
        if (made.tenoned != part) {
            continue;
        }
        for (const TenonPeg& peg : pegsThroughTenonOf(resolved, joint)) {
            ops.push_back(BeginGroup{{SubjectKind::Joint, joint}, made.name});
            addHole(resolved.parts[part], resolved.parts[made.mortised], peg, view, scale, ops);
            ops.push_back(EndGroup{});
        }
    }
    return ops;
}

}  // namespace shoulderline
