#include "core/drawing/swing_positions.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/piece_view.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

Piece chairAt(const std::string& station) {
    Piece piece = testing::sample("armchair");
    for (Assembly& assembly : piece.assemblies) {
        if (assembly.swing) {
            assembly.swing->at = station;
        }
    }
    return piece;
}

Rect boundsOfRing(const std::vector<Vec2>& ring) {
    Rect bounds{ring.front(), ring.front()};
    for (const Vec2& p : ring) {
        bounds.include(p);
    }
    return bounds;
}

TEST(SwungViews, OnlyAViewAlongThePivotShowsOtherStations) {
    const ResolvedPiece piece = testing::resolved(chairAt("reading"));

    EXPECT_EQ(swungViews(piece, View::side()).size(), 3u);
    EXPECT_TRUE(swungViews(piece, View::front()).empty());
    EXPECT_TRUE(swungViews(piece, View::plan()).empty());
    EXPECT_TRUE(swungViews(testing::resolved(testing::sample("side_chair")), View::side()).empty());
}

// What is drawn of the back at another station covers what it covers when the piece is shown there.
TEST(SwungViews, OutlinesLieWhereThePartsStandWhenShownThere) {
    const std::vector<SwungView> here =
        swungViews(testing::resolved(chairAt("reading")), View::side());
    for (const std::size_t station : {std::size_t{0}, std::size_t{2}}) {
        ASSERT_EQ(here[station].outlines.size(), 2u);
        const ResolvedPiece there = testing::resolved(chairAt(here[station].name));
        const Elevation elevation = elevationOf(there, View::side());
        for (const SwungOutline& outline : here[station].outlines) {
            const Rect mine = boundsOfRing(outline.ring);
            const Rect theirs = boundsOfRing(elevation.outlines[outline.part]);
            EXPECT_NEAR(mine.min.x, theirs.min.x, 1e-6);
            EXPECT_NEAR(mine.min.y, theirs.min.y, 1e-6);
            EXPECT_NEAR(mine.max.x, theirs.max.x, 1e-6);
            EXPECT_NEAR(mine.max.y, theirs.max.y, 1e-6);
        }
    }
    EXPECT_TRUE(here[1].outlines.empty()) << "there it is drawn in full lines";
}

TEST(SwungViews, AreInTheSideElevationInLinesForOtherPositions) {
    const ResolvedPiece piece = testing::resolved(chairAt("reading"));
    const Elevation side = elevationOf(piece, View::side());
    const std::vector<Op> ops = elevationOps(piece, side, 0.1);

    const auto others = std::count_if(ops.begin(), ops.end(), [](const Op& op) {
        const auto* stroke = std::get_if<Stroke>(&op);
        return stroke != nullptr && stroke->role == LineRole::Neighbour;
    });
    EXPECT_EQ(others, 4) << "a stile and the bar at two stations";
    EXPECT_GT(side.allMax.x, side.max.x) << "the back leans further at the last station";
}

TEST(StationLabels, NameEveryStationWithItsLeanAndDoNotCross) {
    const LetteringMetrics metrics;
    const std::vector<SwungView> stations =
        swungViews(testing::resolved(chairAt("reading")), View::side());
    for (const double scale : {0.2, 0.1, 0.05, 0.02}) {
        std::vector<Rect> covered;
        std::vector<std::string> words;
        for (const Op& op : stationLabels(stations, scale, metrics)) {
            if (const auto* text = std::get_if<TextOp>(&op)) {
                covered.push_back(boundsOf(*text, metrics));
                words.push_back(text->text);
            }
        }
        ASSERT_EQ(words.size(), 3u);
        EXPECT_EQ(words[0], "upright 12\u00b0");
        EXPECT_EQ(words[1], "reading 18\u00b0");
        EXPECT_EQ(words[2], "resting 25\u00b0");
        for (std::size_t i = 1; i < covered.size(); ++i) {
            EXPECT_GT(covered[i].min.x, covered[i - 1].max.x) << scale;
        }
        for (const Rect& one : covered) {
            for (const SwungView& station : stations) {
                EXPECT_LT(one.max.y, -station.top.y * scale) << "over all of the backs";
            }
        }
    }
}

}  // namespace
}  // namespace shoulderline
