#include <algorithm>
#include <cmath>

#include "core/joint/size_chain.h"
#include "core/resolve/frames.h"
#include "core/resolve/holes.h"

namespace shoulderline {

namespace {

constexpr double kJustBehind = 1.0;  // mm past where the hole comes out

// Across the grain of `part`, on a face that `into` is square to: over its width, or where that is
// the way into the wood over its thickness.
struct AcrossGrain {
    Vec3 way;
    double extent = 0.0;
    double fromMiddle = 0.0;  // of `at`
    bool isWidth = true;
};

AcrossGrain acrossGrain(const ResolvedPart& part, Vec3 into, Vec3 at) {
    AcrossGrain across;
    across.isWidth = std::abs(dot(part.frame.y, into)) < 0.5;
    const int axis = across.isWidth ? 1 : 2;
    across.way = part.frame.axis(axis);
    across.extent = part.bodyBox().size()[axis];
    across.fromMiddle = std::abs(part.frame.toLocal(at)[axis] - across.extent / 2);
    return across;
}

bool isWoodAt(const ResolvedPart& part, Vec3 at) {
    const Vec3 local = part.frame.toLocal(at);
    if (!part.bodyBox().holds({local, local}, 0.0)) {
        return false;
    }
    const BodySolids wood = part.wood();
    return part.body.isBox() ||
           std::any_of(wood.pieces().begin(), wood.pieces().end(), [&](const ConvexSolid& piece) {
               return piece.contains(local);
           });
}

}  // namespace

std::optional<ScrewedTo> screwedTo(const ResolvedPiece& resolved,
                                   std::size_t part,
                                   const ResolvedHole& hole) {
    const ResolvedPart& own = resolved.parts[part];
    const Vec3 into = own.frame.directionToOuter(hole.into);
    const Vec3 mouth = own.frame.toOuter(hole.mouth);
    const Vec3 behind = mouth + into * (hole.depth.mm() + kJustBehind);
    for (std::size_t i = 0; i < resolved.parts.size(); ++i) {
        if (i == part || !isWoodAt(resolved.parts[i], behind)) {
            continue;
        }
        const AcrossGrain there = acrossGrain(resolved.parts[i], into, behind);
        const AcrossGrain here = acrossGrain(own, into, mouth);
        const bool isThere = there.extent >= here.extent;
        const AcrossGrain& moves = isThere ? there : here;
        return ScrewedTo{
            i, isThere ? i : part, moves.isWidth, moves.way, Length::mm(moves.fromMiddle)};
    }
    return std::nullopt;
}

void slotByRule(const Piece& piece,
                const SizingGuide& guide,
                Evaluation& evaluation,
                ResolvedPiece& resolved) {
    for (std::size_t i = 0; i < resolved.parts.size(); ++i) {
        ResolvedPart& part = resolved.parts[i];
        std::optional<Size> length;
        for (ResolvedCut& cut : part.cuts) {
            const bool isOpen = cut.hole && cut.hole->slot != SlotWay::Round &&
                                cut.hole->slotLength.state == SizeState::ByRule;
            if (!isOpen) {
                continue;
            }
            ResolvedHole& hole = *cut.hole;
            if (!hole.isForHead) {
                const std::optional<ScrewedTo> to = screwedTo(resolved, i, hole);
                if (!to) {
                    evaluation.trouble({"part", part.of, part.stated},
                                       "screw hole: the length of its slot is not stated, and "
                                       "nothing lies behind it whose movement would give it");
                    length.reset();
                    continue;
                }
                length = Size{};
                const double share = guide.rules[RuleId::SlotRoom].value;
                link(*length,
                     RuleId::SlotRoom,
                     to->distance,
                     hole.diameter,
                     hole.diameter + to->distance * share);
                toGrid(*length, snapUp(length->value, guide.grid), guide.grid);
            }
            if (length) {
                const int axis = longestAxis(hole.into);
                const Box before = cut.box;
                hole.slotLength = *length;
                cut.exact = solidOf(hole, cut.isThrough, piece.unit);
                cut.box = cut.exact->bounds();
                cut.box.min[axis] = before.min[axis];
                cut.box.max[axis] = before.max[axis];
            }
        }
    }
}

}  // namespace shoulderline
