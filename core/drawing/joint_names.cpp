#include "core/drawing/joint_names.h"

#include <algorithm>
#include <vector>

#include "core/drawing/joint_twins.h"

namespace shoulderline {

namespace {

// Each once, without the hand that it has; as they are where one of them has none.
std::vector<std::string> ofBothHands(const std::vector<std::string>& names) {
    std::vector<std::string> both;
    for (const std::string& name : names) {
        const std::size_t stem = name.rfind(", ");
        const bool hasHand =
            stem != std::string::npos && (name.substr(stem + 2) == wordFor(Hand::Left) ||
                                          name.substr(stem + 2) == wordFor(Hand::Right));
        if (!hasHand) {
            return names;
        }
        if (std::find(both.begin(), both.end(), name.substr(0, stem)) == both.end()) {
            both.push_back(name.substr(0, stem));
        }
    }
    return both;
}

// Which members of a set or a pair a group is about, "back slat 1 and back slat 3"; empty where the
// drawings of these two parts are all one group, or where it has too many to name.
std::string membersNamed(const ResolvedPiece& resolved, const JointGroup& group) {
    const ResolvedJoint& first = resolved.joints[group.joints.front()];
    const auto isBetweenSame = [&](const ResolvedJoint& joint) {
        return resolved.parts[joint.tenoned].of == resolved.parts[first.tenoned].of &&
               resolved.parts[joint.mortised].of == resolved.parts[first.mortised].of;
    };
    std::vector<std::string> names;
    std::size_t inGroup = 0;
    const auto take = [&](std::size_t index) {
        const ResolvedJoint& joint = resolved.joints[index];
        const std::string& name = resolved.parts[joint.tenoned].name;
        inGroup += isBetweenSame(joint) ? 1U : 0U;
        if (isBetweenSame(joint) && std::find(names.begin(), names.end(), name) == names.end()) {
            names.push_back(name);
        }
    };
    std::for_each(group.joints.begin(), group.joints.end(), take);
    for (const std::vector<std::size_t>& joints : group.alike) {
        std::for_each(joints.begin(), joints.end(), take);
    }
    const auto all = static_cast<std::size_t>(
        std::count_if(resolved.joints.begin(), resolved.joints.end(), isBetweenSame));
    constexpr std::size_t kMost = 3;
    if (names.size() > kMost) {
        names = ofBothHands(names);
    }
    if (inGroup == all || names.size() > kMost) {
        return {};
    }
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    }
    return text;
}

}  // namespace

std::string nameOfGroup(const ResolvedPiece& resolved, const JointGroup& group) {
    std::string name = nameOfJoint(resolved, group.joints.front());
    if (const std::string some = membersNamed(resolved, group); !some.empty()) {
        name = some + " into " + resolved.parts[resolved.joints[group.joints.front()].mortised].of;
    }
    std::string tenoned = resolved.parts[resolved.joints[group.joints.front()].tenoned].of;
    for (const std::vector<std::size_t>& joints : group.alike) {
        const ResolvedJoint& joint = resolved.joints[joints.front()];
        const std::string& own = resolved.parts[joint.tenoned].of;
        name += own == tenoned ? ", into " + resolved.parts[joint.mortised].of
                               : "; " + nameOfJoint(resolved, joints.front());
        tenoned = own;
    }
    return name;
}

}  // namespace shoulderline
