#include "core/check/rail_moves.h"

#include <cmath>

#include "core/check/checks.h"
#include "core/joint/joint_sizing.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

// The rail of a mortise, as stated, where it may be moved.
struct Rail {
    const Part& part;
    const Spans& spans;
};

std::optional<Rail> railOf(const Piece& piece,
                           const ResolvedPiece& resolved,
                           const MortiseSolid& mine) {
    const Part& part = piece.parts[resolved.parts[resolved.joints[mine.joint].tenoned].stated];
    const Spans* spans = std::get_if<Spans>(&part.relation);
    if (spans == nullptr || part.spacing) {
        return std::nullopt;
    }
    return Rail{part, *spans};
}

// A step that makers measure by, so that moved rails stay on it.
Length stepped(double mm) {
    return snapUp(Length::mm(mm), Length::inches(1.0 / 32));
}

// `statement` more by `by`, or less where that is negative.
Statement moved(const Statement& statement, Length by) {
    const bool isLess = by < Length();
    const std::string amount = CheckContext::statement(isLess ? -by : by);
    if (statement.empty()) {
        return isLess ? "-" + amount : amount;
    }
    return "(" + statement + ")" + (isLess ? " - " : " + ") + amount;
}

std::optional<RailMove> upOrDown(const Rail& rail,
                                 const MortiseSolid& mine,
                                 const Box& other,
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
    Part part = rail.part;
    Position& level = *std::get<Spans>(part.relation).level;
    level.at = moved(level.at, raises ? by : -by);
    return RailMove{
        raises ? RailMove::Way::Raise : RailMove::Way::Lower, by, {part.name, std::move(part)}};
}

void addAcross(const Rail& rail,
               const MortiseSolid& mine,
               const Box& other,
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
        // Which way that is from the face that the rail is set in from.
        const Vec3 towards = post.frame.axis(across) * way;
        const Side from = rail.spans.set.from == Side::Centre
                              ? sideOf(mainAxis(post.frame.axis(across)), true)
                              : rail.spans.set.from;
        const double inwards = -dot(towards, directionOf(from));
        if (std::abs(inwards) < 0.5) {
            continue;
        }
        Part part = rail.part;
        Setting& set = std::get<Spans>(part.relation).set;
        set.by = moved(set.by, inwards > 0 ? by : -by);
        moves.push_back({RailMove::Way::Across, by, {part.name, std::move(part)}});
    }
}

}  // namespace

std::string RailMove::text(const LengthStyle& style) const {
    const std::string amount = " by " + showLength(by, style, true);
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
    if (std::optional<RailMove> one = upOrDown(*rail, mine, other.box(), post, least)) {
        moves.push_back(std::move(*one));
    }
    addAcross(*rail,
              mine,
              other.box(),
              post,
              least,
              resolved.rules[RuleId::MortiseWallLeast].value,
              moves);
    return moves;
}

}  // namespace shoulderline
