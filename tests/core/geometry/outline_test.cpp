#include "core/geometry/outline.h"

#include <numbers>

#include <gtest/gtest.h>

#include "tests/core/geometry/outlines.h"

namespace shoulderline {
namespace {

constexpr double kPi = std::numbers::pi;

// A circle of radius 10 about (5, 0) as two half circles.
const Outline kCircle{{{{-5, 0}, 1}, {{15, 0}, 1}}};
// A 40 x 20 board whose right end is a half circle bowing outwards.
const Outline kRoundEnd{{{{0, 0}}, {{40, 0}, 1}, {{40, 20}}, {{0, 20}}}};
// The same board hollowed at the right end.
const Outline kHollowEnd{{{{0, 0}}, {{40, 0}, -1}, {{40, 20}}, {{0, 20}}}};
using testing::kAngle;

TEST(Outline, ARectangleHasItsArea) {
    EXPECT_DOUBLE_EQ(Outline::rectangle(40, 20).area(), 800);
}

TEST(Outline, ACircleOfTwoArcsHasTheAreaOfACircle) {
    EXPECT_NEAR(kCircle.area(), kPi * 100, 1e-9);
}

TEST(Outline, AnArcAddsItsSegmentWhereItBowsOutAndTakesItWhereItBowsIn) {
    EXPECT_NEAR(kRoundEnd.area(), 800 + kPi * 50, 1e-9);
    EXPECT_NEAR(kHollowEnd.area(), 800 - kPi * 50, 1e-9);
}

TEST(Outline, AClockwiseRingHasNegativeArea) {
    const Outline clockwise = Outline::polygon({{0, 0}, {0, 20}, {40, 20}, {40, 0}});

    EXPECT_DOUBLE_EQ(clockwise.area(), -800);
    EXPECT_FALSE(clockwise.isProper());
}

TEST(Outline, BoundsReachTheTopOfAnArc) {
    const Rect bounds = kRoundEnd.bounds();

    EXPECT_NEAR(bounds.max.x, 50, 1e-12);
    EXPECT_NEAR(bounds.max.y, 20, 1e-12);
    EXPECT_NEAR(bounds.min.x, 0, 1e-12);
}

TEST(Outline, ChordsKeepWithinTheSagittaAndEndOnTheArc) {
    const FlatOutline flat = kCircle.flatten(0.01);

    for (std::size_t i = 0; i < flat.points.size(); ++i) {
        const Vec2 p = flat.points[i];
        const Vec2 middle = (p + flat.points[(i + 1) % flat.points.size()]) * 0.5;
        EXPECT_NEAR(norm(p - Vec2{5, 0}), 10, 1e-12);
        EXPECT_GE(norm(middle - Vec2{5, 0}), 10 - 0.01 - 1e-12);
    }
}

TEST(Outline, NoMoreChordsThanTheSagittaAsksFor) {
    // A chord of sagitta s spans 2 acos(1 - s / r): 0.0895 rad here, so 36 to each half circle.
    EXPECT_EQ(kCircle.flatten(0.01).points.size(), 72U);
}

TEST(Outline, CornersOfARectangleAreNotSmoothAndATangentArcIs) {
    const FlatOutline rectangle = Outline::rectangle(4, 2).flatten();
    const FlatOutline round = kRoundEnd.flatten();
    const FlatOutline slot = Outline{{{{0, 0}}, {{40, 0}, 1}, {{40, 20}}, {{0, 20}, 1}}}.flatten();

    EXPECT_EQ(rectangle.isSmooth, std::vector<bool>(4, false));
    EXPECT_FALSE(round.isSmooth.front());
    EXPECT_TRUE(round.isSmooth[1]);
    EXPECT_EQ(slot.isSmooth, std::vector<bool>(slot.points.size(), true));
}

TEST(Outline, AFigureOfEightIsNotSimple) {
    EXPECT_FALSE(Outline::polygon({{0, 0}, {10, 10}, {10, 0}, {0, 10}}).isSimple());
    EXPECT_TRUE(kAngle.isSimple());
    EXPECT_TRUE(kCircle.isSimple());
}

TEST(Outline, AnArcThatBowsThroughTheOppositeSideIsNotSimple) {
    const Outline outline{{{{0, 0}}, {{40, 0}}, {{40, 5}, -1}, {{0, 5}}}};

    EXPECT_FALSE(outline.isSimple());
}

TEST(Outline, AnEndThatFoldsBackOnItselfIsNotSimple) {
    EXPECT_FALSE(Outline::polygon({{0, 0}, {10, 0}, {20, 0}, {10, 0}, {10, 10}}).isSimple());
}

TEST(Outline, OnlyOutwardTurnsAreConvex) {
    EXPECT_TRUE(Outline::rectangle(4, 2).isConvex());
    EXPECT_TRUE(kRoundEnd.isConvex());
    EXPECT_FALSE(kHollowEnd.isConvex());
    EXPECT_FALSE(kAngle.isConvex());
}

TEST(Outline, ContainsTellsTheHollowFromTheWood) {
    EXPECT_TRUE(kHollowEnd.contains({29.9, 10}));
    EXPECT_FALSE(kHollowEnd.contains({30.1, 10}));
    EXPECT_TRUE(kRoundEnd.contains({49.9, 10}));
    EXPECT_FALSE(kRoundEnd.contains({50.1, 10}));
    EXPECT_FALSE(kAngle.contains({20, 20}));
}

// Beyond the half circle the way leads through its centre, beyond a straight side square to it.
TEST(Outline, APointIsAsFarOffAsTheNearestLineOrArcAndBelowZeroInside) {
    EXPECT_NEAR(kRoundEnd.outsideBy({53, 10}), 3.0, 1e-9);
    EXPECT_NEAR(kRoundEnd.outsideBy({20, 24}), 4.0, 1e-9);
    EXPECT_NEAR(kRoundEnd.outsideBy({-3, -4}), 5.0, 1e-9);
    EXPECT_NEAR(kRoundEnd.outsideBy({49.9, 10}), -0.1, 1e-9);
    EXPECT_NEAR(kRoundEnd.outsideBy({20, 7}), -7.0, 1e-9);
    EXPECT_NEAR(kHollowEnd.outsideBy({33, 10}), 3.0, 1e-9);
}

TEST(Outline, ContainsItsOwnRing) {
    EXPECT_TRUE(kRoundEnd.contains({50, 10}));
    EXPECT_TRUE(kRoundEnd.contains({0, 7}));
    EXPECT_TRUE(kAngle.contains({10, 10}));
}

}  // namespace
}  // namespace shoulderline
