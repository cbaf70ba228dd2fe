#include <cmath>

#include "core/resolve/face_there.h"
#include "core/resolve/frames.h"
#include "core/resolve/joint_places.h"

namespace shoulderline {

namespace {

// A tenon whose end is mitred, in the mortised part's frame.
struct MitredTenon {
    std::size_t joint = 0;
    Box box;      // in the frame of JointSolid
    Frame frame;  // of JointSolid
};

// The cheek or edge of `tenon` that looks most nearly along `towards`, as a plane that its wood
// lies behind.
HalfSpace sideTowards(const MitredTenon& tenon, Vec3 towards) {
    const double y = dot(tenon.frame.y, towards);
    const double z = dot(tenon.frame.z, towards);
    const int axis = std::abs(y) >= std::abs(z) ? 1 : 2;
    const bool atHigh = (axis == 1 ? y : z) > 0;
    Vec3 corner = atHigh ? tenon.box.max : tenon.box.min;
    corner.x = 0.0;
    const Vec3 normal = atHigh ? tenon.frame.axis(axis) : -tenon.frame.axis(axis);
    return {normal, dot(normal, tenon.frame.toOuter(corner))};
}

// A point on both planes.
Vec3 onBoth(const HalfSpace& a, const HalfSpace& b) {
    const double c = dot(a.normal, b.normal);
    const double free = 1 - c * c;
    return a.normal * ((a.offset - b.offset * c) / free) +
           b.normal * ((b.offset - a.offset * c) / free);
}

bool shareStretch(const MitredTenon& a, const MitredTenon& b) {
    const Box one = a.frame.outerBounds(a.box);
    const Box other = b.frame.outerBounds(b.box);
    return one.min.x < other.max.x && other.min.x < one.max.x;
}

}  // namespace

std::vector<MitreCut> mitreEnds(std::span<OpenJoint> joints, const SizingGuide& guide) {
    constexpr double kApartBy = 0.5;  // of the ways in: at least 60 degrees to one another
    std::vector<MitredTenon> mitred;
    for (std::size_t i = 0; i < joints.size(); ++i) {
        const OpenJoint& joint = joints[i];
        if (joint.task.form.has(JointFeature::Mitred)) {
            const JointCuts cuts = cutJoint(joint.task, joint.sized, guide);
            if (!cuts.mortises.empty()) {
                mitred.push_back({i, cuts.mortises.front().box, joint.inMortised});
            }
        }
    }
    const double air = guide.rules[RuleId::MitreGap].length().mm();
    std::vector<MitreCut> cuts;
    for (const MitredTenon& a : mitred) {
        OpenJoint& one = joints[a.joint];
        for (const MitredTenon& b : mitred) {
            const OpenJoint& other = joints[b.joint];
            const bool meets = a.joint != b.joint && one.mortised == other.mortised &&
                               one.axis != 0 && other.axis != 0 &&
                               std::abs(dot(a.frame.x, b.frame.x)) < kApartBy && shareStretch(a, b);
            if (!meets) {
                continue;
            }
            // Where the cheeks next to both roots cross, the mitre begins.
            const Vec3 corner = onBoth(sideTowards(b, -a.frame.x), sideTowards(a, -b.frame.x));
            const Vec3 normal = normalised(a.frame.x - b.frame.x);
            cuts.push_back({a.joint, {normal, dot(normal, corner) - air / 2}});
            const HalfSpace far = sideTowards(b, a.frame.x);
            const Vec3 middle = a.frame.toOuter(
                {0, one.task.section.width.mm() / 2, one.task.section.thickness.mm() / 2});
            one.task.neighbourBeyond =
                Length::mm(std::abs(far.height(middle) / dot(far.normal, a.frame.x)));
        }
    }
    return cuts;
}

void findNeighboursBefore(std::span<OpenJoint> joints,
                          const ResolvedPiece& resolved,
                          const SizingGuide& guide) {
    const double gap = guide.rules[RuleId::MortiseGapLeast].value;
    const auto mouthsOf = [&](const OpenJoint& joint) {
        std::vector<Box> boxes;
        for (const JointSolid& solid : cutJoint(joint.task, joint.sized, guide).mortises) {
            boxes.push_back(joint.inMortised.outerBounds(solid.box));
        }
        return boxes;
    };
    for (OpenJoint& one : joints) {
        if (!one.task.form.has(JointFeature::Shortened)) {
            continue;
        }
        std::vector<Box> others;
        for (const OpenJoint& other : joints) {
            if (&other != &one && other.mortised == one.mortised) {
                const std::vector<Box> some = mouthsOf(other);
                others.insert(others.end(), some.begin(), some.end());
            }
        }
        for (const ResolvedCut& cut : resolved.parts[one.mortised].cuts) {
            others.push_back(cut.box);
        }
        const double face = one.inMortised.origin[one.axis];
        double nearest = 0.0;
        for (const Box& mine : mouthsOf(one)) {
            for (const Box& other : others) {
                const double before =
                    one.way > 0 ? other.min[one.axis] - face : face - other.max[one.axis];
                bool isInLine = before > kLengthTolerance.mm();
                for (int axis = 0; axis < 3; ++axis) {
                    isInLine =
                        isInLine && (axis == one.axis || (other.min[axis] - gap < mine.max[axis] &&
                                                          mine.min[axis] < other.max[axis] + gap));
                }
                if (isInLine && (nearest == 0.0 || before < nearest)) {
                    nearest = before;
                }
            }
        }
        one.task.neighbourBefore = Length::mm(nearest);
    }
}

void takeFaceAsItIs(OpenJoint& joint, const ResolvedPart& mortised, const SizingGuide& guide) {
    const JointCuts cuts = cutJoint(joint.task, joint.sized, guide);
    if (cuts.mortises.empty()) {
        return;
    }
    const Box& mouth = cuts.mortises.front().box;
    const int across = joint.axis == 2 ? 1 : 2;
    joint.referenceIn =
        referenceIn(mortised, joint.inMortised.outerBounds(mouth), joint.axis, across);
    const std::optional<WoodThere> wood =
        woodBehind(mortised, joint.inMortised, mouth, joint.task.form.isThrough());
    if (!wood) {
        return;
    }
    joint.task.post.min.x = wood->face;
    joint.task.post.max.x = wood->far;
}

}  // namespace shoulderline
