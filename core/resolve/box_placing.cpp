#include "core/resolve/box_placing.h"

#include <algorithm>
#include <string>

#include "core/resolve/frames.h"

namespace shoulderline {

Size placedSize(Length value) {
    return {value, SizeState::ByRule, {{RuleId::PartPlaced, {}, {}, value}}};
}

bool liesOn(Side side, int axis) {
    const std::optional<AxisWay> way = wayOf(side);
    return way && way->axis == axis;
}

bool overlapsAlong(const Box& a, const Box& b, int axis) {
    return std::min(a.max[axis], b.max[axis]) - std::max(a.min[axis], b.min[axis]) > kApart;
}

void putAt(Box& box, int axis, Side face, double at, double size) {
    const std::optional<AxisWay> way = wayOf(face);
    const double low = !way ? at - size / 2 : (way->way > 0 ? at - size : at);
    box.min[axis] = low;
    box.max[axis] = low + size;
}

bool putAtPosition(Box& box,
                   int axis,
                   const Position& position,
                   double size,
                   std::string_view what,
                   const Place& place,
                   Evaluation& evaluation) {
    if (position.face != Side::Centre && !liesOn(position.face, axis)) {
        evaluation.trouble(
            place,
            std::string(what) + " is stated by the part's " + std::string(wordFor(position.face)) +
                ", which does not lie that way; use " + std::string(wordFor(sideOf(axis, false))) +
                ", " + std::string(wordFor(sideOf(axis, true))) + " or centre");
        return false;
    }
    const std::optional<Length> at = evaluation.length(position.at, place, what);
    if (!at) {
        return false;
    }
    putAt(box, axis, position.face, at->mm(), size);
    return true;
}

bool putInFrom(Box& box,
               int axis,
               const Setting& setting,
               const Box& from,
               double size,
               const Place& place,
               Evaluation& evaluation) {
    const std::optional<AxisWay> way = wayOf(setting.from);
    if (way && way->axis != axis) {
        evaluation.trouble(place,
                           "it is set from the " + std::string(wordFor(setting.from)) +
                               ", which does not lie across it; use " +
                               std::string(wordFor(sideOf(axis, false))) + ", " +
                               std::string(wordFor(sideOf(axis, true))) + " or centre");
        return false;
    }
    const std::optional<Length> by = evaluation.length(setting.by, place, "set-in", Length());
    if (!by) {
        return false;
    }
    if (!way) {
        putAt(box, axis, Side::Centre, from.centre()[axis] + by->mm(), size);
    } else if (way->way > 0) {
        putAt(box, axis, setting.from, from.max[axis] - by->mm(), size);
    } else {
        putAt(box, axis, setting.from, from.min[axis] + by->mm(), size);
    }
    return true;
}

}  // namespace shoulderline
