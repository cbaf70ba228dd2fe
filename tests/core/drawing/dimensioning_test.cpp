#include "core/drawing/dimensioning.h"

#include <gtest/gtest.h>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/lettering_metrics.h"
#include "tests/core/drawing/sheet_checks.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

SizeToPlace sizeOf(double from, double to, const std::string& text, int rank = 0) {
    return {from, to, 0.0, 0.0, text, to - from, text, {}, rank};
}

std::vector<DimensionOp> placed(std::vector<SizeToPlace> sizes,
                                DimensionSide side = DimensionSide::Above) {
    std::vector<DimensionOp> dimensions;
    for (const Op& op : placeSizes(std::move(sizes), side, 0.0, {}, kMetrics)) {
        if (const auto* dimension = std::get_if<DimensionOp>(&op)) {
            dimensions.push_back(*dimension);
        }
    }
    return dimensions;
}

TEST(Dimensioning, TheFirstLineStandsTenMillimetresOff) {
    const std::vector<DimensionOp> d = placed({sizeOf(0, 50, "50")});

    ASSERT_EQ(d.size(), 1u);
    EXPECT_DOUBLE_EQ(d[0].lineFrom.y, -10.0);
    EXPECT_FALSE(d[0].arrowsOutside);
    EXPECT_DOUBLE_EQ(d[0].textAt.x, 25.0);
}

TEST(Dimensioning, ShorterStandNearer) {
    const std::vector<DimensionOp> d = placed({sizeOf(0, 100, "100"), sizeOf(0, 40, "40")});

    ASSERT_EQ(d.size(), 2u);
    EXPECT_EQ(d[0].text, "40");
    EXPECT_GT(d[0].lineFrom.y, d[1].lineFrom.y);
}

TEST(Dimensioning, SizesThatFollowOneAnotherShareALine) {
    const std::vector<DimensionOp> d = placed({sizeOf(0, 40, "40"), sizeOf(40, 90, "50")});

    EXPECT_DOUBLE_EQ(d[0].lineFrom.y, d[1].lineFrom.y);
}

TEST(Dimensioning, HigherRankStandsOutsideWhereLowerOnesAreLonger) {
    const std::vector<DimensionOp> d = placed({sizeOf(0, 40, "40", 1), sizeOf(0, 80, "80", 0)});

    EXPECT_EQ(d[0].text, "80");
    EXPECT_GT(d[0].lineFrom.y, d[1].lineFrom.y);
}

TEST(Dimensioning, FigureWithoutRoomStandsBesideWithArrowsOutside) {
    const std::vector<DimensionOp> d = placed({sizeOf(0, 3, "15/16")});

    EXPECT_TRUE(d[0].arrowsOutside);
    EXPECT_GT(d[0].textAt.x, 3.0);
}

TEST(Dimensioning, SizeOfNothingIsLeftOut) {
    EXPECT_TRUE(placed({sizeOf(5, 5, "0")}).empty());
}

TEST(Dimensioning, UprightDimensionsReadFromTheRight) {
    const std::vector<DimensionOp> d = placed({sizeOf(0, 50, "50")}, DimensionSide::LeftOf);

    EXPECT_TRUE(d[0].isTurned);
    EXPECT_DOUBLE_EQ(d[0].lineFrom.x, -10.0);
    EXPECT_LT(d[0].textAt.x, -10.0);
}

TEST(Dimensioning, ArrowheadIsFifteenDegreesWide) {
    const Fill arrow = arrowhead({0, 0}, {1, 0}, 3.5);

    ASSERT_EQ(arrow.points.size(), 3u);
    const Vec2 a = arrow.points[1];
    const Vec2 b = arrow.points[2];
    const double angle = std::acos(dot(a, b) / (norm(a) * norm(b)));
    EXPECT_NEAR(Angle::radians(angle).degrees(), 15.0, 1e-9);
    EXPECT_NEAR(a.x, 3.5, 1e-9);
}

}  // namespace
}  // namespace shoulderline
