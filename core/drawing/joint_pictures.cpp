#include "core/drawing/joint_pictures.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/drawing/break_line.h"
#include "core/drawing/dimension_parts.h"
#include "core/drawing/joint_hollows.h"
#include "core/drawing/smooth_runs.h"
#include "core/measure/length_text.h"

namespace shoulderline {

// Sawn-off ends are drawn as breaks instead.
bool JointPictures::liesInCut(const ViewEdge& edge, const JointLooking& looking) const {
    const auto liesAt = [&](int axis, double at) {
        Vec3 direction;
        direction[axis] = 1.0;
        const Vec2 seen = looking.view.project(direction);
        const auto offset = [&](Vec2 p) { return dot(p, seen) - at * dot(seen, seen); };
        return norm(seen) > 0.5 && std::abs(offset(edge.a)) < 1e-6 &&
               std::abs(offset(edge.b)) < 1e-6;
    };
    return (members_.railIsCut && liesAt(0, members_.rail.min.x)) ||
           std::any_of(members_.postSawn.begin(), members_.postSawn.end(), [&](const auto& sawn) {
               return liesAt(sawn.axis, members_.at(sawn));
           });
}

std::vector<Polyhedron> JointPictures::railSolids(bool withLoose) const {
    std::vector<Polyhedron> solids{members_.railSolid};
    if (!members_.isLoose || withLoose) {
        solids.insert(solids.end(), members_.tenons.begin(), members_.tenons.end());
    }
    return solids;
}

void JointPictures::draw(std::vector<Polyhedron> solids,
                         const std::vector<Hollow>& hollows,
                         const JointLooking& looking,
                         std::vector<Op>& ops) const {
    std::vector<ViewEdge> edges = hiddenLines(solids, looking.view);
    int number = static_cast<int>(solids.size());
    for (const Hollow& hollow : hollows) {
        for (ViewEdge& edge : linesOfHollow(hollow, solids, looking.view)) {
            edge.solid = number;
            edges.push_back(edge);
        }
        ++number;
    }
    for (const Hollow& hollow : hollows) {
        openSides(hollow, solids, looking.view, edges);
    }
    for (const ViewEdge& edge : mergeCoincident(edges)) {
        if (!liesInCut(edge, looking)) {
            const auto place = [&](Vec2 p) { return Vec2{p.x * scale_, -p.y * scale_}; };
            ops.push_back(Stroke{{place(edge.a), place(edge.b)},
                                 edge.visible ? LineRole::Visible : LineRole::Hidden});
        }
    }
    ops = withHiddenRunsJoined(std::move(ops));
}

std::vector<Stroke> JointPictures::breakLines(bool ofRail, const JointLooking& looking) const {
    std::vector<Stroke> lines;
    if (ofRail) {
        if (members_.railIsCut) {
            const Rect rail = onSheet(members_.rail, looking);
            lines.push_back(breakLine(rail.min, {rail.min.x, rail.max.y}));
        }
        return lines;
    }
    for (const JointMembers::Sawn& sawn : members_.postSawn) {
        Vec3 direction;
        direction[sawn.axis] = 1.0;
        if (norm(looking.view.project(direction)) < 0.5) {
            continue;
        }
        Box end = members_.post;
        (sawn.isHigh ? end.min : end.max)[sawn.axis] = members_.at(sawn);
        const Rect line = onSheet(end, looking);
        lines.push_back(breakLine(line.min, line.max));
    }
    return lines;
}

void JointPictures::addRailBreak(const JointLooking& looking, std::vector<Op>& ops) const {
    for (Stroke& line : breakLines(true, looking)) {
        ops.push_back(std::move(line));
    }
}

void JointPictures::addPostBreaks(const JointLooking& looking, std::vector<Op>& ops) const {
    for (Stroke& line : breakLines(false, looking)) {
        ops.push_back(std::move(line));
    }
}

void JointPictures::addLabel(const std::string& text, std::vector<Op>& ops) const {
    const Rect all = boundsOf(ops, metrics_);
    const double height = style_.dimensions.height;
    ops.push_back(
        TextOp{{all.min.x, all.max.y + 2.0 + height}, text, height, Align::Left, false, false});
}

// The blank's sides, where the wood has been shaped away from them at the shoulder, which is gauged
// from the blank.
void JointPictures::addBlankLines(const JointLooking& looking, std::vector<Op>& ops) const {
    if (!members_.railIsSquare) {
        return;
    }
    const Rect blank = onSheet(members_.railBlank, looking);
    const Rect wood = onSheet(members_.atShoulder, looking);
    for (const auto& [from, to] :
         {std::pair{blank.min.y, wood.min.y}, std::pair{blank.max.y, wood.max.y}}) {
        if (std::abs(to - from) > kLengthTolerance.mm()) {
            ops.push_back(Stroke{{{blank.min.x, from}, {blank.max.x, from}, {blank.max.x, to}},
                                 LineRole::Neighbour});
        }
    }
}

// The tenon as long as it is lettered, where what is drawn of it does not reach as far: a loose
// one, or one before its mitre. Of what is let in whole how far it goes in.
void JointPictures::addTenonBlank(const JointLooking& looking, std::vector<Op>& ops) const {
    const Rect tenon = onSheet(members_.tenon, looking);
    double reach = 0.0;
    if (members_.isLetInWhole) {  // how far it goes in is a line to be gauged, no edge
        ops.push_back(Stroke{{{0.0, tenon.min.y}, {0.0, tenon.max.y}}, LineRole::Neighbour});
        return;
    }
    if (!members_.isLoose) {
        for (const Polyhedron& solid : members_.tenons) {
            reach = std::max(reach, solid.bounds().max.x * scale_);
        }
    }
    if (tenon.max.x - reach > kLengthTolerance.mm()) {
        ops.push_back(Stroke{{{reach, tenon.min.y},
                              {tenon.max.x, tenon.min.y},
                              {tenon.max.x, tenon.max.y},
                              {reach, tenon.max.y}},
                             LineRole::Neighbour});
    }
}

// The tenoned member by itself, with the sizes of its tenon.
std::vector<Op> JointPictures::rail(const JointLooking& looking) const {
    std::vector<Op> ops;
    draw(railSolids(false), members_.ownHollows, looking, ops);
    addRailBreak(looking, ops);
    const double floor = boundsOf(ops, metrics_).max.y;  // clear of the break's end
    const bool onCheek = looking.downAxis == 1;
    const Rect tenon = onSheet(members_.tenon, looking);
    const Rect rail = onSheet(members_.railBlank, looking);
    addBlankLines(looking, ops);
    addTenonBlank(looking, ops);
    addRailMark(looking, ops);
    const Tenon& t = joint_.tenon;
    const bool startIsTop = (looking.downWay > 0.0) != (!onCheek && members_.isTurnedOver);
    const Size& shoulder = onCheek ? t.shoulders.faceEdge : t.shoulders.faceSide;
    SizeToPlace shoulderSize =
        size(startIsTop ? rail.min.y : rail.max.y,
             startIsTop ? tenon.min.y : tenon.max.y,
             0.0,
             shoulder.value.mm(),
             onCheek ? "shoulder at the face edge" : "shoulder at the face side");
    (startIsTop ? shoulderSize.fromDepth : shoulderSize.toDepth) = tenon.max.x - rail.max.x;
    std::vector<SizeToPlace> across;
    if (members_.railIsSquare) {
        across.push_back(shoulderSize);
    }
    across.push_back(size(tenon.min.y,
                          tenon.max.y,
                          0.0,
                          (onCheek ? t.width : t.thickness).value.mm(),
                          onCheek ? "tenon width" : "tenon thickness"));
    for (const Box& box : members_.slots) {
        const Rect slot = onSheet(box, looking);
        if (onCheek) {
            across.push_back(size(slot.min.y,
                                  slot.max.y,
                                  tenon.max.x - slot.max.x,
                                  box.size().y,
                                  "width of the slot"));
        }
    }
    append(ops,
           placeSizes(std::move(across),
                      DimensionSide::RightOf,
                      tenon.max.x,
                      style_.dimensions,
                      metrics_,
                      FigureRoom::upTo(rail.max.y)));
    if (onCheek) {
        SizeToPlace length =
            size(0.0, tenon.max.x, floor - rail.max.y, t.length.value.mm(), "tenon length");
        length.toDepth = floor - tenon.max.y;
        std::vector<SizeToPlace> along{length};
        for (const Box& box : members_.slots) {
            const Rect slot = onSheet(box, looking);
            along.push_back(
                size(0.0, slot.min.x, floor - slot.max.y, box.min.x, "slot from the shoulder"));
            along.push_back(size(
                slot.min.x, slot.max.x, floor - slot.max.y, box.size().x, "length of the slot"));
        }
        append(ops,
               placeSizes(std::move(along),
                          DimensionSide::Below,
                          floor,
                          style_.dimensions,
                          metrics_,
                          FigureRoom::upTo(tenon.max.x + 2.0)));
    }
    return ops;
}

// The blank's line that the mortise is marked out from, where the wood does not reach it: along the
// mortised part, or where that is seen on end across it.
void JointPictures::addReferenceLine(const JointLooking& looking, std::vector<Op>& ops) const {
    if (!members_.referenceLine || members_.referenceAxis != looking.downAxis) {
        return;
    }
    Box line = members_.post;
    line.min[members_.referenceAxis] = line.max[members_.referenceAxis] = *members_.reference;
    line.min[members_.postAxis] = members_.referenceLine->first;
    line.max[members_.postAxis] = members_.referenceLine->second;
    const Rect seen = onSheet(line, looking);
    ops.push_back(Stroke{{seen.min, seen.max}, LineRole::Neighbour});
}

void JointPictures::addHornLines(const JointLooking& looking, std::vector<Op>& ops) const {
    Vec3 direction;
    direction[members_.postAxis] = 1.0;
    if (norm(looking.view.project(direction)) < 0.5) {
        return;
    }
    for (const JointMembers::Horn& horn : members_.horns) {
        Box line = members_.post;
        line.min[members_.postAxis] = line.max[members_.postAxis] = horn.from;
        const Rect cut = onSheet(line, looking);
        ops.push_back(Stroke{{cut.min, cut.max}, LineRole::CutPlane});
    }
}

std::string JointPictures::tenonWord() const {
    const bool isWhole = joint_.form().isWholeSection() || joint_.kind == JointKind::Lap;
    return members_.isLoose ? "end with its mortise" : isWhole ? "end" : "tenon";
}

// Which end of the picture is a horn.
std::string JointPictures::hornText(const JointLooking& looking) const {
    const auto isAtTop = [&](const JointMembers::Horn& horn) {
        return looking.downWay * (horn.to - horn.from) < 0.0;
    };
    const bool hasTop = std::any_of(members_.horns.begin(), members_.horns.end(), isAtTop);
    const bool hasFoot = !std::all_of(members_.horns.begin(), members_.horns.end(), isAtTop);
    return std::string("horn at the ") + (hasTop ? "top" : "") +
           (hasTop && hasFoot ? " and the " : "") + (hasFoot ? "foot" : "") +
           ": cut off after glue-up";
}

// The mortised member by itself, with the sizes of its mortise.
std::vector<Op> JointPictures::post(const JointLooking& looking) const {
    std::vector<Op> ops;
    draw({members_.postSolid}, members_.hollows, looking, ops);
    addHornLines(looking, ops);
    addReferenceLine(looking, ops);
    addPostBreaks(looking, ops);
    addPostMarks(looking, ops);
    // Clear of the breaks, whose zigzags and ends stand out a little.
    const Rect drawn = boundsOf(ops, metrics_);
    const bool onCheek = looking.downAxis == 1;
    const Rect mortise = onSheet(members_.mortise, looking);
    const Rect post = onSheet(members_.post, looking);
    const double depth = drawn.max.x - mortise.max.x;
    // A bore by its bit, not by the facets that it is drawn with.
    const bool isBore = joint_.kind == JointKind::Round;
    const double wide = isBore ? joint_.mortise.width.value.mm() : mortise.size().y / scale_;
    const double middle = (mortise.min.y + mortise.max.y) / 2.0;
    const double half = wide * scale_ / 2.0;
    std::vector<SizeToPlace> sizes{size(middle - half,
                                        middle + half,
                                        depth,
                                        wide,
                                        isBore    ? "bore diameter"
                                        : onCheek ? "mortise length"
                                                  : "mortise width")};
    std::vector<SizeToPlace> atMouth;
    const Rect mouth = onSheet(members_.mouth, looking);
    constexpr double kWorthTelling = 0.2;  // mm of wood
    if (onCheek && mortise.size().y - mouth.size().y > kWorthTelling * scale_) {
        atMouth.push_back(size(mouth.min.y,
                               mouth.max.y,
                               post.min.x - drawn.min.x,
                               mouth.size().y / scale_,
                               "mortise length at the mouth"));
    }
    if (members_.reference && members_.referenceAxis == looking.downAxis) {
        const double face = looking.downWay * *members_.reference * scale_;
        const double near = std::abs(face - mortise.min.y) < std::abs(face - mortise.max.y)
                                ? mortise.min.y
                                : mortise.max.y;
        SizeToPlace fromFace =
            size(face, near, drawn.max.x - post.max.x, std::abs(face - near) / scale_, "from face");
        (face < near ? fromFace.toDepth : fromFace.fromDepth) = depth;
        sizes.push_back(fromFace);
    }
    bool hasHorn = false;
    if (members_.postAxis == looking.downAxis) {
        for (const JointMembers::Horn& horn : members_.horns) {
            const auto at = [&](double along) { return looking.downWay * along * scale_; };
            sizes.push_back(size(at(horn.from),
                                 at(horn.to),
                                 drawn.max.x - post.max.x,
                                 std::abs(horn.to - horn.from),
                                 "horn"));
            hasHorn = true;
        }
    }
    append(ops,
           placeSizes(std::move(sizes),
                      DimensionSide::RightOf,
                      drawn.max.x,
                      style_.dimensions,
                      metrics_,
                      FigureRoom::upTo(drawn.max.y)));
    append(ops,
           placeSizes(std::move(atMouth),
                      DimensionSide::LeftOf,
                      drawn.min.x,
                      style_.dimensions,
                      metrics_,
                      FigureRoom::upTo(drawn.max.y)));
    if (onCheek && !joint_.isThrough()) {
        SizeToPlace deep = size(
            0.0, mortise.max.x, drawn.max.y - post.max.y, mortise.max.x / scale_, "mortise depth");
        deep.toDepth = drawn.max.y - mortise.max.y;
        append(ops,
               placeSizes({deep},
                          DimensionSide::Below,
                          drawn.max.y,
                          style_.dimensions,
                          metrics_,
                          FigureRoom::upTo(drawn.max.x + 2.0)));
    }
    if (hasHorn) {
        addLabel(hornText(looking), ops);
    }
    return ops;
}

}  // namespace shoulderline
