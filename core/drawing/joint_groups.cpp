#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <map>

#include "core/drawing/joint_sheets.h"
#include "core/resolve/joint_angles.h"
#include "core/resolve/set_up_order.h"

namespace shoulderline {

namespace {

// What tells joints apart, lengths in thousandths of a millimetre, angles of a degree.
using Signature = std::array<long, 16>;

long thousandths(double mm) {
    return std::lround(mm * 1000.0);
}

// The features of a joint as one number.
long featureBits(const ResolvedJoint& joint) {
    long bits = 0;
    for (const JointFeature feature : joint.features) {
        bits |= 1L << static_cast<int>(feature);
    }
    return bits;
}

Signature signatureOf(const ResolvedPiece& resolved, std::size_t index) {
    const ResolvedJoint& joint = resolved.joints[index];
    Vec3 mouth;
    for (const MortiseSolid& mortise : resolved.parts[joint.mortised].mortises) {
        if (mortise.joint == index && !mortise.isHaunch) {
            mouth = mortise.box.size();
        }
    }
    const Tenon& tenon = joint.tenon;
    const EndAngles end = endAnglesOf(resolved.parts[joint.tenoned], joint.end);
    return {static_cast<long>(resolved.parts[joint.tenoned].stated),
            static_cast<long>(resolved.parts[joint.mortised].stated),
            static_cast<long>(joint.kind) + 100 * featureBits(joint),
            thousandths(tenon.length.value.mm()),
            thousandths(tenon.width.value.mm()),
            thousandths(tenon.thickness.value.mm()),
            thousandths(tenon.shoulders.faceSide.value.mm()),
            thousandths(tenon.shoulders.faceEdge.value.mm()),
            thousandths(mouth.x),
            thousandths(mouth.y),
            thousandths(mouth.z),
            thousandths(joint.mortise.fromFace.value.mm()),
            static_cast<long>(joint.mortise.face),
            thousandths(end.mitre.degrees()),
            thousandths(end.tilt.degrees()),
            joint.further.empty() ? 0 : thousandths(joint.further.front().size.value.mm())};
}

bool isSameSetting(const SetUp& a, const SetUp& b) {
    constexpr double kSameTurn = 1e-6;  // radians
    return a.tool == b.tool && a.part == b.part && a.work == b.work && a.reference == b.reference &&
           a.along == b.along && a.fromShoulder == b.fromShoulder &&
           nearlyEqual(a.cutter, b.cutter) && nearlyEqual(a.fence, b.fence) &&
           nearlyEqual(a.depth, b.depth) && nearlyEqual(a.from, b.from) &&
           nearlyEqual(a.to, b.to) && nearlyEqual(a.reach, b.reach) &&
           nearlyEqual(a.mouth, b.mouth) && nearlyEqual(a.runsOutAt, b.runsOutAt) &&
           nearlyEqual(a.fenceAtEnd, b.fenceAtEnd) && nearlyEqual(a.pared, b.pared) &&
           nearlyEqual(a.eased, b.eased) && a.isThrough == b.isThrough &&
           std::abs((a.turn - b.turn).radians()) < kSameTurn;
}

// The first of a group is drawn in its own frame. One whose frame is left-handed (at the start of a
// right-hand part, at the far end of its mirrored twin) would be seen as in a mirror.
void putDrawableFirst(const ResolvedPiece& resolved, JointGroup& group) {
    const auto drawable =
        std::find_if(group.joints.begin(), group.joints.end(), [&](std::size_t joint) {
            return resolved.joints[joint].frame.isRightHanded();
        });
    if (drawable != group.joints.end()) {
        std::rotate(group.joints.begin(), drawable, drawable + 1);
    }
}

}  // namespace

std::vector<JointGroup> jointGroups(const ResolvedPiece& resolved) {
    std::vector<JointGroup> groups;
    std::map<Signature, std::size_t> groupOf;
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = resolved.joints[i];
        if (!joint.hasTenon() && joint.further.empty()) {
            continue;  // nothing is cut
        }
        const auto found = groupOf.emplace(signatureOf(resolved, i), groups.size());
        if (found.second) {
            groups.emplace_back();
        }
        groups[found.first->second].joints.push_back(i);
    }
    for (JointGroup& group : groups) {
        putDrawableFirst(resolved, group);
    }
    return groups;
}

std::vector<SetUp> setUpsOf(const ResolvedPiece& resolved, const JointGroup& group) {
    std::vector<std::vector<SetUp>> steps;
    for (const std::size_t joint : group.joints) {
        std::vector<SetUp> own = setUpsOf(resolved, joint);
        steps.resize(std::max(steps.size(), own.size()));
        for (std::size_t i = 0; i < own.size(); ++i) {
            std::vector<SetUp>& step = steps[i];
            // Left and right, and each of a row, are one part to the one who sets the machine.
            if (!step.empty() &&
                resolved.parts[own[i].part].stated == resolved.parts[step.front().part].stated) {
                own[i].part = step.front().part;
            }
            if (std::none_of(step.begin(), step.end(), [&](const SetUp& other) {
                    return isSameSetting(own[i], other);
                })) {
                step.push_back(std::move(own[i]));
            }
        }
    }
    std::vector<SetUp> all;
    for (std::vector<SetUp>& step : steps) {
        std::move(step.begin(), step.end(), std::back_inserter(all));
    }
    return all;
}

std::vector<std::string> setUpLines(const Piece& piece,
                                    const ResolvedPiece& resolved,
                                    const JointGroup& group,
                                    bool isEachFull) {
    const std::vector<SetUp> setUps = setUpsOf(resolved, group);
    const std::size_t orders = orderTexts(setUps, resolved, piece.style).size();
    std::vector<std::string> lines = setUpTexts(setUps, resolved, piece.style, isEachFull);
    std::vector<std::string> square =
        outOfSquareSettings(resolved, resolved.joints[group.joints.front()]);
    lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(orders),
                 std::make_move_iterator(square.begin()),
                 std::make_move_iterator(square.end()));
    return lines;
}

}  // namespace shoulderline
