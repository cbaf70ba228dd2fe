#include "core/joint/round_tenon.h"

#include <algorithm>

#include "core/geometry/cylinder.h"
#include "core/joint/mortise_and_tenon.h"
#include "core/joint/size_chain.h"

namespace shoulderline {

namespace {

Size middle(Length whole, Length diameter) {
    Size shoulder;
    link(shoulder, RuleId::TenonCentred, whole, {}, (whole - diameter) / 2);
    return shoulder;
}

}  // namespace

SizedJoint sizeRoundTenon(const JointTask& task,
                          const SizingGuide& guide,
                          const StatedSizes& stated) {
    SizedJoint joint;
    const Length thin = std::min(task.section.thickness, task.section.width);
    Size diameter = shareOf(thin, RuleId::RoundShare, guide);
    link(diameter, RuleId::PinSize, diameter.value, {}, nearestOn(guide.bits, diameter.value));
    state(diameter, stated[SizeName::TenonThickness]);
    state(diameter, stated[SizeName::Diameter]);
    joint.tenon.thickness = diameter;
    joint.tenon.width = diameter;
    Shoulders& shoulders = joint.tenon.shoulders;
    shoulders.faceSide = shoulders.backSide = middle(task.section.thickness, diameter.value);
    shoulders.faceEdge = shoulders.backEdge = middle(task.section.width, diameter.value);
    sizeBlindLength(task, guide, stated, joint);
    link(joint.mortiseWidth, RuleId::MortiseAsTenon, {}, {}, diameter.value);
    state(joint.mortiseWidth, stated[SizeName::MortiseWidth]);
    joint.mortiseLength = joint.mortiseWidth;
    joint.further.push_back({SizeName::Diameter, std::move(diameter)});
    return joint;
}

JointCuts cutRoundTenon(const JointTask& task, const SizedJoint& sized) {
    const double radius = sized.tenon.thickness.value.mm() / 2;
    const Vec3 centre{0,
                      sized.tenon.shoulders.faceEdge.value.mm() + radius,
                      sized.tenon.shoulders.faceSide.value.mm() + radius};
    const auto round = [&](double r, double length) {
        const Box box{centre - Vec3{0, r, r}, centre + Vec3{length, r, r}};
        return JointSolid{box, cylinderIn(box, 0), false};
    };
    JointCuts cuts;
    cuts.tenons.push_back(round(radius, sized.tenon.length.value.mm()));
    cuts.mortises.push_back(round(sized.mortiseWidth.value.mm() / 2,
                                  sized.mortiseDepth.value.mm() + task.faceBelow().mm()));
    return cuts;
}

}  // namespace shoulderline
