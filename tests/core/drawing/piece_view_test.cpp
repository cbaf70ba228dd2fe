#include "core/drawing/piece_view.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "tests/support/peg_mortises.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

TEST(Elevation, IsAsLargeAsThePiece) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("armchair"));
    const Elevation front = elevationOf(resolved, View::front());
    const Elevation plan = elevationOf(resolved, View::plan());

    EXPECT_NEAR(front.max.x - front.min.x, resolved.bounds.size().x, 1e-3);
    EXPECT_NEAR(front.max.y - front.min.y, resolved.bounds.size().z, 1e-3);
    EXPECT_NEAR(plan.max.y - plan.min.y, resolved.bounds.size().y, kArcSagitta)
        << "the arms have round front ends";
}

TEST(Elevation, TwoPostsAndARailFromTheFront) {
    const ResolvedPiece resolved = testing::resolved(testing::twoPostsAndARail());
    const Elevation front = elevationOf(resolved, View::front());
    double visible = 0.0;
    double hidden = 0.0;
    for (const ElevationLine& line : front.lines) {
        (line.isVisible ? visible : hidden) += norm(line.b - line.a);
    }
    const ResolvedPart& rail = testing::partNamed(resolved, "rail");
    const ResolvedPart& post = resolved.parts[resolved.joints[0].mortised];
    const Tenon& tenon = resolved.joints[0].tenon;
    // Two posts' outlines and the rail's two long edges; its shoulders lie on the posts' edges.
    EXPECT_NEAR(visible,
                4.0 * (post.shoulderLength.value + post.width.value).mm() +
                    2.0 * rail.shoulderLength.value.mm(),
                1e-3);
    // Inside each post the tenon: two long edges and its end; its root is the shoulder, on the
    // post's edge.
    EXPECT_NEAR(hidden, 2.0 * (2.0 * tenon.length.value + tenon.width.value).mm(), 1e-3);
}

// Sides of 1/4 in of the squares that are seen.
long quarterInchesSeen(const Elevation& elevation) {
    return std::count_if(
        elevation.lines.begin(), elevation.lines.end(), [](const ElevationLine& line) {
            return line.isVisible && std::abs(norm(line.b - line.a) - testing::kInch / 4) < 1e-6;
        });
}

TEST(Elevation, ShowsTheSquareOfAPegInItsFace) {
    const Elevation plain =
        elevationOf(testing::resolved(testing::twoPostsAndARail()), View::front());
    Piece pegged = testing::pegThroughTheTenon();
    testing::statedPart(pegged, "post").cuts.front().proud = "1/16 in";

    EXPECT_EQ(quarterInchesSeen(plain), 0);
    EXPECT_EQ(quarterInchesSeen(elevationOf(testing::resolved(pegged), View::front())), 2 * 4);
    pegged = testing::pegThroughTheTenon();
    EXPECT_EQ(quarterInchesSeen(elevationOf(testing::resolved(pegged), View::front())), 2 * 4)
        << "flush";
}

TEST(Elevation, AProudPegStandsOutOfItsPost) {
    Piece piece = testing::pegThroughTheTenon();
    const double flush = elevationOf(testing::resolved(piece), View::side()).max.x -
                         elevationOf(testing::resolved(piece), View::side()).min.x;
    testing::statedPart(piece, "post").cuts.front().proud = "1/16 in";
    const Elevation side = elevationOf(testing::resolved(piece), View::side());

    EXPECT_NEAR(side.max.x - side.min.x, flush + testing::kInch / 16, 1e-6);
    EXPECT_NEAR(testing::resolved(piece).bounds.size().y, flush + testing::kInch / 16, 1e-6)
        << "the size over all";
}

TEST(Elevation, WhatIsInFrontComesFirst) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("armchair"));
    const Elevation front = elevationOf(resolved, View::front());

    std::vector<std::size_t> place(resolved.parts.size());
    for (std::size_t i = 0; i < front.nearestFirst.size(); ++i) {
        place[front.nearestFirst[i]] = i;
    }
    EXPECT_LT(place[*resolved.findPart("front rail")], place[*resolved.findPart("back rail")]);
}

TEST(Elevation, EmptyPieceHasNoLines) {
    EXPECT_TRUE(elevationOf({}, View::front()).lines.empty());
}

}  // namespace
}  // namespace shoulderline
