#include "core/geometry/smooth_curve.h"

#include <cmath>

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

// Direction in which the segment leaving `i` sets out, and in which it arrives.
double heading(const std::vector<OutlineVertex>& curve, std::size_t i, bool atItsEnd) {
    const Vec2 chord = curve[i + 1].point - curve[i].point;
    const double half = 2.0 * std::atan(curve[i].bulge);
    return std::atan2(chord.y, chord.x) + (atItsEnd ? half : -half);
}

const std::vector<Vec2> kCrest{{0, 0}, {60, 22}, {150, 30}, {240, 18}, {330, 35}};

TEST(SmoothCurve, RunsThroughEveryPointThatIsStated) {
    const std::vector<OutlineVertex> curve = smoothCurve(kCrest);
    std::size_t found = 0;
    for (const OutlineVertex& vertex : curve) {
        if (found < kCrest.size() && vertex.point == kCrest[found]) {
            ++found;
        }
    }

    EXPECT_EQ(found, kCrest.size());
    EXPECT_EQ(curve.back().bulge, 0.0);
}

TEST(SmoothCurve, HasNoCorner) {
    const std::vector<OutlineVertex> curve = smoothCurve(kCrest);
    for (std::size_t i = 1; i + 1 < curve.size(); ++i) {
        const double turn = heading(curve, i, false) - heading(curve, i - 1, true);
        EXPECT_NEAR(std::remainder(turn, 2 * M_PI), 0.0, 1e-9) << i;
    }
}

// Three points of a circle of radius 500 (closed form): every arc has its radius.
TEST(SmoothCurve, ThroughPointsOfACircleIsThatCircle) {
    std::vector<Vec2> points;
    for (const double angle : {2.2, 1.9, 1.5, 1.2, 0.9}) {
        points.push_back({500 * std::cos(angle), 500 * std::sin(angle)});
    }
    const std::vector<OutlineVertex> curve = smoothCurve(points);
    for (std::size_t i = 0; i + 1 < curve.size(); ++i) {
        const OutlineArc arc = arcOf(curve[i], curve[i + 1].point);
        EXPECT_NEAR(arc.radius, 500, 1e-6);
        EXPECT_NEAR(norm(arc.centre), 0, 1e-6);
    }
}

TEST(SmoothCurve, ThroughPointsOnALineIsStraight) {
    for (const OutlineVertex& vertex : smoothCurve(std::vector<Vec2>{{0, 1}, {10, 2}, {30, 4}})) {
        EXPECT_EQ(vertex.bulge, 0.0);
    }
}

TEST(SmoothCurve, MirroredPointsGiveTheMirroredCurve) {
    std::vector<Vec2> mirrored;
    for (const Vec2 p : kCrest) {
        mirrored.push_back({p.x, -p.y});
    }
    const std::vector<OutlineVertex> curve = smoothCurve(kCrest);
    const std::vector<OutlineVertex> other = smoothCurve(mirrored);

    ASSERT_EQ(curve.size(), other.size());
    for (std::size_t i = 0; i < curve.size(); ++i) {
        EXPECT_NEAR(curve[i].bulge, -other[i].bulge, 1e-12);
        EXPECT_NEAR(curve[i].point.y, -other[i].point.y, 1e-9);
    }
}

}  // namespace
}  // namespace shoulderline
