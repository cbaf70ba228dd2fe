#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "core/drawing/joint_sheets.h"
#include "core/resolve/joint_angles.h"

namespace shoulderline {

namespace {

// What tells joints apart, lengths in thousandths of a millimetre.
using Signature = std::array<long, 14>;

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
            joint.further.empty() ? 0 : thousandths(joint.further.front().size.value.mm())};
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
    return groups;
}

std::vector<SetUp> setUpsOf(const ResolvedPiece& resolved, const JointGroup& group) {
    std::vector<SetUp> shared = setUpsOf(resolved, group.joints.front());
    for (const std::size_t joint : group.joints) {
        const std::vector<SetUp> own = setUpsOf(resolved, joint);
        for (std::size_t i = 0; i < std::min(shared.size(), own.size()); ++i) {
            if (!nearlyEqual(own[i].from, shared[i].from) ||
                !nearlyEqual(own[i].to, shared[i].to)) {
                shared[i].from = shared[i].to = Length();
            }
        }
    }
    return shared;
}

std::vector<std::string> setUpLines(const Piece& piece,
                                    const ResolvedPiece& resolved,
                                    const JointGroup& group) {
    std::vector<std::string> lines =
        outOfSquareSettings(resolved, resolved.joints[group.joints.front()]);
    for (std::string& text : setUpTexts(setUpsOf(resolved, group), resolved, piece.style)) {
        lines.push_back(std::move(text));
    }
    return lines;
}

}  // namespace shoulderline
