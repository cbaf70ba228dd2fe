#include <algorithm>
#include <cmath>

#include "core/check/checks.h"
#include "core/joint/mortise_and_tenon.h"

namespace shoulderline {

namespace {

// How far a mortise stands out past the body of its part, across the way it is entered: the most, in millimetres.
double beyondFace(const ResolvedPart& part, const MortiseSolid& mortise) {
    const Box wood = part.bodyBox();
    const int entered = mortise.face == Face::StartEnd || mortise.face == Face::FarEnd
                            ? 0
                            : (mortise.face == Face::FaceEdge || mortise.face == Face::BackEdge ? 1 : 2);
    double beyond = 0.0;
    for (int axis = 0; axis < 3; ++axis) {
        if (axis != entered) {
            beyond = std::max({beyond, wood.min[axis] - mortise.box.min[axis], mortise.box.max[axis] - wood.max[axis]});
        }
    }
    return beyond;
}

void checkOnFace(const CheckContext& context, const ResolvedPart& part, const MortiseSolid& mortise, std::vector<Finding>& findings) {
    const double beyond = beyondFace(part, mortise);
    if (beyond < kLengthTolerance.mm()) {
        return;
    }
    const ResolvedJoint& joint = context.resolved.joints[mortise.joint];
    Finding finding = context.finding(RuleId::MouthOnFace, Severity::MustMend);
    finding.parts = {joint.tenoned, joint.mortised};
    finding.joint = mortise.joint;
    finding.value = beyond;
    finding.unit = "mm";
    finding.message = "{joint}: the mouth runs off the " + std::string(wordFor(mortise.face)) + " of {other} by " + context.shownMm(beyond);
    finding.mends.push_back({"move {part} back onto the face by " + context.shownMm(beyond), std::nullopt});
    const Length narrower = joint.tenon.width.value - Length::mm(beyond * 2);
    if (narrower.mm() > 1.0) {
        finding.mends.push_back({"make the tenon narrower, " + context.shown(narrower),
                                 stateSize(context, mortise.joint, SizeName::TenonWidth, narrower)});
    }
    findings.push_back(std::move(finding));
}

void checkChisel(const CheckContext& context, std::size_t index, std::vector<Finding>& findings) {
    const ResolvedJoint& joint = context.resolved.joints[index];
    const Length width = joint.mortise.width.value;
    const Length nearest = nearestChisel(context.resolved.rack, width);
    if (nearlyEqual(nearest, width, Length::mm(0.01))) {
        return;
    }
    Finding finding = context.finding(RuleId::ChiselNearest, Severity::LookAt);
    finding.parts = {joint.tenoned, joint.mortised};
    finding.joint = index;
    finding.value = width.mm();
    finding.limit = nearest.mm();
    finding.unit = "mm";
    finding.message = "{joint}: no chisel on the rack cuts a mortise " + context.shown(width) + " wide; the nearest is " + context.shown(nearest);
    finding.mends.push_back({"make the tenon " + context.shown(nearest), stateSize(context, index, SizeName::TenonThickness, nearest)});
    findings.push_back(std::move(finding));
}

}  // namespace

void checkMouths(const CheckContext& context, std::vector<Finding>& findings) {
    for (const ResolvedPart& part : context.resolved.parts) {
        for (const MortiseSolid& mortise : part.mortises) {
            checkOnFace(context, part, mortise, findings);
        }
    }
    for (std::size_t i = 0; i < context.resolved.joints.size(); ++i) {
        if (context.resolved.joints[i].kind != JointKind::Rests) {
            checkChisel(context, i, findings);
        }
    }
}

}  // namespace shoulderline
