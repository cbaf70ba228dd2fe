#include <algorithm>

#include "core/joint/mortise_and_tenon.h"
#include "core/joint/size_chain.h"
#include "core/joint/tenon_features.h"
#include "core/joint/tenon_sizes.h"

namespace shoulderline {

namespace {

Size blindLength(const TenonedSection& section, Length depthThere, const SizingGuide& guide) {
    Size size;
    if (isLetIn(section.role)) {
        const Length usual = guide.rules[RuleId::SlatTenonLength].length();
        link(size, RuleId::SlatTenonLength, depthThere, {}, usual);
    } else {
        const Length share = depthThere * guide.rules[RuleId::TenonLengthShare].value;
        link(size, RuleId::TenonLengthShare, depthThere, {}, share);
    }
    const Length most = depthThere - guide.rules[RuleId::MortiseFloorLeast].length() -
                        onGrid(RuleId::MortiseDepthExtra, guide);
    if (most < size.value) {
        link(size, RuleId::MortiseFloorLeast, depthThere, {}, most);
    }
    toGrid(size, snapDown(size.value, guide.grid), guide.grid);
    return size;
}

// A length into the wood from where the face is to one from the shoulder.
void fromFaceAsItIs(const JointTask& task, Size& length) {
    const Length below = task.faceBelow();
    if (below > kLengthTolerance) {
        link(length, RuleId::FaceAsItIs, below, {}, length.value + below);
    } else if (below < -kLengthTolerance) {
        link(length, RuleId::ShoulderPastFace, -below, {}, length.value + below);
    }
}

constexpr double kFinestStep = 0.5;  // millimetres, what a maker in millimetres measures by

// Ends the tenon so that its mortise leaves wood before what it would run into.
void shorten(const JointTask& task, const SizingGuide& guide, Size& length) {
    if (!task.form.has(JointFeature::Shortened) || task.neighbourBefore <= kLengthTolerance) {
        return;
    }
    const Length gap = guide.rules[RuleId::MortiseGapLeast].length();
    const Length most = task.neighbourBefore - gap - onGrid(RuleId::MortiseDepthExtra, guide);
    // As near as the maker measures: thirty-seconds, half millimetres.
    const Length step = std::max(guide.grid / 2, Length::mm(kFinestStep));
    const Length shorter = guide.grid > Length() ? snapDown(most, step) : most;
    if (shorter < length.value && shorter > kLengthTolerance) {
        link(length, RuleId::ShortOfNeighbour, gap, {}, shorter);
    }
}

}  // namespace

void sizeThrough(SizedJoint& joint,
                 const JointTask& task,
                 const SizingGuide& guide,
                 const StatedSizes& stated) {
    Size& projection = joint.tenon.projection;
    const Length depthThere = task.depthThere();
    projection = task.form.has(JointFeature::Tusked) ? tuskProjection(guide, stated, joint)
                                                     : fixedSize(RuleId::ThroughProjection, guide);
    state(projection, stated[SizeName::Projection]);
    link(joint.tenon.length,
         RuleId::ThroughLength,
         depthThere,
         projection.value,
         depthThere + projection.value);
    fromFaceAsItIs(task, joint.tenon.length);
    link(joint.mortiseDepth, RuleId::MortiseThrough, depthThere, {}, depthThere);
}

void sizeBlindLength(const JointTask& task,
                     const SizingGuide& guide,
                     const StatedSizes& stated,
                     SizedJoint& joint) {
    const Length extra = onGrid(RuleId::MortiseDepthExtra, guide);
    Size& length = joint.tenon.length;
    if (task.form.kind == JointKind::Stub && task.groove) {
        link(length, RuleId::StubLength, task.groove->depth, extra, task.groove->depth - extra);
    } else if (task.form.has(JointFeature::Mitred) && task.neighbourBeyond > kLengthTolerance) {
        link(length, RuleId::MitreLength, {}, {}, task.neighbourBeyond);
    } else {
        length = blindLength(task.section, task.depthThere(), guide);
    }
    fromFaceAsItIs(task, length);
    shorten(task, guide, length);
    state(length, stated[SizeName::TenonLength]);
    const Length inWood = length.value - task.faceBelow();
    const Length asRuled = guide.rules[RuleId::MortiseDepthExtra].length();
    link(joint.mortiseDepth, RuleId::MortiseDepthExtra, inWood, extra, inWood + asRuled);
    toGrid(joint.mortiseDepth, inWood + extra, guide.grid);
    state(joint.mortiseDepth, stated[SizeName::MortiseDepth]);
}

}  // namespace shoulderline
