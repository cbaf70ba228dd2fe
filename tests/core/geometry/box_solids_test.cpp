#include "core/geometry/box_solids.h"

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

constexpr Box kCube{{0, 0, 0}, {10, 10, 10}};

TEST(BoxSolids, OverlapIsWhatBothShare) {
    EXPECT_EQ(overlap(kCube, {{5, -5, 2}, {15, 5, 20}}), (Box{{5, 0, 2}, {10, 5, 10}}));
    EXPECT_FALSE(overlap(kCube, {{10, 0, 0}, {20, 10, 10}}));
}

TEST(BoxSolids, DistanceFromCornerToCornerIsTheDiagonal) {
    EXPECT_DOUBLE_EQ(distance(kCube, {{12, 13, 16}, {20, 20, 20}}), 7);
    EXPECT_EQ(distance(kCube, {{10, 0, 0}, {20, 10, 10}}), 0);
}

TEST(BoxSolids, AThroughMortiseLeavesFourPieces) {
    const std::vector<Box> pieces = subtract(kCube, {{4, -1, 3}, {6, 11, 7}});

    EXPECT_EQ(pieces.size(), 4U);
    EXPECT_DOUBLE_EQ(unionVolume(pieces), 1000 - 2 * 10 * 4);
}

TEST(BoxSolids, SubtractingACoveringBoxLeavesNothing) {
    EXPECT_TRUE(subtract(kCube, kCube).empty());
}

TEST(BoxSolids, UnionCountsSharedVolumeOnce) {
    const std::vector<Box> boxes{kCube, {{5, 0, 0}, {15, 10, 10}}, kCube};

    EXPECT_DOUBLE_EQ(unionVolume(boxes), 1500);
}

}  // namespace
}  // namespace shoulderline
