#include "core/joint/let_in.h"

#include "core/joint/size_chain.h"

namespace shoulderline {

namespace {

Size whole(Length size) {
    Size sized;
    link(sized, RuleId::WholeSection, {}, {}, size);
    return sized;
}

bool isStopped(const JointTask& task) {
    return task.form.kind == JointKind::Housed && task.form.has(JointFeature::Stopped);
}

}  // namespace

SizedJoint sizeLetIn(const JointTask& task, const SizingGuide& guide, const StatedSizes& stated) {
    SizedJoint joint;
    joint.tenon.thickness = whole(task.section.thickness);
    joint.tenon.width = whole(task.section.width);
    joint.tenon.length = fixedSize(RuleId::LetInDepth, guide);
    if (task.faceBelow() > kLengthTolerance) {
        link(joint.tenon.length,
             RuleId::FaceAsItIs,
             task.faceBelow(),
             {},
             joint.tenon.length.value + task.faceBelow());
    }
    state(joint.tenon.length, stated[SizeName::TenonLength]);
    Shoulders& shoulders = joint.tenon.shoulders;
    for (Size* shoulder :
         {&shoulders.faceSide, &shoulders.backSide, &shoulders.faceEdge, &shoulders.backEdge}) {
        link(*shoulder, RuleId::NoShoulder, {}, {}, {});
    }
    if (isStopped(task)) {
        Size by = fixedSize(RuleId::StoppedBy, guide);
        state(by, stated[SizeName::StoppedBy]);
        shoulders.faceEdge = by;
        link(joint.tenon.width,
             RuleId::TenonWidthLeft,
             task.section.width,
             by.value,
             task.section.width - by.value);
        joint.further.push_back({SizeName::StoppedBy, std::move(by)});
    }
    link(joint.mortiseWidth, RuleId::MortiseAsTenon, {}, {}, joint.tenon.thickness.value);
    link(joint.mortiseLength, RuleId::MortiseAsTenon, {}, {}, joint.tenon.width.value);
    link(joint.mortiseDepth,
         RuleId::MortiseAsTenon,
         {},
         {},
         joint.tenon.length.value - task.faceBelow());
    state(joint.mortiseWidth, stated[SizeName::MortiseWidth]);
    state(joint.mortiseLength, stated[SizeName::MortiseLength]);
    state(joint.mortiseDepth, stated[SizeName::MortiseDepth]);
    return joint;
}

JointCuts cutLetIn(const JointTask& task, const SizedJoint& sized) {
    const double front = sized.tenon.shoulders.faceEdge.value.mm();
    Box box;
    box.min = {0, front, 0};
    box.max = {sized.tenon.length.value.mm(), task.section.width.mm(), task.section.thickness.mm()};
    Box room = box;
    room.max.x = sized.mortiseDepth.value.mm() + task.faceBelow().mm();
    if (task.form.kind == JointKind::Housed) {
        // Across the face: the way that is neither in nor along the housed-in part.
        const int across = task.postAxis == 1 ? 2 : 1;
        if (!isStopped(task) || across != 1) {
            room.min[across] = std::min(room.min[across], task.post.min[across]);
        }
        room.max[across] = std::max(room.max[across], task.post.max[across]);
    }
    JointCuts cuts;
    cuts.tenons.push_back({box, std::nullopt, false});
    cuts.mortises.push_back({room, std::nullopt, false});
    return cuts;
}

}  // namespace shoulderline
