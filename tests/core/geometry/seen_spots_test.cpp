#include "core/geometry/seen_spots.h"

#include <algorithm>
#include <functional>

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

// A rail, and before its left half a board.
TEST(SeenSpots, LieWhereNothingIsBeforeTheFace) {
    const std::vector<Polyhedron> solids{Polyhedron::box({{0, 20, 0}, {400, 40, 60}}),
                                         Polyhedron::box({{-10, 0, -10}, {200, 15, 70}})};

    const std::vector<SeenSpot> spots = seenSpots(solids, View::front());

    const auto isOfRail = [](const SeenSpot& spot) { return spot.solid == 0; };
    EXPECT_GT(std::count_if(spots.begin(), spots.end(), isOfRail), 0);
    EXPECT_GT(std::count_if(spots.begin(), spots.end(), std::not_fn(isOfRail)), 0);
    for (const SeenSpot& spot : spots) {
        EXPECT_EQ(isOfRail(spot), spot.at.x > 200.0);
        EXPECT_GT(spot.at.y, isOfRail(spot) ? 0.0 : -10.0);
        EXPECT_LT(spot.at.y, isOfRail(spot) ? 60.0 : 70.0);
    }
}

// From above, the rail lies free.
TEST(SeenSpots, AreOfTheViewThatIsAskedFor) {
    const std::vector<Polyhedron> solids{Polyhedron::box({{0, 20, 0}, {400, 40, 60}}),
                                         Polyhedron::box({{0, 0, 0}, {400, 15, 60}})};
    const auto railsSeen = [&](const View& view) {
        const std::vector<SeenSpot> spots = seenSpots(solids, view);
        return std::count_if(
            spots.begin(), spots.end(), [](const SeenSpot& spot) { return spot.solid == 0; });
    };

    EXPECT_EQ(railsSeen(View::front()), 0);
    EXPECT_GT(railsSeen(View::plan()), 0);
}

}  // namespace
}  // namespace shoulderline
