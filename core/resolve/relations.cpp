#include "core/resolve/relations.h"

#include <algorithm>
#include <cmath>

#include "core/resolve/box_placing.h"
#include "core/resolve/shoulder_fit.h"
#include "core/resolve/spacing.h"

namespace shoulderline {

Size sizeFrom(RuleId rule, Length value) {
    return {value,
            rule == RuleId::Stated ? SizeState::Stated : SizeState::ByRule,
            {{rule, {}, {}, value}}};
}

namespace {

int otherAxis(int a, int b) {
    return 3 - a - b;
}

}  // namespace

Side outward(int axis) {
    return axis == 0 ? Side::Right : (axis == 1 ? Side::Front : Side::Top);
}

MemberAxes axesOf(const Spans& spans, int along, const Neighbour& from) {
    constexpr int kUp = 2;
    if (along != kUp) {
        const int level = otherAxis(along, kUp);
        return spans.flat ? MemberAxes{along, level, kUp} : MemberAxes{along, kUp, level};
    }
    // An upright member lies in the plane of the part it rises from, unless it is turned flat to
    // it.
    const int run = std::abs(from.lengthDirection.y) > 0.5 ? 1 : 0;
    const int across = otherAxis(along, run);
    return spans.flat ? MemberAxes{along, across, run} : MemberAxes{along, run, across};
}

namespace {

// Lays out a set along `axis`, on which each member takes up `size`: the boxes with that axis
// filled.
std::vector<Box> fillAlong(Box box,
                           int axis,
                           const Spacing& spacing,
                           const std::array<Neighbour, 2>& between,
                           Length size,
                           Length& gap,
                           const Place& place,
                           Evaluation& evaluation) {
    std::vector<Box> boxes;
    const Box& a = between[0].box;
    const Box& b = between[1].box;
    const bool inOrder = a.centre()[axis] < b.centre()[axis];
    const double low = inOrder ? a.max[axis] : b.max[axis];
    const double high = inOrder ? b.min[axis] : a.min[axis];
    const SetLayout layout = layOut(spacing, low, high, size, place, evaluation);
    gap = layout.gap;
    for (const double at : layout.lows) {
        box.min[axis] = at;
        box.max[axis] = at + size.mm();
        boxes.push_back(box);
    }
    return boxes;
}

// The axis along which a set lies: that on which the two parts it lies between are furthest apart,
// of those across the member. None with a trouble where they leave no room.
std::optional<int> axisOfSet(const std::array<Neighbour, 2>& between,
                             int along,
                             const Place& place,
                             Evaluation& evaluation) {
    const auto room = [&](int axis) {
        return std::max(between[1].box.min[axis] - between[0].box.max[axis],
                        between[0].box.min[axis] - between[1].box.max[axis]);
    };
    const int first = (along + 1) % 3;
    const int second = (along + 2) % 3;
    const int axis = room(first) >= room(second) ? first : second;
    if (room(axis) < kApart) {
        evaluation.trouble(place, "the two parts that the set lies between leave no room for it");
        return std::nullopt;
    }
    return axis;
}

// Around the top of a part: of one that leans, only what lies highest.
Box topOf(const Neighbour& neighbour) {
    if (neighbour.isSquare) {
        return neighbour.box;
    }
    std::optional<Box> top;
    const BodySolids wood = neighbour.part->wood();
    for (const ConvexSolid& piece : wood.pieces()) {
        for (const Vec3& vertex : piece.vertices()) {
            const Vec3 at = neighbour.frame.toOuter(vertex);
            if (at.z > neighbour.box.max.z - kLengthTolerance.mm()) {
                top = top ? Box::around(*top, {at, at}) : Box{at, at};
            }
        }
    }
    return top.value_or(neighbour.box);
}

}  // namespace

PlacedMember spanningMember(const Part& part,
                            const Spans& spans,
                            const Section& section,
                            const MemberAxes& axes) {
    PlacedMember member;
    member.width = section.width;
    member.thickness = section.thickness;
    member.faceSide = spans.set.from != Side::Centre ? spans.set.from : outward(axes.thickness);
    const Side usualEdge =
        axes.width == 0 ? (axes.thickness == 1 ? Side::Left : Side::Right) : outward(axes.width);
    member.faceEdge = liesOn(part.faceEdge, axes.width) ? part.faceEdge : usualEdge;
    return member;
}

std::optional<int> facingAxis(const Box& a, const Box& b) {
    for (int axis = 0; axis < 3; ++axis) {
        const double gap = std::max(b.min[axis] - a.max[axis], a.min[axis] - b.max[axis]);
        if (gap > kApart && overlapsAlong(a, b, (axis + 1) % 3) &&
            overlapsAlong(a, b, (axis + 2) % 3)) {
            return axis;
        }
    }
    return std::nullopt;
}

std::optional<PlacedMember> placeStanding(const Part& part,
                                          const Stands& stands,
                                          const Section& section,
                                          const Place& place,
                                          Evaluation& evaluation) {
    PlacedMember member;
    member.width = section.width;
    member.thickness = section.thickness;
    // The face edge and the width lie in depth for a post marked from the front, across for one
    // marked from the back, so that the other reference face is the outer one and the length runs
    // up.
    const Side edge = part.faceEdge != Side::Centre ? part.faceEdge : Side::Centre;
    const bool fromBack = edge == Side::Centre && stands.y.face == Side::Back;
    member.faceEdge = fromBack ? Side::Right : (edge == Side::Centre ? Side::Front : edge);
    const std::optional<AxisWay> edgeWay = wayOf(member.faceEdge);
    if (!edgeWay || edgeWay->axis == 2) {
        evaluation.trouble(place, "the face edge of a post looks left, right, front or back");
        return std::nullopt;
    }
    // length = width x thickness runs up only when the face side lies a quarter turn on.
    const Vec3 sideDirection = cross(Vec3{0, 0, 1}, directionOf(member.faceEdge));
    for (const Side side : {Side::Left, Side::Right, Side::Front, Side::Back}) {
        if (dot(directionOf(side), sideDirection) > 0.5) {
            member.faceSide = side;
        }
    }
    const int widthAxis = edgeWay->axis;
    const double across[2] = {(widthAxis == 0 ? section.width : section.thickness).value.mm(),
                              (widthAxis == 1 ? section.width : section.thickness).value.mm()};
    const std::optional<Length> foot = evaluation.length(stands.foot, place, "foot", Length());
    const std::optional<Length> height = evaluation.length(stands.height, place, "height");
    if (!putAtPosition(member.box, 0, stands.x, across[0], "x", place, evaluation) ||
        !putAtPosition(member.box, 1, stands.y, across[1], "y", place, evaluation) || !foot ||
        !height) {
        return std::nullopt;
    }
    if (height->mm() - foot->mm() < kApart) {
        evaluation.trouble(place, "its height is not above its foot");
        return std::nullopt;
    }
    member.box.min.z = foot->mm();
    member.box.max.z = height->mm();
    member.length = sizeFrom(RuleId::Stated, *height - *foot);
    if (!stands.rake.empty() || !stands.splay.empty()) {
        return placeLeaning(part, stands, member, section, place, evaluation);
    }
    return member;
}

std::vector<PlacedMember> placeSpanning(const Part& part,
                                        const Spans& spans,
                                        const Section& section,
                                        const std::array<Neighbour, 2>& ends,
                                        const std::optional<std::array<Neighbour, 2>>& between,
                                        const Place& place,
                                        Evaluation& evaluation) {
    const Box& a = ends[0].box;
    const Box& b = ends[1].box;
    const std::optional<int> along = facingAxis(a, b);
    if (!along) {
        evaluation.trouble(
            place,
            "'" + spans.from + "' and '" + spans.to + "' do not face each other across a gap",
            RuleId::FacesSquarely);
        return {};
    }
    const MemberAxes axes = axesOf(spans, *along, ends[0]);
    PlacedMember member = spanningMember(part, spans, section, axes);
    const bool upwards = b.min[*along] > a.max[*along];
    member.box.min[*along] = upwards ? a.max[*along] : b.max[*along];
    member.box.max[*along] = upwards ? b.min[*along] : a.min[*along];
    member.length = sizeFrom(RuleId::ShoulderToShoulder,
                             Length::mm(member.box.max[*along] - member.box.min[*along]));
    const double width = section.width.value.mm();
    const double thickness = section.thickness.value.mm();
    std::optional<int> setAxis;
    if (part.spacing && between) {
        setAxis = axisOfSet(*between, *along, place, evaluation);
        if (!setAxis) {
            return {};
        }
    }
    if (setAxis != axes.thickness &&
        !putInFrom(member.box, axes.thickness, spans.set, a, thickness, place, evaluation)) {
        return {};
    }
    if (setAxis != axes.width) {
        if (!spans.level) {
            putAt(member.box, axes.width, Side::Centre, a.centre()[axes.width], width);
        } else if (!putAtPosition(
                       member.box, axes.width, *spans.level, width, "level", place, evaluation)) {
            return {};
        }
    }
    std::vector<Box> boxes{member.box};
    if (setAxis) {
        const Size& size = *setAxis == axes.width ? section.width : section.thickness;
        boxes = fillAlong(member.box,
                          *setAxis,
                          *part.spacing,
                          *between,
                          size.value,
                          member.gap,
                          place,
                          evaluation);
    }
    std::vector<PlacedMember> members;
    for (const Box& box : boxes) {
        for (const Box* end : {&a, &b}) {
            if (!overlapsAlong(box, *end, axes.width) ||
                !overlapsAlong(box, *end, axes.thickness)) {
                evaluation.trouble(place,
                                   "it passes by '" + (end == &a ? spans.from : spans.to) +
                                       "' instead of meeting it",
                                   RuleId::FacesSquarely);
                return {};
            }
        }
        member.box = box;
        members.push_back(member);
        fitToShapes(spans.fit, ends, *along, members.back());
    }
    return members;
}

std::vector<PlacedMember> placeCapping(const Part& part,
                                       const Caps& caps,
                                       const Section& section,
                                       const std::vector<Neighbour>& supports,
                                       const std::optional<std::array<Neighbour, 2>>& between,
                                       const Place& place,
                                       Evaluation& evaluation) {
    Box around = topOf(supports.front());
    for (const Neighbour& support : supports) {
        if (std::abs(support.box.max.z - supports.front().box.max.z) > kLengthTolerance.mm()) {
            evaluation.trouble(place,
                               "the parts it lies on are not level with one another at their tops");
            return {};
        }
        around = Box::around(around, topOf(support));
    }
    const int along = caps.runs == Side::Right || caps.runs == Side::Left ? 0 : 1;
    const int across = 1 - along;
    PlacedMember member;
    member.faceSide = Side::Top;
    const Side usualEdge = across == 0 ? Side::Left : Side::Back;
    member.faceEdge = liesOn(part.faceEdge, across) ? part.faceEdge : usualEdge;
    member.width = section.width;
    member.thickness = section.thickness;
    member.box.min.z = around.max.z;
    member.box.max.z = around.max.z + section.thickness.value.mm();
    std::array<std::array<std::optional<double>, 2>, 2> past;  // [axis][low, high]
    for (const auto& [side, statement] : caps.overhang) {
        const std::optional<AxisWay> way = wayOf(side);
        const std::optional<Length> by = evaluation.length(statement, place, "overhang");
        if (!by || !way || way->axis == 2) {
            if (by) {
                evaluation.trouble(place, "an overhang is to the left, right, front or back");
            }
            return {};
        }
        past[static_cast<std::size_t>(way->axis)][way->way > 0 ? 1 : 0] = by->mm();
    }
    const auto& ends = past[static_cast<std::size_t>(along)];
    member.box.min[along] = around.min[along] - ends[0].value_or(0.0);
    member.box.max[along] = around.max[along] + ends[1].value_or(0.0);
    member.length =
        sizeFrom(RuleId::PartPlaced, Length::mm(member.box.max[along] - member.box.min[along]));
    if (member.length.value.mm() < kApart) {
        evaluation.trouble(place, "its overhangs leave it no length");
        return {};
    }
    const auto& edges = past[static_cast<std::size_t>(across)];
    const double width = section.width.value.mm();
    if (edges[1]) {
        putAt(member.box, across, sideOf(across, true), around.max[across] + *edges[1], width);
    } else if (edges[0]) {
        putAt(member.box, across, sideOf(across, false), around.min[across] - *edges[0], width);
    } else {
        putAt(member.box, across, Side::Centre, around.centre()[across], width);
    }
    std::vector<Box> boxes{member.box};
    if (part.spacing && between) {
        boxes = fillAlong(member.box,
                          across,
                          *part.spacing,
                          *between,
                          section.width.value,
                          member.gap,
                          place,
                          evaluation);
    }
    std::vector<PlacedMember> members;
    for (const Box& box : boxes) {
        member.box = box;
        members.push_back(member);
    }
    return members;
}

std::optional<PlacedMember> placeFree(const Part& part,
                                      const Free& free,
                                      const Section& section,
                                      const Place& place,
                                      Evaluation& evaluation) {
    const std::optional<Length> x = evaluation.length(free.x, place, "x", Length());
    const std::optional<Length> y = evaluation.length(free.y, place, "y", Length());
    const std::optional<Length> z = evaluation.length(free.z, place, "z", Length());
    const std::optional<Angle> aboutX = evaluation.angle(free.aboutX, place, "turn about x");
    const std::optional<Angle> aboutY = evaluation.angle(free.aboutY, place, "turn about y");
    const std::optional<Angle> aboutZ = evaluation.angle(free.aboutZ, place, "turn about z");
    const std::optional<Length> length = evaluation.size(free.length, place, "length");
    if (!x || !y || !z || !aboutX || !aboutY || !aboutZ || !length) {
        return std::nullopt;
    }
    if (part.spacing) {
        evaluation.trouble(place, "a part placed freely cannot be a set");
        return std::nullopt;
    }
    PlacedMember member;
    member.turned = Frame::turned({x->mm(), y->mm(), z->mm()}, *aboutX, *aboutY, *aboutZ);
    member.length = sizeFrom(RuleId::Stated, *length);
    member.width = section.width;
    member.thickness = section.thickness;
    member.box = {{0, 0, 0},
                  {length->mm(), section.width.value.mm(), section.thickness.value.mm()}};
    return member;
}

}  // namespace shoulderline
