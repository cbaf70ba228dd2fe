#include "core/resolve/tenon_mitre.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace shoulderline {

namespace {

struct MitredSide {
    Face face;
    int axis;
    bool isHigh;
    double reach;
};

// From the corner that is left at full length to the side where it is shortest.
Angle mitreAngle(const ConvexSolid& tenon,
                 const std::function<double(const Vec3&)>& reachOf,
                 int axis,
                 double longest,
                 double shortest) {
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    for (const Vec3& p : tenon.vertices()) {
        if (nearlyEqual(Length::mm(reachOf(p)), Length::mm(longest))) {
            low = std::min(low, p[axis]);
            high = std::max(high, p[axis]);
        }
    }
    const double across = tenon.bounds().size()[axis] - (high - low);
    return Angle::radians(std::atan2(longest - shortest, across));
}

}  // namespace

std::optional<TenonMitre> mitreOf(const TenonSolid& tenon,
                                  const std::function<double(const Vec3&)>& reachOf) {
    if (!tenon.exact) {
        return std::nullopt;
    }
    std::array<MitredSide, 4> sides{{{Face::FaceEdge, 1, false, 0.0},
                                     {Face::BackEdge, 1, true, 0.0},
                                     {Face::FaceSide, 2, false, 0.0},
                                     {Face::BackSide, 2, true, 0.0}}};
    const Box bounds = tenon.exact->bounds();
    for (MitredSide& side : sides) {
        const double at = side.isHigh ? bounds.max[side.axis] : bounds.min[side.axis];
        for (const Vec3& p : tenon.exact->vertices()) {
            if (nearlyEqual(Length::mm(p[side.axis]), Length::mm(at))) {
                side.reach = std::max(side.reach, reachOf(p));
            }
        }
    }
    const bool inWidth =
        std::abs(sides[0].reach - sides[1].reach) > std::abs(sides[2].reach - sides[3].reach);
    const MitredSide& one = sides[inWidth ? 0 : 2];
    const MitredSide& other = sides[inWidth ? 1 : 3];
    if (nearlyEqual(Length::mm(one.reach), Length::mm(other.reach))) {
        return std::nullopt;
    }
    const MitredSide& longer = one.reach > other.reach ? one : other;
    const MitredSide& shorter = one.reach > other.reach ? other : one;
    return TenonMitre{longer.face,
                      shorter.face,
                      longer.reach,
                      shorter.reach,
                      mitreAngle(*tenon.exact, reachOf, longer.axis, longer.reach, shorter.reach)};
}

}  // namespace shoulderline
