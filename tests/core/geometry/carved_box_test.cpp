#include "core/geometry/carved_box.h"

#include <gtest/gtest.h>

#include "core/geometry/box_solids.h"

namespace shoulderline {
namespace {

constexpr Box kRail{{0, 0, 0}, {200, 60, 20}};

double lengthDrawn(const Polyhedron& solid) {
    double length = 0.0;
    for (const PolyhedronEdge& edge : solid.edges()) {
        const Vec3& low = solid.vertices[static_cast<std::size_t>(edge.ends.low)];
        const Vec3& high = solid.vertices[static_cast<std::size_t>(edge.ends.high)];
        length += edge.isSmooth ? 0.0 : norm(high - low);
    }
    return length;
}

// Two steps as seen from the edge, 440 round, and the six lines across the width between them.
TEST(CarvedBox, HalvedAtItsEndARailIsAStep) {
    const Box half{{150, 0, 10}, {200, 60, 20}};

    const std::optional<Polyhedron> solid = carvedBox(kRail, std::span(&half, 1));

    ASSERT_TRUE(solid.has_value());
    EXPECT_NEAR(solid->volume(), kRail.volume() - half.volume(), 1e-6);
    EXPECT_NEAR(lengthDrawn(*solid), 2 * 440 + 6 * 60, 1e-9);
}

// A trench across the face and a groove that it crosses: wood that both take is taken once.
TEST(CarvedBox, HollowsThatCrossTakeTheirWoodOnce) {
    const std::vector<Box> hollows{{{80, -5, 12}, {110, 65, 25}}, {{-5, 20, 15}, {205, 30, 20}}};

    const std::optional<Polyhedron> solid = carvedBox(kRail, hollows);

    ASSERT_TRUE(solid.has_value());
    const std::vector<Box> inWood{*overlap(kRail, hollows[0]), *overlap(kRail, hollows[1])};
    EXPECT_NEAR(solid->volume(), kRail.volume() - unionVolume(inWood), 1e-6);
    EXPECT_EQ(solid->bounds(), kRail);
}

TEST(CarvedBox, OfWoodThatIsAllTakenNothingIsLeft) {
    EXPECT_FALSE(carvedBox(kRail, std::span(&kRail, 1)).has_value());
}

// Two notches that meet in one edge leave corners that touch there alone.
TEST(CarvedBox, WoodThatHangsTogetherByAnEdgeIsNoSolid) {
    const std::vector<Box> hollows{{{0, 0, 0}, {100, 30, 20}}, {{100, 30, 0}, {200, 60, 20}}};

    EXPECT_FALSE(carvedBox(kRail, hollows).has_value());
}

}  // namespace
}  // namespace shoulderline
