#include "core/drawing/joint_members.h"

#include <algorithm>
#include <cmath>

#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

Box inJoint(const ResolvedJoint& joint, const ResolvedPart& part, const Box& box) {
    return relativeFrame(joint.frame, part.frame).outerBounds(box);
}

int mainAxis(Vec3 v) {
    return std::abs(v.x) > 0.5 ? 0 : (std::abs(v.y) > 0.5 ? 1 : 2);
}

// Leaves of both members what shows the joint.
void shorten(JointMembers& m) {
    const double reach = std::max(0.6 * m.tenon.size().x, 0.25 * m.rail.size().y);
    m.railIsCut = m.rail.min.x < -reach;
    m.rail.min.x = std::max(m.rail.min.x, -reach);
    const int axis = m.postAxis;
    const double beyond = std::max(0.35 * m.mortise.size()[axis], 0.3 * m.post.size().x);
    const double low = axis == 0 ? 0.0 : std::min(m.mortise.min[axis], m.rail.min[axis]);
    const double high =
        axis == 0 ? m.mortise.max.x : std::max(m.mortise.max[axis], m.rail.max[axis]);
    m.postIsCutLow = m.post.min[axis] < low - beyond;
    m.postIsCutHigh = m.post.max[axis] > high + beyond;
    m.post.min[axis] = std::max(m.post.min[axis], low - beyond);
    m.post.max[axis] = std::min(m.post.max[axis], high + beyond);
}

}  // namespace

JointMembers membersOf(const ResolvedPiece& resolved, std::size_t index) {
    const ResolvedJoint& joint = resolved.joints[index];
    const ResolvedPart& tenoned = resolved.parts[joint.tenoned];
    const ResolvedPart& mortised = resolved.parts[joint.mortised];
    JointMembers m;
    m.rail = inJoint(joint, tenoned, tenoned.bodyBox());
    m.post = inJoint(joint, mortised, mortised.bodyBox());
    // The main ones come first, a haunch and the second of twins after them.
    const auto isOfJoint = [index](const auto& solid) { return solid.joint == index; };
    const auto mortise =
        std::find_if(mortised.mortises.begin(), mortised.mortises.end(), isOfJoint);
    if (mortise != mortised.mortises.end()) {
        m.mortise = inJoint(joint, mortised, mortise->box);
        m.tenon = inJoint(joint, mortised, mortise->tenon);  // of a loose tenon half
    }
    const auto tenon = std::find_if(tenoned.tenons.begin(), tenoned.tenons.end(), isOfJoint);
    if (tenon != tenoned.tenons.end()) {
        m.tenon = inJoint(joint, tenoned, tenon->box);
    }
    const Frame relative = relativeFrame(joint.frame, mortised.frame);
    m.postAxis = mainAxis(relative.x);
    m.referenceAxis = mainAxis(joint.mortise.reference == Face::FaceEdge ? relative.y : relative.z);
    m.reference = relative.origin[m.referenceAxis];
    shorten(m);
    return m;
}

}  // namespace shoulderline
