#include "core/resolve/panel_joints.h"

#include <algorithm>

#include "core/geometry/box_solids.h"
#include "core/joint/cross_lap.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

// What one edge of a panel takes of its own frame: the groove in the part there, and the rabbet
// that leaves the tongue.
struct EdgeBoxes {
    Box groove;
    Box rabbet;
    Vec3 outward;
    Vec3 middle;  // of the edge, at the groove's mouth
};

EdgeBoxes boxesAt(const ResolvedPart& panel, const GroovedEdges& edges, std::size_t edge) {
    const Vec3 size = panel.bodyBox().size();
    const int axis = edge < 2 ? 1 : 0;
    const int other = 1 - axis;
    const bool isHigh = edge == 1 || edge == 3;
    const GroovedEdge& one = edges[edge];
    const double tongue = one.tongueLength.value.mm();
    const double depth = one.grooveDepth.value.mm();
    const double thick = one.tongueThickness.value.mm();
    const double middle = size.z - thick / 2;
    const double half = one.grooveWidth.value.mm() / 2;
    const auto roomAt = [&](std::size_t i) {
        return (edges[i].grooveDepth.value - edges[i].tongueLength.value).mm();
    };
    const std::size_t lowSide = edge < 2 ? 2 : 0;
    EdgeBoxes boxes;
    const double mouth = isHigh ? size[axis] - tongue : tongue;
    boxes.groove.min[axis] = isHigh ? mouth : mouth - depth;
    boxes.groove.max[axis] = isHigh ? mouth + depth : mouth;
    boxes.groove.min[other] = -roomAt(lowSide);
    boxes.groove.max[other] = size[other] + roomAt(lowSide + 1);
    boxes.groove.min.z = middle - half;
    boxes.groove.max.z = middle + half;
    boxes.rabbet.min[axis] = isHigh ? size[axis] - depth : 0.0;
    boxes.rabbet.max[axis] = isHigh ? size[axis] : depth;
    boxes.rabbet.max[other] = size[other];
    boxes.rabbet.max.z = size.z - thick;
    boxes.outward[axis] = isHigh ? 1.0 : -1.0;
    boxes.middle = {size.x / 2, size.y / 2, middle};
    boxes.middle[axis] = mouth;
    return boxes;
}

Face faceOfPanel(std::size_t edge) {
    constexpr std::array kFaces{Face::FaceEdge, Face::BackEdge, Face::StartEnd, Face::FarEnd};
    return kFaces[edge];
}

Face faceEnteredAlong(Vec3 way) {
    const int axis = mainAxis(way);
    return faceEntered(axis, way[axis]);
}

}  // namespace

bool placeGrooved(const JointSeed& seed,
                  const std::optional<Extent>& also,
                  ResolvedPiece& resolved) {
    ResolvedPart& panel = resolved.parts[seed.tenoned];
    ResolvedPart& member = resolved.parts[seed.mortised];
    const std::optional<Frame> relative = squared(relativeFrame(member.frame, panel.frame));
    if (!relative || !seed.grooved) {
        return false;
    }
    const std::size_t index = resolved.joints.size();
    const GroovedEdge& edge = (*seed.grooved)[seed.edge];
    const EdgeBoxes boxes = boxesAt(panel, *seed.grooved, seed.edge);

    ResolvedCut groove;
    groove.kind = CutKind::Groove;
    groove.box = relative->outerBounds(boxes.groove);
    if (also) {
        groove.box.min.x = std::min(groove.box.min.x, also->min);
        groove.box.max.x = std::max(groove.box.max.x, also->max);
    }
    if (const std::optional<Box> inWood = overlap(groove.box, member.bodyBox())) {
        groove.box = *inWood;
    }
    groove.face = faceEnteredAlong(relative->directionToOuter(boxes.outward));
    groove.joint = index;
    groove.note = "for " + panel.of;
    member.cuts.push_back(std::move(groove));

    if (boxes.rabbet.max.z > kLengthTolerance.mm()) {
        ResolvedCut rabbet;
        rabbet.kind = CutKind::Rabbet;
        rabbet.face = Face::FaceSide;
        rabbet.box = boxes.rabbet;
        rabbet.joint = index;
        rabbet.note = "leaving the tongue";
        panel.cuts.push_back(std::move(rabbet));
    }

    ResolvedJoint joint;
    joint.name = panel.name + " into " + member.name;
    joint.kind = JointKind::Grooved;
    joint.tenoned = seed.tenoned;
    joint.mortised = seed.mortised;
    joint.end = seed.end;
    joint.further = edge.further();
    joint.mortise.face = member.cuts.back().face;
    joint.mortise.reference = faceOfPanel(seed.edge);
    const Vec3 along = seed.edge < 2 ? panel.frame.x : panel.frame.y;
    joint.frame = {panel.frame.toOuter(boxes.middle),
                   panel.frame.directionToOuter(boxes.outward),
                   along,
                   panel.frame.z};
    resolved.joints.push_back(std::move(joint));
    return true;
}

