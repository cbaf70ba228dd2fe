#include <algorithm>
#include <cmath>

#include "core/check/checks.h"
#include "core/check/hole_in_shape.h"
#include "core/joint/size_chain.h"
#include "core/resolve/frames.h"
#include "core/resolve/holes.h"

namespace shoulderline {

namespace {

struct Beyond {
    double by = 0.0;  // millimetres
    int axis = 0;     // of the mortised part
};

// How far a mortise stands out past the body of its part, across the way it is entered: the most.
Beyond beyondFace(const ResolvedPart& part, const MortiseSolid& mortise) {
    const Box wood = part.bodyBox();
    const int entered = inwardOf(mortise.face).axis;
    Beyond most;
    const Box hollow = mortise.bounds();
    for (int axis = 0; axis < 3; ++axis) {
        if (axis != entered) {
            const double by =
                std::max(wood.min[axis] - hollow.min[axis], hollow.max[axis] - wood.max[axis]);
            most = by > most.by ? Beyond{by, axis} : most;
        }
    }
    return most;
}

void checkOnFace(const CheckContext& context,
                 const ResolvedPart& part,
                 const MortiseSolid& mortise,
                 std::vector<Finding>& findings) {
    const auto [beyond, axis] = beyondFace(part, mortise);
    if (beyond < kLengthTolerance.mm()) {
        return;
    }
    const ResolvedJoint& joint = context.resolved.joints[mortise.joint];
    Finding finding = context.finding(RuleId::MouthOnFace, Severity::MustMend);
    finding.parts = {joint.tenoned, joint.mortised};
    finding.joint = mortise.joint;
    finding.value = beyond;
    finding.unit = "mm";
    finding.message = "{joint}: the mouth runs off the " + std::string(wordFor(mortise.face)) +
                      " of {other} by " + context.shownMm(beyond);
    finding.mends.push_back(
        {"move {part} back onto the face by " + context.shownMm(beyond), std::nullopt});
    const bool alongWidth = std::abs(dot(joint.frame.y, part.frame.axis(axis))) > 0.5;
    const Size& mouth = alongWidth ? joint.mortise.length : joint.mortise.width;
    if (mouth.state != SizeState::ByRule) {
        finding.mends.push_back(
            {"go back to the rule for the mouth, " +
                 context.shown(alongWidth ? joint.tenon.width.value : joint.tenon.thickness.value),
             backToRule(context,
                        mortise.joint,
                        alongWidth ? SizeName::MortiseLength : SizeName::MortiseWidth)});
    }
    const bool mayNarrow = alongWidth && mouth.state == SizeState::ByRule &&
                           joint.tenon.shoulders.faceEdge.state == SizeState::ByRule &&
                           joint.tenon.shoulders.backEdge.state == SizeState::ByRule;
    const Length narrower = joint.tenon.width.value - Length::mm(beyond * 2);
    if (mayNarrow && narrower.mm() > 1.0) {
        finding.mends.push_back(
            {"make the tenon narrower, " + context.shown(narrower),
             stateSize(context, mortise.joint, SizeName::TenonWidth, narrower)});
    }
    findings.push_back(std::move(finding));
}

// How far a hole bored for a joint stands out past the body of its part, across the way it goes in,
// or past the shape of the face that it is bored in.
double holeBeyondFace(const ResolvedPart& part, const ResolvedCut& hole) {
    const Box wood = part.bodyBox();
    const int entered = inwardOf(hole.face).axis;
    double by = 0.0;
    for (int axis = 0; axis < 3; ++axis) {
        if (axis != entered) {
            by = std::max(
                {by, wood.min[axis] - hole.box.min[axis], hole.box.max[axis] - wood.max[axis]});
        }
    }
    if (const Outline* shape = shapedOutline(part, hole.face)) {
        constexpr double kRimSlack = 0.02;  // a hair over how closely a rim is followed
        const double out = outOfOutline(*shape, roundHole(hole), hole.face, hole.isThrough);
        by = out > kRimSlack ? std::max(by, out) : by;
    }
    return by;
}

// A screw's hole or its plug, a dowel's or a pin's: one as wide as the part has no wood around it.
void checkHolesOnFace(const CheckContext& context,
                      std::size_t index,
                      std::vector<Finding>& findings) {
    const ResolvedPart& part = context.resolved.parts[index];
    for (const ResolvedCut& hole : part.cuts) {
        const double along = hole.box.centre().x;
        const bool isInBody = along > 0.0 && along < part.shoulderLength.value.mm();
        if (hole.kind != CutKind::Bore || !hole.joint || hole.exact || !isInBody) {
            continue;
        }
        const double beyond = holeBeyondFace(part, hole);
        if (beyond < kLengthTolerance.mm()) {
            continue;
        }
        const ResolvedJoint& joint = context.resolved.joints[*hole.joint];
        const Vec3 size = hole.box.size();
        const double diameter = size[(inwardOf(hole.face).axis + 1) % 3];
        const double most = diameter - 2.0 * beyond;
        Finding finding = context.finding(RuleId::MouthOnFace, Severity::MustMend);
        finding.parts = {joint.tenoned, joint.mortised};
        finding.joint = *hole.joint;
        finding.value = beyond;
        finding.unit = "mm";
        finding.message = "{joint}: a hole of " + context.shownMm(diameter) +
                          " breaks out of the " + part.of + " by " + context.shownMm(beyond);
        if (most > kLengthTolerance.mm()) {
            finding.mends.push_back(
                {"bore less than " + context.shownMm(most) + ", or make the part thicker",
                 std::nullopt});
        }
        findings.push_back(std::move(finding));
    }
}

void checkChisel(const CheckContext& context, std::size_t index, std::vector<Finding>& findings) {
    const ResolvedJoint& joint = context.resolved.joints[index];
    const Length width = joint.mortise.width.value;
    const Length nearest = nearestOn(context.resolved.rack, width);
    // A mouth as found is cut already, whatever cut it.
    if (joint.mortise.width.state == SizeState::AsFound ||
        nearlyEqual(nearest, width, Length::mm(0.01))) {
        return;
    }
    Finding finding = context.finding(RuleId::ChiselNearest, Severity::LookAt);
    finding.parts = {joint.tenoned, joint.mortised};
    finding.joint = index;
    finding.value = width.mm();
    finding.limit = nearest.mm();
    finding.unit = "mm";
    finding.message = "{joint}: no chisel on the rack cuts a mortise " + context.shown(width) +
                      " wide; the nearest is " + context.shown(nearest);
    if (followsShoulders(joint, SizeName::TenonThickness)) {
        finding.mends.push_back({"go back to the rule for the shoulder at the back side",
                                 backToRule(context, index, SizeName::ShoulderBackSide)});
    } else if (joint.mortise.width.state == SizeState::ByRule) {
        finding.mends.push_back({"make the tenon " + context.shown(nearest),
                                 stateSize(context, index, SizeName::TenonThickness, nearest)});
    } else {
        finding.mends.push_back({"make the mortise " + context.shown(nearest) + " wide",
                                 stateSize(context, index, SizeName::MortiseWidth, nearest)});
    }
    findings.push_back(std::move(finding));
}

// One direction in which a mortise takes its tenon, with the sizes that decide it.
struct Fit {
    const char* mouthIs;
    const char* tenonIs;
    const Size& mouth;
    const Size& tenon;
    SizeName mouthName;
    SizeName tenonName;
    Length allowance;  // by which the mortise is larger by rule
};

void checkFit(const CheckContext& context,
              std::size_t index,
              const Fit& fit,
              std::vector<Finding>& findings) {
    const bool isTight = fit.mouth.value < fit.tenon.value - kLengthTolerance;
    // A mouth that came out larger is one to fit the tenon to; one stated larger is meant so.
    const bool isLoose = fit.mouth.state == SizeState::AsFound && fit.allowance == Length() &&
                         fit.mouth.value > fit.tenon.value + kLengthTolerance;
    if (!isTight && !isLoose) {
        return;
    }
    const ResolvedJoint& joint = context.resolved.joints[index];
    Finding finding =
        context.finding(RuleId::MouthTakesTenon, isTight ? Severity::MustMend : Severity::LookAt);
    finding.parts = {joint.tenoned, joint.mortised};
    finding.joint = index;
    finding.value = fit.mouth.value.mm();
    finding.limit = fit.tenon.value.mm();
    finding.unit = "mm";
    finding.message = "{joint}: the mortise is " + context.shown(fit.mouth.value) + " " +
                      fit.mouthIs + " and its tenon " + context.shown(fit.tenon.value) + " " +
                      fit.tenonIs + (isTight ? ": it does not go in" : ": it is loose");
    const Length pared = fit.mouth.value - fit.allowance;
    if (!followsShoulders(joint, fit.tenonName) && pared > kLengthTolerance) {
        finding.mends.push_back(
            {std::string(isTight ? "pare the tenon to the mortise, " : "make the tenon to fit, ") +
                 context.shown(pared) + " " + fit.tenonIs,
             stateSize(context, index, fit.tenonName, pared)});
    }
    if (isTight && fit.mouth.state != SizeState::ByRule) {
        finding.mends.push_back({"go back to the rule for the mortise, " +
                                     context.shown(fit.tenon.value + fit.allowance) + " " +
                                     fit.mouthIs,
                                 backToRule(context, index, fit.mouthName)});
    }
    findings.push_back(std::move(finding));
}

void checkFits(const CheckContext& context, std::size_t index, std::vector<Finding>& findings) {
    const ResolvedJoint& joint = context.resolved.joints[index];
    const Tenon& tenon = joint.tenon;
    checkFit(context,
             index,
             {"wide",
              "thick",
              joint.mortise.width,
              tenon.thickness,
              SizeName::MortiseWidth,
              SizeName::TenonThickness,
              {}},
             findings);
    checkFit(context,
             index,
             {"long",
              "wide",
              joint.mortise.length,
              tenon.width,
              SizeName::MortiseLength,
              SizeName::TenonWidth,
              {}},
             findings);
    if (!joint.isThrough()) {
        checkFit(context,
                 index,
                 {"deep",
                  "long",
                  joint.mortise.depth,
                  tenon.length,
                  SizeName::MortiseDepth,
                  SizeName::TenonLength,
                  context.resolved.rules[RuleId::MortiseDepthExtra].length()},
                 findings);
    }
}

}  // namespace

void checkMouths(const CheckContext& context, std::vector<Finding>& findings) {
    for (const ResolvedPart& part : context.resolved.parts) {
        for (const MortiseSolid& mortise : part.mortises) {
            const ResolvedJoint& joint = context.resolved.joints[mortise.joint];
            // A haunch, a bridle and a lap are open at an edge; so is a housing.
            const bool isOpen =
                mortise.isHaunch || !joint.form().isSized() || joint.kind == JointKind::Housed;
            if (!isOpen) {
                checkOnFace(context, part, mortise, findings);
            }
        }
    }
    for (std::size_t i = 0; i < context.resolved.parts.size(); ++i) {
        checkHolesOnFace(context, i, findings);
    }
    for (std::size_t i = 0; i < context.resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = context.resolved.joints[i];
        if (joint.form().isSized() && !joint.form().isWholeSection() &&
            joint.kind != JointKind::Round && joint.kind != JointKind::Stub) {
            checkChisel(context, i, findings);
            checkFits(context, i, findings);
        }
    }
}

}  // namespace shoulderline
