#include "core/resolve/joint_places.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/cylinder.h"
#include "core/resolve/box_placing.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

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
