#include "core/drawing/running_sizes.h"

#include <gtest/gtest.h>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/lettering_metrics.h"
#include "tests/core/drawing/sheet_checks.h"

// Running dimensions as ISO 129-1 has them: one line, an origin circle, one arrow each.
namespace shoulderline {
namespace {

using testing::kMetrics;

// Sizes from the end of a post to each of `places`.
std::vector<SizeToPlace> fromTheEnd(const std::vector<double>& places) {
    std::vector<SizeToPlace> sizes;
    for (const double place : places) {
        sizes.push_back({0.0, place, 0.0, 2.0, "17 13/16", place, "from end", {}, 0, true});
    }
    return sizes;
}

std::vector<DimensionOp> placedRunning(std::vector<SizeToPlace> sizes) {
    sizes.push_back({0.0, 120.0, 0.0, 0.0, "20", 120.0, "length", {}, 1});
    Sheet sheet;
    sheet.ops = placeSizes(std::move(sizes), DimensionSide::Above, 0.0, {}, kMetrics);
    EXPECT_EQ(testing::overlapsOn(sheet, kMetrics), std::vector<std::string>{});
    return testing::dimensionsOf(sheet, "from end");
}

TEST(RunningSizes, FourPlacesFromOneEndShareALine) {
    const std::vector<DimensionOp> all = placedRunning(fromTheEnd({20, 50, 80, 110}));

    ASSERT_EQ(all.size(), 4u);
    for (const DimensionOp& d : all) {
        EXPECT_TRUE(d.running);
        EXPECT_DOUBLE_EQ(d.lineTo.y, all[0].lineTo.y);
        EXPECT_DOUBLE_EQ(d.lineFrom.x, 0.0);
    }
}

TEST(RunningSizes, ThreePlacesHaveALineEach) {
    for (const DimensionOp& d : placedRunning(fromTheEnd({20, 50, 80}))) {
        EXPECT_FALSE(d.running);
    }
}

TEST(RunningSizes, CrowdedFiguresStepAsideInOrder) {
    const std::vector<DimensionOp> all = placedRunning(fromTheEnd({40, 41, 42, 43, 44}));

    ASSERT_EQ(all.size(), 5u);
    for (std::size_t i = 0; i + 1 < all.size(); ++i) {
        ASSERT_TRUE(all[i].running && all[i + 1].running);
        EXPECT_LT(all[i].running->foot.x, all[i + 1].running->foot.x);
    }
    EXPECT_LT(all.front().running->foot.x, 40.0);
    EXPECT_GT(all.back().running->foot.x, 44.0);
}

TEST(RunningSizes, NoFigureIsCrossedByALineThatPasses) {
    const std::vector<SizeToPlace> sizes = fromTheEnd({1, 2, 3, 4, 5});
    const auto row = placeRunning(sizes, {6.0}, 0.0, 10.0, {}, kMetrics);
    ASSERT_TRUE(row);
    for (const Op& op : row->ops) {
        if (const auto* d = std::get_if<DimensionOp>(&op)) {
            const Rect figure = boundsOf(partsOf(*d, kMetrics).figure, kMetrics);
            EXPECT_TRUE(figure.max.x < 6.0 || figure.min.x > 6.0) << "a line through a figure";
        }
    }
}

// ISO 129-1: a dot where there is no room for an arrow. A groove that starts 1.2 mm past the end of
// a mortise, as drawn.
TEST(RunningSizes, APlaceThatFollowsCloselyHasADot) {
    const std::vector<DimensionOp> placed = placedRunning(fromTheEnd({40.0, 90.0, 91.2, 110.0}));

    std::vector<bool> dots;
    for (const DimensionOp& op : placed) {
        ASSERT_TRUE(op.running);
        dots.push_back(op.running->isDot);
    }
    EXPECT_EQ(dots, (std::vector<bool>{false, false, true, false}));
}

TEST(RunningSizes, OneOriginCircleForAll) {
    int circles = 0;
    for (const DimensionOp& d : placedRunning(fromTheEnd({20, 50, 80, 110}))) {
        const DimensionParts parts = partsOf(d, kMetrics);
        EXPECT_EQ(parts.arrows.size(), 1u);
        for (const Stroke& stroke : parts.strokes) {
            circles += stroke.points.size() > 20 ? 1 : 0;
        }
    }
    EXPECT_EQ(circles, 1);
}

}  // namespace
}  // namespace shoulderline