std::vector<FrameCorner> cornersOf(const JointSeed& seed,
                                   std::span<const JointSeed> seeds,
                                   const ResolvedPiece& resolved) {
    const ResolvedPart& member = resolved.parts[seed.mortised];
    std::vector<FrameCorner> corners;
    for (const JointSeed& other : seeds) {
        if (other.tenoned != seed.tenoned || !other.grooved || other.edge / 2 == seed.edge / 2) {
            continue;
        }
        const ResolvedPart& there = resolved.parts[other.mortised];
        const Box box = relativeFrame(member.frame, there.frame).outerBounds(there.bodyBox());
        corners.push_back({other.mortised, {box.min.x, box.max.x}});
    }
    return corners;
}

std::optional<LappedEdges> lappedEdges(const ResolvedPart& first, const ResolvedPart& second) {
    const std::optional<Frame> relative = squared(relativeFrame(first.frame, second.frame));
    if (!relative || mainAxis(relative->x) != 0 || mainAxis(relative->y) != 1) {
        return std::nullopt;
    }
    const Box own = first.bodyBox();
    const Box other = relative->outerBounds(second.bodyBox());
    const bool atBackEdge = other.centre().y > own.centre().y;
    const double by = atBackEdge ? own.max.y - other.min.y : other.max.y - own.min.y;
    const std::optional<Box> both = overlap(own, other);
    if (by <= kLengthTolerance.mm() || !both || by > own.size().y / 2) {
        return std::nullopt;
    }
    return LappedEdges{atBackEdge, Length::mm(by)};
}

