#include <cmath>

#include "core/check/checks.h"
#include "core/resolve/joint_angles.h"

namespace shoulderline {

// A tenon that is square to its post and not in line with its own part has grain that runs out
// through its cheeks.
void checkAngles(const CheckContext& context, std::vector<Finding>& findings) {
    const double most = context.resolved.rules[RuleId::GrainRunOut].value;
    for (std::size_t i = 0; i < context.resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = context.resolved.joints[i];
        if (!joint.has(JointFeature::SquareToPost)) {
            continue;
        }
        const JointAngles angles = anglesOf(context.resolved, joint);
        const double slope = std::tan(angles.runOut.radians());
        if (slope <= most) {
            continue;
        }
        Finding finding = context.finding(RuleId::GrainRunOut, Severity::LookAt);
        finding.parts = {joint.tenoned, joint.mortised};
        finding.joint = i;
        finding.value = slope;
        finding.limit = most;
        finding.message = "{joint}: the grain runs out of the tenon at " +
                          slopeText(angles.runOut) + "; the rule book asks " +
                          slopeText(Angle::radians(std::atan(most))) + " at most";
        finding.mends.push_back({"let the tenon run in line with {part}",
                                 SetJointFeature{context.resolved.parts[joint.tenoned].of,
                                                 context.resolved.parts[joint.mortised].of,
                                                 JointFeature::SquareToPost,
                                                 false}});
        findings.push_back(std::move(finding));
    }
}

}  // namespace shoulderline
