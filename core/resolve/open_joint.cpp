#include <algorithm>

#include "core/resolve/end_plane.h"
#include "core/resolve/frames.h"
#include "core/resolve/joint_places.h"
#include "core/resolve/shaped_face.h"
#include "core/resolve/stations.h"

namespace shoulderline {

namespace {

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

}  // namespace shoulderline
