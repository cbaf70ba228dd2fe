#include "core/check/proportions.h"

#include <algorithm>
#include <cmath>

#include "core/resolve/frames.h"

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

// A line between two points of an elevation.
struct Line {
    Vec2 a;
    Vec2 b;
};

Vec2 nearestOn(const Line& line, Vec2 p) {
    const Vec2 along = line.b - line.a;
    const double t = std::clamp(dot(p - line.a, along) / dot(along, along), 0.0, 1.0);
    return line.a + along * t;
}

// The edges of a solid as the elevation (x, `across`) shows them.
std::vector<Line> edgesOf(const ConvexSolid& solid, int across) {
    const auto shown = [&](int vertex) {
        const Vec3 p = solid.vertices()[static_cast<std::size_t>(vertex)];
        return Vec2{p.x, p[across]};
    };
    std::vector<Line> edges;
    for (const ConvexSolid::Face& face : solid.faces()) {
        for (std::size_t i = 0; i < face.loop.size(); ++i) {
            const Line edge{shown(face.loop[i]), shown(face.loop[(i + 1) % face.loop.size()])};
            if (norm(edge.b - edge.a) > kLengthTolerance.mm()) {
                edges.push_back(edge);
            }
        }
    }
    return edges;
}

// The sides that an outline has along the part, near a stretch of it.
std::vector<Line> sidesOf(const FlatOutline& outline, const Extent& stretch, double margin) {
    std::vector<Line> sides;
    for (std::size_t i = 0; i < outline.points.size(); ++i) {
        const Line side{outline.points[i], outline.points[(i + 1) % outline.points.size()]};
        const Vec2 along = side.b - side.a;
        const bool isEnd = std::abs(along.y) >= std::abs(along.x);
        const bool isNear = std::max(side.a.x, side.b.x) > stretch.min - margin &&
                            std::min(side.a.x, side.b.x) < stretch.max + margin;
        if (!isEnd && isNear) {
            sides.push_back(side);
        }
    }
    return sides;
}

// From a hollow to the sides beside it; below zero where it stands out of them. Between two lines
// that do not cross, the shortest way begins at an end of one of them.
double wallInOutline(const FlatOutline& outline,
                     const ConvexSolid& hollow,
                     int across,
                     double width) {
    const std::vector<Line> sides = sidesOf(outline, hollow.extentAlong({1, 0, 0}), width);
    double wall = width;
    for (const Line& edge : edgesOf(hollow, across)) {
        double nearest = 1e9;  // of the corner that the edge begins at; below zero outside
        for (const Line& side : sides) {
            const double off = norm(edge.a - nearestOn(side, edge.a));
            if (off < std::abs(nearest)) {
                nearest = cross(side.b - side.a, edge.a - side.a) < 0.0 ? -off : off;
            }
            wall = std::min(wall, norm(side.a - nearestOn(edge, side.a)));
        }
        wall = std::min(wall, nearest);
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
    const Box wood = part.bodyBox();
    const int across = inwardOf(mortise->face).axis == 2 ? 1 : 2;
    const bool isOutlined = across == 1
                                ? part.body.face != Outline::rectangle(wood.max.x, wood.max.y)
                                : part.body.edge.has_value();
    if (isOutlined) {
        const BodySolids solids = part.wood();
        return wallInOutline(across == 1 ? solids.flatFace() : solids.flatEdge(),
                             mortise->solid(),
                             across,
                             wood.max[across]);
    }
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
                  (tenon.length.value - joint.mortise.pastShoulder) / joint.mortise.there,
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
