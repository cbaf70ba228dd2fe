#include "core/joint/bridle.h"

#include <algorithm>

#include "core/joint/size_chain.h"
#include "core/joint/tenon_features.h"

namespace shoulderline {

namespace {

// What is left past a corner to the end of the other part for it to count as one.
constexpr double kCornerWithin = 3.0;  // millimetres; common practice: trimmed flush

bool isAtCorner(const JointTask& task) {
    return -task.post.min.y < kCornerWithin ||
           task.post.max.y - task.section.width.mm() < kCornerWithin;
}

// Sizes that bridle and lap have in common: the whole width, through and flush.
void sizeFlush(const JointTask& task, const StatedSizes& stated, SizedJoint& joint) {
    link(joint.tenon.width, RuleId::WholeSection, {}, {}, task.section.width);
    link(joint.tenon.length, RuleId::FlushThrough, {}, {}, task.depthThere());
    link(joint.tenon.projection, RuleId::FlushEnd, {}, {}, Length());
    link(joint.tenon.shoulders.faceEdge, RuleId::NoShoulder, {}, {}, Length());
    joint.tenon.shoulders.backEdge = joint.tenon.shoulders.faceEdge;
    link(joint.mortiseWidth, RuleId::MortiseAsTenon, {}, {}, joint.tenon.thickness.value);
    state(joint.mortiseWidth, stated[SizeName::MortiseWidth]);
    link(joint.mortiseLength, RuleId::MortiseAsTenon, {}, {}, task.section.width);
    link(joint.mortiseDepth, RuleId::MortiseThrough, task.depthThere(), {}, task.depthThere());
    if (task.postAxis != 1) {
        joint.troubles.push_back(
            "a bridle or a lap needs the two parts in one plane, width along width");
    }
}

}  // namespace

SizedJoint sizeBridle(const JointTask& task, const SizingGuide& guide, const StatedSizes& stated) {
    SizedJoint joint;
    const Length stock = task.section.thickness;
    joint.tenon.thickness = shareOf(stock, RuleId::BridleThird, guide);
    link(joint.tenon.thickness,
         RuleId::ChiselNearest,
         joint.tenon.thickness.value,
         {},
         nearestOn(guide.rack, joint.tenon.thickness.value));
    state(joint.tenon.thickness, stated[SizeName::TenonThickness]);
    Size& shoulder = joint.tenon.shoulders.faceSide;
    link(shoulder, RuleId::TenonCentred, stock, {}, (stock - joint.tenon.thickness.value) / 2);
    state(shoulder, stated[SizeName::ShoulderFaceSide]);
    link(joint.tenon.shoulders.backSide,
         RuleId::ShoulderLeft,
         stock,
         joint.tenon.thickness.value + shoulder.value,
         stock - joint.tenon.thickness.value - shoulder.value);
    sizeFlush(task, stated, joint);
    sizeHorn(task, guide, stated, joint);
    return joint;
}

JointCuts cutBridle(const JointTask& task, const SizedJoint& sized) {
    const double width = task.section.width.mm();
    const double length = sized.tenon.length.value.mm();
    const double low = sized.tenon.shoulders.faceSide.value.mm();
    const double high = low + sized.tenon.thickness.value.mm();
    JointCuts cuts;
    const auto add = [&](double z0, double z1, const Box& room) {
        cuts.tenons.push_back({{{0, 0, z0}, {length, width, z1}}, std::nullopt, false});
        cuts.mortises.push_back({room, std::nullopt, false});
    };
    if (isAtCorner(task)) {
        Box slot{{0, 0, low}, {length, width, high}};
        (task.endsAtFaceEdge() ? slot.min.y : slot.max.y) = task.endsAtFaceEdge()
                                                                ? std::min(0.0, task.post.min.y)
                                                                : std::max(width, task.post.max.y);
        add(low, high, slot);
        return cuts;
    }
    const double thickness = task.section.thickness.mm();
    add(0, low, {{0, 0, std::min(0.0, task.post.min.z)}, {length, width, low}});
    add(high, thickness, {{0, 0, high}, {length, width, std::max(thickness, task.post.max.z)}});
    return cuts;
}

SizedJoint sizeLap(const JointTask& task, const SizingGuide& guide, const StatedSizes& stated) {
    SizedJoint joint;
    const Length stock = task.section.thickness;
    joint.tenon.thickness = shareOf(stock, RuleId::LapHalf, guide);
    state(joint.tenon.thickness, stated[SizeName::TenonThickness]);
    link(joint.tenon.shoulders.faceSide, RuleId::NoShoulder, {}, {}, Length());
    link(joint.tenon.shoulders.backSide,
         RuleId::ShoulderLeft,
         stock,
         joint.tenon.thickness.value,
         stock - joint.tenon.thickness.value);
    sizeFlush(task, stated, joint);
    sizeHorn(task, guide, stated, joint);
    return joint;
}

JointCuts cutLap(const JointTask& task, const SizedJoint& sized) {
    const double width = task.section.width.mm();
    const double length = sized.tenon.length.value.mm();
    const double half = sized.tenon.thickness.value.mm();
    JointCuts cuts;
    cuts.tenons.push_back({{{0, 0, 0}, {length, width, half}}, std::nullopt, false});
    cuts.mortises.push_back(
        {{{0, 0, std::min(0.0, task.post.min.z)}, {length, width, half}}, std::nullopt, false});
    return cuts;
}

}  // namespace shoulderline
