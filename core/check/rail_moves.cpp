#include "core/check/rail_moves.h"

#include <cmath>

#include "core/check/checks.h"
#include "core/joint/joint_sizing.h"
#include "core/resolve/frames.h"
#include "core/resolve/giving_way.h"

namespace shoulderline {

namespace {

// The rail of a mortise, as stated, where it may be moved.
struct Rail {
    const Part& part;
    const Spans& spans;
    const ResolvedPart& made;
};

std::optional<Rail> railOf(const Piece& piece,
                           const ResolvedPiece& resolved,
                           const MortiseSolid& mine) {
    const ResolvedPart& made = resolved.parts[resolved.joints[mine.joint].tenoned];
    const Part& part = piece.parts[made.stated];
    const Spans* spans = std::get_if<Spans>(&part.relation);
    if (spans == nullptr || part.spacing) {
        return std::nullopt;
    }
    return Rail{part, *spans, made};
}

// A step that makers measure by, so that moved rails stay on it.
Length stepped(double mm) {
    return snapUp(Length::mm(mm), Length::inches(1.0 / 32));
}

// The stated part whose mortise or bore `cavity` is; empty for a cut of the post's own.
std::string nameOfOther(const ResolvedPiece& resolved, const Cavity& cavity) {
    return cavity.joint ? resolved.parts[resolved.joints[*cavity.joint].tenoned].of : std::string();
}

// The rail giving way to `other`, which holds as sizes change; where it gives way to another part
// already, or the hollow is no part's, stated further that way by as much as it takes now.
std::optional<SetPart> givingWay(const Rail& rail,
                                 const std::string& other,
                                 Side towards,
                                 Length by) {
    Part part = rail.part;
    Spans& spans = std::get<Spans>(part.relation);
    const bool isFree = spans.givesWay.to.empty() || spans.givesWay.to == other;
    if (!other.empty() && isFree) {
        spans.givesWay = {other, towards};
    } else if (const std::optional<Spans> moved = movedTowards(spans, towards, by)) {
        spans = *moved;
    }
    if (part == rail.part) {
        return std::nullopt;
    }
    return SetPart{part.name, std::move(part)};
}

std::optional<RailMove> upOrDown(const Rail& rail,
                                 const MortiseSolid& mine,
                                 const Box& other,
                                 const std::string& otherName,
                                 const ResolvedPart& post,
                                 double least) {
    if (!rail.spans.level || std::abs(post.frame.x.z) < 0.5) {
        return std::nullopt;
    }
    const double up = other.max.x + least - mine.box.min.x;
    const double down = mine.box.max.x + least - other.min.x;
    const Length by = stepped(std::min(up, down));
    if (by <= Length()) {
        return std::nullopt;
    }
    const bool raises = (up <= down) == (post.frame.x.z > 0);
    std::optional<SetPart> edit = givingWay(rail, otherName, raises ? Side::Top : Side::Bottom, by);
    if (!edit) {
        return std::nullopt;
    }
    return RailMove{
        raises ? RailMove::Way::Raise : RailMove::Way::Lower, by, std::move(*edit), otherName};
}

void addAcross(const Rail& rail,
               const MortiseSolid& mine,
               const Box& other,
               const std::string& otherName,
               const ResolvedPart& post,
               double least,
               double wall,
               std::vector<RailMove>& moves) {
    const int entered = inwardOf(mine.face).axis;
    if (entered == 0) {
        return;
    }
    const int across = 3 - entered;
    const double up = other.max[across] + least - mine.box.min[across];
    const double down = mine.box.max[across] + least - other.min[across];
    const Box wood = post.bodyBox();
    for (const double way : {1.0, -1.0}) {
        const Length by = stepped(way > 0 ? up : down);
        const double left = way > 0 ? wood.max[across] - mine.box.max[across] - by.mm()
                                    : mine.box.min[across] - wood.min[across] - by.mm();
        if (by <= Length() || left < wall) {
            continue;
        }
        const Vec3 direction = mirroredIfTwin(rail.made, post.frame.axis(across) * way);
        const int axis = longestAxis(direction);
        const std::optional<AxisWay> from = wayOf(rail.spans.set.from);
        if (from && from->axis != axis) {
            continue;
        }
        if (std::optional<SetPart> edit =
                givingWay(rail, otherName, sideOf(axis, direction[axis] > 0), by)) {
            moves.push_back({RailMove::Way::Across, by, std::move(*edit), otherName});
        }
    }
}

}  // namespace

std::string RailMove::text(const LengthStyle& style) const {
    const std::string amount = " by " + showLength(by, style, true) +
                               (givesWayTo.empty() ? "" : ", giving way to " + givesWayTo);
    switch (way) {
        case Way::Raise:
            return "raise " + edit.name + amount;
        case Way::Lower:
            return "lower " + edit.name + amount;
        case Way::Across:
            break;
    }
    return "move " + edit.name + " across" + amount;
}

std::vector<RailMove> railMoves(const Piece& piece,
                                const ResolvedPiece& resolved,
                                const MortiseSolid& mine,
                                const Cavity& other,
                                const ResolvedPart& post,
                                double least) {
    std::vector<RailMove> moves;
    const std::optional<Rail> rail = railOf(piece, resolved, mine);
    if (!rail) {
        return moves;
    }
    const std::string name = nameOfOther(resolved, other);
    if (std::optional<RailMove> one = upOrDown(*rail, mine, other.box(), name, post, least)) {
        moves.push_back(std::move(*one));
    }
    addAcross(*rail,
              mine,
              other.box(),
              name,
              post,
              least,
              resolved.rules[RuleId::MortiseWallLeast].value,
              moves);
    return moves;
}

}  // namespace shoulderline
