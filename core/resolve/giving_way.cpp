#include "core/resolve/giving_way.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/geometry/box_solids.h"
#include "core/measure/length_text.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

// As the statement of a length: steps of 1/32 in are exact so.
std::string statementOf(Length length) {
    return showLength(length, LengthStyle::fractions(64)) + " in";
}

// `statement` more by `by`, or less where that is negative.
Statement more(const Statement& statement, Length by) {
    const bool isLess = by < Length();
    const std::string amount = statementOf(isLess ? -by : by);
    if (statement.empty()) {
        return isLess ? "-(" + amount + ")" : amount;
    }
    return "(" + statement + ")" + (isLess ? " - (" : " + (") + amount + ")";
}

const GivesWay* givingOf(const Part& part) {
    const Spans* spans = std::get_if<Spans>(&part.relation);
    const bool isGiving = spans != nullptr && !part.spacing && !spans->givesWay.to.empty() &&
                          spans->givesWay.towards != Side::Centre;
    return isGiving ? &spans->givesWay : nullptr;
}

// How far `mine` must be moved along `towards` (unit, in the part's frame) to leave `least` between
// it and `other`.
double shiftPast(const Box& mine, const Box& other, Vec3 towards, double least) {
    if (distance(mine, other) >= least - kLengthTolerance.mm()) {
        return 0.0;
    }
    const int axis = longestAxis(towards);
    const double gap = towards[axis] > 0 ? other.max[axis] + least - mine.min[axis]
                                         : mine.max[axis] + least - other.min[axis];
    return std::max(0.0, gap) / std::abs(towards[axis]);
}

}  // namespace

Vec3 mirroredIfTwin(const ResolvedPart& part, Vec3 direction) {
    const bool isTwin = dot(cross(part.frame.x, part.frame.y), part.frame.z) < 0.0;
    return isTwin ? Vec3{-direction.x, direction.y, direction.z} : direction;
}

std::vector<WayGiven> waysGiven(const Piece& piece, const ResolvedPiece& resolved) {
    const double least = resolved.rules[RuleId::MortiseGapLeast].value;
    std::vector<double> shifts(piece.parts.size(), 0.0);
    for (const ResolvedPart& post : resolved.parts) {
        for (const MortiseSolid& mine : post.mortises) {
            const ResolvedPart& made = resolved.parts[resolved.joints[mine.joint].tenoned];
            const std::size_t rail = made.stated;
            const GivesWay* giving = givingOf(piece.parts[rail]);
            if (giving == nullptr) {
                continue;
            }
            const Vec3 towards =
                post.frame.directionToLocal(mirroredIfTwin(made, directionOf(giving->towards)));
            for (const MortiseSolid& other : post.mortises) {
                const ResolvedJoint& joint = resolved.joints[other.joint];
                if (other.joint != mine.joint && resolved.parts[joint.tenoned].of == giving->to) {
                    shifts[rail] = std::max(
                        shifts[rail], shiftPast(mine.bounds(), other.bounds(), towards, least));
                }
            }
        }
    }
    std::vector<WayGiven> all;
    for (std::size_t i = 0; i < shifts.size(); ++i) {
        if (shifts[i] > kLengthTolerance.mm()) {
            all.push_back({i, snapUp(Length::mm(shifts[i]), Length::inches(1.0 / 32))});
        }
    }
    return all;
}

std::optional<Spans> movedTowards(const Spans& spans, Side towards, Length by) {
    const std::optional<AxisWay> way = wayOf(towards);
    if (!way) {
        return std::nullopt;
    }
    Spans moved = spans;
    constexpr int kUp = 2;
    const std::optional<AxisWay> level = wayOf(spans.level ? spans.level->face : Side::Centre);
    const bool isByLevel = level ? way->axis == level->axis : way->axis == kUp && !spans.flat;
    if (spans.level && isByLevel) {
        for (Position* one : {&*moved.level, moved.levelTo ? &*moved.levelTo : nullptr}) {
            if (one != nullptr && !one->at.empty()) {
                one->at = more(one->at, by * way->way);
            }
        }
        return moved;
    }
    const std::optional<AxisWay> from = wayOf(spans.set.from);
    if (from && from->axis != way->axis) {
        return std::nullopt;
    }
    // From a face inwards is positive; from the middle, towards the high side.
    moved.set.by = more(moved.set.by, by * (from ? -from->way * way->way : way->way));
    return moved;
}

std::optional<Piece> withWayGiven(const Piece& piece, const ResolvedPiece& resolved) {
    std::optional<Piece> moved;
    for (const WayGiven& given : waysGiven(piece, resolved)) {
        const Spans& spans = std::get<Spans>(piece.parts[given.part].relation);
        if (std::optional<Spans> further = movedTowards(spans, spans.givesWay.towards, given.by)) {
            if (!moved) {
                moved = piece;
            }
            moved->parts[given.part].relation = std::move(*further);
        }
    }
    return moved;
}

}  // namespace shoulderline