std::vector<std::string> placeTongued(std::size_t firstIndex,
                                      std::size_t secondIndex,
                                      const LappedEdges& edges,
                                      const SizingGuide& guide,
                                      const StatedSizes& stated,
                                      ResolvedPiece& resolved) {
    ResolvedPart& first = resolved.parts[firstIndex];
    ResolvedPart& second = resolved.parts[secondIndex];
    GroovedEdge edge = sizeTongued({first.thickness.value,
                                    first.width.value,
                                    edges.by,
                                    second.thickness.value,
                                    second.width.value},
                                   guide,
                                   stated);
    const std::size_t index = resolved.joints.size();
    const Box own = first.bodyBox();
    const double depth = edge.grooveDepth.value.mm();
    const double tip = edges.atBackEdge ? own.max.y : own.min.y;
    const double way = edges.atBackEdge ? 1.0 : -1.0;
    const double middle = own.centre().z;
    const auto slab = [&](double from, double to, double low, double high) {
        return Box{{own.min.x, std::min(from, to), low}, {own.max.x, std::max(from, to), high}};
    };
    const double half = edge.tongueThickness.value.mm() / 2;
    ResolvedCut rabbet;
    rabbet.kind = CutKind::Rabbet;
    rabbet.joint = index;
    rabbet.note = "leaving the tongue";
    for (const bool isFaceSide : {true, false}) {
        rabbet.face = isFaceSide ? Face::FaceSide : Face::BackSide;
        rabbet.box = slab(tip - way * depth,
                          tip,
                          isFaceSide ? own.min.z : middle + half,
                          isFaceSide ? middle - half : own.max.z);
        if (rabbet.box.size().z > kLengthTolerance.mm()) {
            first.cuts.push_back(rabbet);
        }
    }
    const double mouth = tip - way * edges.by.mm();
    const double wide = edge.grooveWidth.value.mm() / 2;
    const Frame toSecond = relativeFrame(second.frame, first.frame);
    ResolvedCut groove;
    groove.kind = CutKind::Groove;
    groove.joint = index;
    groove.note = "for " + first.of;
    groove.box =
        toSecond.outerBounds(slab(mouth, mouth + way * depth, middle - wide, middle + wide));
    groove.box.min.x = 0.0;
    groove.box.max.x = second.shoulderLength.value.mm();
    groove.face = faceEnteredAlong(toSecond.directionToOuter({0.0, way, 0.0}));
    const Face entered = groove.face;
    second.cuts.push_back(std::move(groove));

    ResolvedJoint joint;
    joint.name = first.name + " into " + second.name;
    joint.kind = JointKind::Tongued;
    joint.tenoned = firstIndex;
    joint.mortised = secondIndex;
    joint.further = edge.further();
    joint.mortise.face = entered;
    joint.mortise.reference = edges.atBackEdge ? Face::BackEdge : Face::FaceEdge;
    joint.frame = {first.frame.toOuter({own.centre().x, mouth, middle}),
                   first.frame.directionToOuter({0.0, way, 0.0}),
                   first.frame.x,
                   first.frame.z};
    resolved.joints.push_back(std::move(joint));
    return std::move(edge.troubles);
}

std::string placeCrossLap(std::size_t first,
                          std::size_t second,
                          const SizingGuide& guide,
                          const StatedSizes& stated,
                          ResolvedPiece& resolved) {
    ResolvedPart& one = resolved.parts[first];
    ResolvedPart& other = resolved.parts[second];
    const std::optional<Frame> relative = squared(relativeFrame(one.frame, other.frame));
    if (!relative) {
        return "the two do not cross square, so they are not lapped";
    }
    CrossLap lap =
        crossLap({one.bodyBox(), relative->outerBounds(other.bodyBox()), mainAxis(relative->x)},
                 guide,
                 stated);
    if (!lap.trouble.empty()) {
        return std::move(lap.trouble);
    }
    const std::size_t index = resolved.joints.size();
    const auto [axis, way] = inwardOf(lap.firstFace);
    Vec3 into;
    into[axis] = way;
    const Frame toOther = relativeFrame(*relative, Frame{});
    ResolvedCut cut;
    cut.kind = CutKind::Notch;
    cut.face = lap.firstFace;
    cut.box = lap.outOfFirst;
    cut.note = "cross lap";
    cut.joint = index;
    one.cuts.push_back(cut);
    cut.box = toOther.outerBounds(lap.outOfSecond);
    cut.face = faceEnteredAlong(toOther.directionToOuter(-into));
    other.cuts.push_back(std::move(cut));

    ResolvedJoint joint;
    joint.name = one.name + " across " + other.name;
    joint.kind = JointKind::CrossLap;
    joint.tenoned = first;
    joint.mortised = second;
    joint.further = std::move(lap.further);
    const Vec3 middle = Box::around(lap.outOfFirst, lap.outOfSecond).centre();
    const Vec3 x = one.frame.directionToOuter(into);
    const Vec3 along = one.frame.x;
    joint.frame = {one.frame.toOuter(middle), x, along, cross(x, along)};
    resolved.joints.push_back(std::move(joint));
    return {};
}

}  // namespace shoulderline
