#include "core/geometry/spatial_index.h"

#include <random>
#include <set>
#include <vector>

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

std::vector<Box> randomBoxes(std::size_t count) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> place(0, 100);
    std::uniform_real_distribution<double> size(1, 20);
    std::vector<Box> boxes;
    for (std::size_t i = 0; i < count; ++i) {
        const Vec3 min{place(random), place(random), place(random)};
        boxes.push_back({min, min + Vec3{size(random), size(random), size(random)}});
    }
    return boxes;
}

TEST(SpatialIndex, FindsJustTheBoxesThatATrialOfAllFinds) {
    const std::vector<Box> boxes = randomBoxes(500);
    const SpatialIndex index(boxes);

    for (const Box& wanted : randomBoxes(40)) {
        std::set<std::size_t> expected;
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            if (boxes[i].meets(wanted)) {
                expected.insert(i);
            }
        }
        std::set<std::size_t> found;
        index.query(wanted, [&](std::size_t i) { found.insert(i); });
        EXPECT_EQ(found, expected);
    }
}

TEST(SpatialIndex, TouchingCounts) {
    const std::vector<Box> boxes{{{0, 0, 0}, {1, 1, 1}}};
    int found = 0;

    SpatialIndex(boxes).query({{1, 0, 0}, {2, 1, 1}}, [&](std::size_t) { ++found; });

    EXPECT_EQ(found, 1);
}

TEST(PlaneIndex, FindsByPositionAndAnEmptyOneFindsNothing) {
    const std::vector<Rect> rects{{{0, 0}, {1, 1}}, {{5, 5}, {6, 6}}};
    std::vector<std::size_t> found;

    PlaneIndex(rects).query({{5.5, 0}, {9, 9}}, [&](std::size_t i) { found.push_back(i); });
    PlaneIndex({}).query({{0, 0}, {9, 9}}, [&](std::size_t i) { found.push_back(i); });

    EXPECT_EQ(found, std::vector<std::size_t>{1});
}

}  // namespace
}  // namespace shoulderline
