#include "core/resolve/joint_places.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/cylinder.h"
#include "core/resolve/box_placing.h"
#include "core/resolve/end_plane.h"
#include "core/resolve/frames.h"
#include "core/resolve/shaped_face.h"
#include "core/resolve/stations.h"

namespace shoulderline {

namespace {

// The face of a part that one enters by moving along `axis` in the way of `way`, in its own frame.
Face faceEntered(int axis, double way) {
    constexpr Face kFaces[3][2] = {{Face::StartEnd, Face::FarEnd},
                                   {Face::FaceEdge, Face::BackEdge},
                                   {Face::FaceSide, Face::BackSide}};
    return kFaces[axis][way > 0 ? 0 : 1];
}

// A solid of the end's frame in a part's frame. Of an askew joint it begins on the entered face,
// on the side of it that `keeps` holds.
template <class Solid>
void put(const JointSolid& from,
         const Frame& frame,
         const std::optional<HalfSpace>& keeps,
         Solid& into) {
    into.isHaunch = from.isHaunch;
    into.box = frame.outerBounds(from.box);
    if (from.exact) {
        into.exact = from.exact->transformed(frame);
    }
    if (!keeps) {
        return;
    }
    const bool beginsSquare = std::abs(keeps->normal.x) > 1.0 - kSquareTolerance;
    if (beginsSquare && squared(frame)) {
        return;
    }
    const ConvexSolid solid = beginsSquare ? (from.exact ? *from.exact : ConvexSolid::box(from.box))
                                           : fromFace(from, *keeps);
    into.exact = solid.transformed(frame);
    into.box = into.exact->bounds();
}

// A groove of the mortised part under the end of the tenoned one.
std::optional<MetGroove> grooveAt(const ResolvedPart& mortised,
                                  Face face,
                                  const Frame& toEnd,
                                  const TenonedSection& section) {
    for (const ResolvedCut& cut : mortised.cuts) {
        if (cut.face != face || cut.kind != CutKind::Groove) {
            continue;
        }
        const Box box = toEnd.outerBounds(cut.box);
        const bool isUnder = box.min.y < section.width.mm() && box.max.y > 0 &&
                             box.min.z < section.thickness.mm() && box.max.z > 0;
        if (isUnder) {
            return MetGroove{Length::mm(std::min(box.max.z - box.min.z, box.max.y - box.min.y)),
                             Length::mm(box.max.x - box.min.x)};
        }
    }
    return std::nullopt;
}

// The depth of a groove along an edge of the tenoned part that runs out at its end.
Length ownGroove(const ResolvedPart& tenoned, Face edge, End end) {
    const double length = tenoned.shoulderLength.value.mm();
    Length deepest;
    for (const ResolvedCut& cut : tenoned.cuts) {
        const bool runsOut = end == End::Start ? cut.box.min.x <= kLengthTolerance.mm()
                                               : cut.box.max.x >= length - kLengthTolerance.mm();
        if (cut.kind == CutKind::Groove && cut.face == edge && runsOut) {
            deepest = std::max(deepest, Length::mm(cut.box.size().y));
        }
    }
    return deepest;
}

}  // namespace

void setShapedEdges(const ResolvedPart& tenoned, End end, JointTask& task) {
    if (tenoned.section != SectionForm::Square) {
        return;
    }
    const double length = tenoned.shoulderLength.value.mm();
    const Extent wood = widthAt(tenoned, end == End::Start ? 0.0 : length);
    constexpr double kLeastLeft = 0.25;  // of the width; an end that is rounded has no edges there
    if (wood.max - wood.min < kLeastLeft * tenoned.width.value.mm()) {
        return;
    }
    task.shapedAtFaceEdge = Length::mm(std::max(0.0, wood.min));
    task.shapedAtBackEdge = Length::mm(std::max(0.0, tenoned.width.value.mm() - wood.max));
}

namespace {

void placeHorn(const OpenJoint& joint, ResolvedPart& mortised) {
    const Length horn = joint.sized.furtherSize(SizeName::Horn);
    if (horn <= kLengthTolerance || joint.task.postAxis == 0) {
        return;
    }
    Vec3 along;
    along[joint.task.postAxis] = 1.0;
    const bool runsWithPost = joint.inMortised.directionToOuter(along).x > 0;
    // Low in the end's frame is past the face edge.
    const bool isAtStart = joint.task.endsAtFaceEdge() == runsWithPost;
    Length& at = isAtStart ? mortised.startHorn : mortised.farHorn;
    at = std::max(at, horn);
}

void putTenons(const OpenJoint& joint,
               const JointCuts& cuts,
               const std::vector<HalfSpace>& mitres,
               std::size_t index,
               ResolvedPart& tenoned) {
    Length& reach = joint.end == End::Start ? tenoned.startTenon : tenoned.farTenon;
    const Frame mortisedToTenoned =
        joint.inTenoned.compose(relativeFrame(joint.inMortised, Frame{}));
    const std::optional<HalfSpace>& root = joint.face ? joint.face : joint.shoulder;
    for (const JointSolid& solid : cuts.tenons) {
        TenonSolid tenon;
        tenon.joint = index;
        put(solid, joint.inTenoned, root, tenon);
        for (const HalfSpace& keeps : mitres) {
            const Vec3 normal = mortisedToTenoned.directionToOuter(keeps.normal);
            const Vec3 on = mortisedToTenoned.toOuter(keeps.normal * keeps.offset);
            if (std::optional<ConvexSolid> cut = tenon.solid().clipped({normal, dot(normal, on)})) {
                tenon.exact = std::move(cut);
            }
        }
        const double past = joint.end == End::Start
                                ? -tenon.box.min.x
                                : tenon.box.max.x - tenoned.shoulderLength.value.mm();
        reach = std::max(reach, Length::mm(joint.face ? past : solid.box.max.x));
        tenoned.tenons.push_back(std::move(tenon));
    }
    for (const JointSolid& solid : cuts.ownMortises) {
        MortiseSolid mortise;
        mortise.joint = index;
        mortise.face = joint.end == End::Start ? Face::StartEnd : Face::FarEnd;
        put(solid, joint.inTenoned, root ? std::optional(root->opposite()) : std::nullopt, mortise);
        mortise.tenon = mortise.box;
        tenoned.mortises.push_back(std::move(mortise));
    }
    for (const JointSolid& solid : cuts.slots) {
        ResolvedCut slot;
        slot.kind = CutKind::Notch;
        slot.face = Face::FaceSide;
        slot.isThrough = true;
        slot.note = "slot for the wedge";
        slot.joint = index;
        TenonSolid there;
        put(solid, joint.inTenoned, std::nullopt, there);
        slot.box = there.box;
        slot.exact = std::move(there.exact);
        tenoned.cuts.push_back(std::move(slot));
    }
    for (const JointSolid& solid : cuts.kerfs) {
        ResolvedCut kerf;
        kerf.kind = CutKind::Notch;
        kerf.face = joint.end == End::Start ? Face::StartEnd : Face::FarEnd;
        kerf.box = joint.inTenoned.outerBounds(solid.box);
        if (joint.face && !squared(joint.inTenoned)) {
            kerf.exact = ConvexSolid::box(solid.box, joint.inTenoned);
        }
        kerf.note = "saw kerf for a wedge";
        kerf.joint = index;
        tenoned.cuts.push_back(std::move(kerf));
    }
}

void fillMortise(const OpenJoint& joint,
                 const MortiseSolid& first,
                 const Box& wood,
                 Mortise& mortise) {
    const bool entersSide = joint.axis == 2;
    const int acrossAxis = entersSide ? 1 : 2;
    mortise.face = first.face;
    mortise.reference = entersSide ? Face::FaceEdge : Face::FaceSide;
    mortise.width = joint.sized.mortiseWidth;
    mortise.length = joint.sized.mortiseLength;
    mortise.depth = joint.sized.mortiseDepth;
    mortise.below = joint.task.faceBelow() - joint.blankFace;
    mortise.pastShoulder = joint.task.faceBelow();
    mortise.there = joint.task.depthThere();
    const Box mouth = joint.face ? mouthOf(first) : first.box;
    mortise.referenceIn = joint.referenceIn;
    mortise.fromFace = placedSize(Length::mm(mouth.min[acrossAxis]));
    if (mortise.referenceIn > kLengthTolerance) {
        const Length left = mortise.fromFace.value - mortise.referenceIn;
        mortise.fromFace.reasons.push_back(
            {RuleId::ReferenceAsItIs, mortise.referenceIn, {}, left});
        mortise.fromFace.value = left;
    }
    const int endAxis = joint.axis == 0 ? 1 : 0;
    mortise.fromStart = placedSize(Length::mm(mouth.min[endAxis] - wood.min[endAxis]));
    mortise.fromFar = Length::mm(wood.max[endAxis] - mouth.max[endAxis]);
}

std::string boreNote(const JointForm& form) {
    if (form.kind == JointKind::Dowelled) {
        return "dowel";
    }
    return form.has(JointFeature::Drawbored) ? "drawbored pin" : "pin";
}

}  // namespace

namespace {

// The shoulder of an end that is not square to its part, in the end's frame.
std::optional<HalfSpace> shoulderIn(const Frame& inTenoned, const ResolvedPart& part, End end) {
    const std::optional<HalfSpace> plane = endPlaneOf(part.body, end);
    if (!plane) {
        return std::nullopt;
    }
    const Vec3 normal = inTenoned.directionToLocal(-plane->normal);
    return HalfSpace{normal, dot(normal, inTenoned.toLocal(plane->normal * plane->offset))};
}

}  // namespace

std::optional<OpenJoint> openJoint(const ResolvedPiece& resolved,
                                   std::size_t tenonedIndex,
                                   std::size_t mortisedIndex,
                                   End end,
                                   const JointForm& form) {
    const ResolvedPart& tenoned = resolved.parts[tenonedIndex];
    const ResolvedPart& mortised = resolved.parts[mortisedIndex];
    const std::optional<Frame> relative = squared(relativeFrame(mortised.frame, tenoned.frame));
    if (!relative) {
        return openAskew(resolved, tenonedIndex, mortisedIndex, end, form);
    }
    OpenJoint joint;
    joint.tenoned = tenonedIndex;
    joint.mortised = mortisedIndex;
    joint.end = end;
    joint.inTenoned =
        end == End::Start
            ? Frame{{}, {-1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
            : Frame{{tenoned.shoulderLength.value.mm(), 0, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    joint.inMortised = relative->compose(joint.inTenoned);
    joint.shoulder = shoulderIn(joint.inTenoned, tenoned, end);
    const Vec3 into = joint.inMortised.x;
    joint.axis = mainAxis(into);
    joint.way = into[joint.axis];
    const Frame toEnd = relativeFrame(joint.inMortised, Frame{});
    JointTask& task = joint.task;
    task.form = form;
    task.section = {tenoned.role, tenoned.width.value, tenoned.thickness.value};
    task.post = toEnd.outerBounds(mortised.bodyBox());
    joint.blankFace = Length::mm(task.post.min.x);
    task.postAxis = mainAxis(toEnd.x);
    task.grooveAtFaceEdge = ownGroove(tenoned, Face::FaceEdge, end);
    task.grooveAtBackEdge = ownGroove(tenoned, Face::BackEdge, end);
    setShapedEdges(tenoned, end, task);
    task.groove = grooveAt(mortised, faceEntered(joint.axis, joint.way), toEnd, task.section);
    return joint;
}

void cutLevel(const OpenJoint& joint, ResolvedPiece& resolved) {
    ResolvedPart& mortised = resolved.parts[joint.mortised];
    if (joint.face || joint.blankFace > -kLengthTolerance || !isShaped(mortised)) {
        return;
    }
    // As wide as the tenoned part along the mortised one, and right across that.
    const JointTask& task = joint.task;
    const int along = task.postAxis;
    Box level = task.post;
    level.max.x = 0.0;
    level.min[along] = 0.0;
    level.max[along] = (along == 1 ? task.section.width : task.section.thickness).mm();
    ResolvedCut cut;
    cut.kind = CutKind::Notch;
    cut.face = faceEntered(joint.axis, joint.way);
    cut.box = joint.inMortised.outerBounds(level);
    cut.note = "level for " + resolved.parts[joint.tenoned].of;
    mortised.cuts.push_back(std::move(cut));
}

void placeJoint(const OpenJoint& open,
                const SizingGuide& guide,
                const std::vector<HalfSpace>& mitres,
                ResolvedPiece& resolved) {
    ResolvedPart& tenoned = resolved.parts[open.tenoned];
    ResolvedPart& mortised = resolved.parts[open.mortised];
    const std::size_t index = resolved.joints.size();
    const JointCuts cuts = cutJoint(open.task, open.sized, guide);
    ResolvedJoint joint;
    joint.name = tenoned.name + " into " + mortised.name;
    joint.kind = open.task.form.kind;
    joint.features = open.task.form.features;
    joint.tenoned = open.tenoned;
    joint.mortised = open.mortised;
    joint.end = open.end;
    joint.tenon = open.sized.tenon;
    joint.further = open.sized.further;
    putTenons(open, cuts, mitres, index, tenoned);
    const Face face = faceEntered(open.axis, open.way);
    for (std::size_t i = 0; i < cuts.mortises.size(); ++i) {
        MortiseSolid mortise;
        mortise.joint = index;
        mortise.face = face;
        // From the blank's face on, where the shoulder's furthest end lies in from it.
        JointSolid hollow = cuts.mortises[i];
        hollow.box.min.x = std::min(hollow.box.min.x, open.blankFace.mm());
        put(hollow, open.inMortised, open.face, mortise);
        mortise.tenon = mortise.box;
        if (open.face) {
            mortise.box = setOutBox(mortise);
        }
        const std::vector<JointSolid>& tenons = cuts.loose.empty() ? cuts.tenons : cuts.loose;
        if (i < tenons.size()) {
            MortiseSolid filled;
            put(tenons[i], open.inMortised, open.face, filled);
            mortise.tenon = filled.box;
        }
        mortise.isThrough = joint.isThrough() && !mortise.isHaunch;
        mortised.mortises.push_back(std::move(mortise));
    }
    for (const JointBore& bore : cuts.bores) {
        mortised.cuts.push_back(
            boreIn(bore, open.inMortised, mortised, index, boreNote(open.task.form)));
    }
    for (const JointBore& bore : cuts.ownBores) {
        tenoned.cuts.push_back(
            boreIn(bore, open.inTenoned, tenoned, index, boreNote(open.task.form)));
    }
    placeHorn(open, mortised);
    Vec3 middle{0, open.task.section.width.mm() / 2, open.task.section.thickness.mm() / 2};
    if (!cuts.mortises.empty()) {
        const Box& mouth = cuts.mortises.front().box;
        middle = {0, (mouth.min.y + mouth.max.y) / 2, (mouth.min.z + mouth.max.z) / 2};
        fillMortise(open,
                    *std::find_if(mortised.mortises.begin(),
                                  mortised.mortises.end(),
                                  [&](const MortiseSolid& m) { return m.joint == index; }),
                    mortised.bodyBox(),
                    joint.mortise);
    }
    const Frame inSpace = tenoned.frame.compose(open.inTenoned);
    joint.frame = {inSpace.toOuter(middle), inSpace.x, inSpace.y, inSpace.z};
    resolved.joints.push_back(std::move(joint));
}

ResolvedCut boreIn(const JointBore& bore,
                   const Frame& frame,
                   const ResolvedPart& part,
                   std::size_t joint,
                   std::string note) {
    ResolvedCut cut;
    cut.kind = CutKind::Bore;
    cut.box = frame.outerBounds(bore.box());
    if (!squared(frame)) {
        cut.exact = cylinderIn(bore.box(), bore.axis).transformed(frame);
        cut.box = cut.exact->bounds();
    }
    Vec3 into;
    into[bore.axis] = bore.way;
    const Vec3 way = frame.directionToOuter(into);
    const int axis = longestAxis(way);
    cut.face = faceEntered(axis, way[axis]);
    const Box wood = part.overBox();
    cut.isThrough = cut.box.min[axis] <= wood.min[axis] + kLengthTolerance.mm() &&
                    cut.box.max[axis] >= wood.max[axis] - kLengthTolerance.mm();
    cut.joint = joint;
    cut.note = std::move(note);
    return cut;
}

Frame restingFrame(const ResolvedPart& first, const ResolvedPart& second) {
    constexpr double kTouching = 0.01;  // millimetres
    const std::optional<Frame> relative = squared(relativeFrame(first.frame, second.frame));
    if (!relative) {
        return first.frame;
    }
    const Box own = first.bodyBox();
    const Box other = relative->outerBounds(second.bodyBox());
    for (int axis = 0; axis < 3; ++axis) {
        const bool isHigh = std::abs(other.min[axis] - own.max[axis]) < kTouching;
        if (!isHigh && std::abs(own.min[axis] - other.max[axis]) >= kTouching) {
            continue;
        }
        Vec3 middle;
        for (int i = 0; i < 3; ++i) {
            middle[i] =
                (std::max(own.min[i], other.min[i]) + std::min(own.max[i], other.max[i])) / 2;
        }
        Vec3 x;
        Vec3 y;
        x[axis] = isHigh ? 1.0 : -1.0;
        y[axis == 0 ? 1 : 0] = 1.0;
        const Vec3 outward = first.frame.directionToOuter(x);
        const Vec3 along = first.frame.directionToOuter(y);
        return {first.frame.toOuter(middle), outward, along, cross(outward, along)};
    }
    return first.frame;
}

}  // namespace shoulderline
