#include "core/check/proportions.h"

#include <algorithm>
#include <array>

#include "core/resolve/frames.h"
#include "core/resolve/stations.h"

namespace shoulderline {

namespace {

constexpr double kLengthSlack = 1e-3;
constexpr double kRatioSlack = 1e-3;

const MortiseSolid* mortiseOf(const ResolvedPiece& resolved, const ResolvedJoint& joint) {
    const std::size_t index = static_cast<std::size_t>(&joint - resolved.joints.data());
    for (const MortiseSolid& mortise : resolved.parts[joint.mortised].mortises) {
        if (mortise.joint == index) {
            return &mortise;
        }
    }
    return nullptr;
}

bool isLetIn(const ResolvedPart& part) {
    return part.role == Role::Slat || part.role == Role::Spindle;
}

class Proportions {
  public:
    explicit Proportions(const RuleBook& rules) : rules_(rules) {}

    void ratio(RuleId rule, double value, std::optional<double> low, std::optional<double> high) {
        list.push_back({rule, rules_[rule].subject, value, low, high, false});
    }
    void length(RuleId rule, double value, std::optional<double> low, std::optional<double> high) {
        list.push_back({rule, rules_[rule].subject, value, low, high, true});
    }
    std::vector<Proportion> list;

  private:
    const RuleBook& rules_;
};

}  // namespace

bool Proportion::isLow() const {
    return low && value < *low - (isLength ? kLengthSlack : kRatioSlack);
}

bool Proportion::isHigh() const {
    return high && value > *high + (isLength ? kLengthSlack : kRatioSlack);
}

namespace {

constexpr std::size_t kCornersOfABox = 8;

// Whether its sides run straight along the blank.
bool isStraight(const Body& body) {
    const Rect bounds = body.face.bounds();
    return !body.edge && body.face == Outline::rectangle(bounds.max.x, bounds.max.y);
}

// From the corners of a hollow to the sides of a shaped part, square to the way it runs there.
double wallInShape(const ResolvedPart& part, const ConvexSolid& hollow, int across) {
    const std::size_t side = across == 1 ? 0 : 1;
    double wall = 1e9;
    for (const Vec3& corner : hollow.vertices()) {
        const Station there = stationAt(part, Frame{}, corner.x);
        const double off = std::abs(dot(corner - there.middle, there.across[side]));
        wall = std::min(wall, there.half[side] - off);
    }
    return wall;
}

}  // namespace

double wallBeside(const ResolvedPiece& resolved, const ResolvedJoint& joint) {
    const MortiseSolid* mortise = mortiseOf(resolved, joint);
    if (mortise == nullptr) {
        return 0.0;
    }
    const ResolvedPart& part = resolved.parts[joint.mortised];
    const int across = inwardOf(mortise->face).axis == 2 ? 1 : 2;
    if (!isStraight(part.body) && mortise->solid().vertices().size() <= kCornersOfABox) {
        return wallInShape(part, mortise->solid(), across);
    }
    const Box wood = part.bodyBox();
    const Box hollow = mortise->bounds();
    return std::min(hollow.min[across] - wood.min[across], wood.max[across] - hollow.max[across]);
}

double floorUnder(const ResolvedPiece& resolved, const ResolvedJoint& joint) {
    const MortiseSolid* mortise = mortiseOf(resolved, joint);
    if (mortise == nullptr) {
        return 0.0;
    }
    return (joint.mortise.there - joint.mortise.depth.value).mm();
}

std::vector<Proportion> proportionsOf(const ResolvedPiece& resolved, std::size_t index) {
    const ResolvedJoint& joint = resolved.joints[index];
    if (!joint.hasTenon()) {
        return {};
    }
    const RuleBook& rules = resolved.rules;
    const ResolvedPart& tenoned = resolved.parts[joint.tenoned];
    const Tenon& tenon = joint.tenon;
    const bool letIn = isLetIn(tenoned);
    const bool isBlind = !joint.isThrough();
    Proportions all(rules);

    if (!joint.form().isSized()) {
        return {};
    }
    if (joint.form().isWholeSection()) {
        all.length(RuleId::MortiseFloorLeast,
                   floorUnder(resolved, joint),
                   rules[RuleId::MortiseFloorLeast].value,
                   std::nullopt);
        return std::move(all.list);
    }
    const Rule& share = rules[RuleId::TenonThicknessShare];
    const bool isRound = joint.kind == JointKind::Round;
    const bool isPlain = !letIn && !isRound && joint.kind != JointKind::Stub;
    if (isPlain && !joint.has(JointFeature::Twin)) {
        all.ratio(RuleId::TenonThicknessShare,
                  tenon.thickness.value / tenoned.thickness.value,
                  share.low,
                  share.high);
    }
    all.ratio(RuleId::TenonWidthRatio,
              tenon.width.value / tenon.thickness.value,
              rules[RuleId::TenonWidthRatio].low,
              rules[RuleId::TenonWidthRatio].value);
    if (isBlind && joint.kind != JointKind::Stub) {
        const Rule& length = rules[RuleId::TenonLengthShare];
        all.ratio(RuleId::TenonLengthShare,
                  (tenon.length.value - joint.mortise.below) / joint.mortise.there,
                  isPlain ? length.low : std::nullopt,
                  length.high);
        if (isPlain) {
            all.ratio(RuleId::TenonLengthRatioLeast,
                      tenon.length.value / tenon.thickness.value,
                      rules[RuleId::TenonLengthRatioLeast].value,
                      std::nullopt);
        }
        all.length(RuleId::MortiseFloorLeast,
                   floorUnder(resolved, joint),
                   rules[RuleId::MortiseFloorLeast].value,
                   std::nullopt);
    } else if (!isBlind && !joint.has(JointFeature::Tusked)) {
        const Rule& proud = rules[RuleId::ThroughProjection];
        all.length(RuleId::ThroughProjection, tenon.projection.value.mm(), proud.low, proud.high);
    }
    all.length(RuleId::MortiseWallLeast,
               wallBeside(resolved, joint),
               rules[RuleId::MortiseWallLeast].value,
               std::nullopt);
    const double end = std::min(joint.mortise.fromStart.value.mm(), joint.mortise.fromFar.mm());
    all.length(RuleId::MortiseEndLeast, end, rules[RuleId::MortiseEndLeast].value, std::nullopt);
    const Shoulders& s = tenon.shoulders;
    double shoulder =
        std::min({s.faceSide.value.mm(), s.faceEdge.value.mm(), s.backEdge.value.mm()});
    const bool hasNoBackShoulder = joint.has(JointFeature::BareFaced) &&
                                   s.backSide.value.mm() > -kLengthSlack &&
                                   s.backSide.value.mm() < kLengthSlack;
    if (!hasNoBackShoulder) {
        shoulder = std::min(shoulder, s.backSide.value.mm());
    }
    all.length(RuleId::ShoulderLeast, shoulder, rules[RuleId::ShoulderLeast].value, std::nullopt);
    return std::move(all.list);
}

}  // namespace shoulderline
