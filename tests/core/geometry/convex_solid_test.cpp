#include "core/geometry/convex_solid.h"

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

const ConvexSolid kConvexCube = ConvexSolid::box({{0, 0, 0}, {10, 10, 10}});

ConvexSolid cubeAt(Vec3 origin) {
    return ConvexSolid::box({origin, origin + Vec3{10, 10, 10}});
}

TEST(ConvexSolid, ABoxHasItsVolumeAndCentroidInAnyFrame) {
    const Frame frame =
        Frame::turned({5, 6, 7}, Angle::degrees(20), Angle::degrees(-35), Angle::degrees(80));
    const ConvexSolid solid = ConvexSolid::box({{0, 0, 0}, {2, 4, 6}}, frame.mirroredInX());

    EXPECT_NEAR(solid.volume(), 48, 1e-12);
    EXPECT_NEAR(norm(solid.centroid() - frame.mirroredInX().toOuter({1, 2, 3})), 0, 1e-12);
}

TEST(ConvexSolid, AClippedCornerIsATetrahedron) {
    const Vec3 normal = normalised(Vec3{1, 1, 1});
    const std::optional<ConvexSolid> corner = kConvexCube.clipped({normal, dot(normal, {3, 0, 0})});

    ASSERT_TRUE(corner);
    EXPECT_EQ(corner->vertices().size(), 4U);
    EXPECT_NEAR(corner->volume(), 27.0 / 6, 1e-9);
    EXPECT_NEAR(corner->centroid().x, 0.75, 1e-9);
}

TEST(ConvexSolid, APlaneThroughFourCornersHalvesACube) {
    const Vec3 normal = normalised(Vec3{1, -1, 0});
    const std::optional<ConvexSolid> half = kConvexCube.clipped({normal, 0});

    ASSERT_TRUE(half);
    EXPECT_EQ(half->vertices().size(), 6U);
    EXPECT_NEAR(half->volume(), 500, 1e-9);
}

TEST(ConvexSolid, APlaneInAFaceCutsNothingOffAndOneBeyondTheOtherFaceLeavesNothing) {
    EXPECT_NEAR(kConvexCube.clipped({{1, 0, 0}, 10})->volume(), 1000, 1e-9);
    EXPECT_FALSE(kConvexCube.clipped({{1, 0, 0}, 0}));
}

TEST(ConvexSolid, SolidsThatTouchShareNothingAndAreNoDistanceApart) {
    EXPECT_FALSE(intersection(kConvexCube, cubeAt({10, 3, 3})));
    EXPECT_EQ(distance(kConvexCube, cubeAt({10, 3, 3})).distance, 0);
    EXPECT_EQ(difference(kConvexCube, cubeAt({10, 3, 3})).size(), 1U);
}

TEST(ConvexSolid, DifferenceWithACoveringSolidIsNothing) {
    EXPECT_TRUE(difference(kConvexCube, ConvexSolid::box({{-1, -1, -1}, {11, 11, 11}})).empty());
    EXPECT_TRUE(difference(kConvexCube, kConvexCube).empty());
}

TEST(ConvexSolid, DifferenceWithAnInnerBoxIsSixPieces) {
    const std::vector<ConvexSolid> pieces =
        difference(kConvexCube, ConvexSolid::box({{4, 4, 4}, {6, 6, 6}}));

    double volume = 0;
    for (const ConvexSolid& piece : pieces) {
        volume += piece.volume();
    }
    EXPECT_EQ(pieces.size(), 6U);
    EXPECT_NEAR(volume, 992, 1e-9);
}

TEST(ConvexSolid, UnionCountsSharedVolumeOnce) {
    const std::vector<ConvexSolid> solids{
        kConvexCube, cubeAt({5, 0, 0}), cubeAt({5, 5, 0}), kConvexCube};

    // Seen in plan: the third square, 50 of the second outside it, 50 of the first outside both.
    EXPECT_NEAR(unionVolume(solids), 1000 + 500 + 500, 1e-9);
    EXPECT_EQ(unionVolume(std::span<const ConvexSolid>{}), 0);
}

TEST(ConvexSolid, DistanceBetweenCrossedEdgesJoinsPointsInsideThem) {
    // A square stick on edge below, another across it on edge above: edge to edge, 5 apart.
    const Vec2 diamond[] = {{0, -1}, {1, 0}, {0, 1}, {-1, 0}};
    const Frame alongX{{0, 0, 0}, {0, 1, 0}, {0, 0, 1}, {1, 0, 0}};
    const Frame alongY{{0, 0, 7}, {0, 0, 1}, {1, 0, 0}, {0, 1, 0}};
    const ConvexSolid below = ConvexSolid::prism(diamond, -20, 20, alongX);
    const ConvexSolid above = ConvexSolid::prism(diamond, -20, 20, alongY);

    const ClosestPoints closest = distance(below, above);

    EXPECT_NEAR(closest.distance, 5, 1e-12);
    EXPECT_NEAR(norm(closest.onFirst - Vec3{0, 0, 1}), 0, 1e-12);
    EXPECT_NEAR(norm(closest.onSecond - Vec3{0, 0, 6}), 0, 1e-12);
}

TEST(ConvexSolid, DistanceFromACornerToAFaceStandsSquareOnIt) {
    const Vec2 wedge[] = {{15, 5}, {25, 4}, {25, 6}};
    const ClosestPoints closest = distance(kConvexCube, ConvexSolid::prism(wedge, 4, 6));

    EXPECT_NEAR(closest.distance, 5, 1e-12);
    EXPECT_NEAR(closest.onFirst.x, 10, 1e-12);
    EXPECT_NEAR(closest.onFirst.y, 5, 1e-12);
}

TEST(ConvexSolid, OverlappingSolidsHaveACommonPoint) {
    const ClosestPoints closest = distance(kConvexCube, ConvexSolid::box({{4, 4, -9}, {6, 6, 99}}));

    EXPECT_EQ(closest.distance, 0);
    EXPECT_EQ(closest.onFirst, closest.onSecond);
    EXPECT_TRUE(kConvexCube.contains(closest.onFirst));
}

TEST(ConvexSolid, AFaceLyingWhollyOnAnotherInATurnedFrameTouches) {
    const Frame frame = Frame::turned(
        {-9.3, -9.4, -9.8}, Angle::degrees(-180), Angle::degrees(-178.7), Angle::degrees(-177.6));
    const ConvexSolid small = ConvexSolid::box({{-3.2, -5.4, -4.8}, {-3.1, -5.3, -4.7}}, frame);
    const ConvexSolid large = ConvexSolid::box({{-8.7, -5.5, -6.1}, {-3.2, -4.8, -3.8}}, frame);

    EXPECT_EQ(distance(small, large).distance, 0);
    EXPECT_EQ(distance(large, small).distance, 0);
}

TEST(ConvexSolid, ExtentAlongADiagonal) {
    const Extent extent = kConvexCube.extentAlong(normalised(Vec3{1, 1, 0}));

    EXPECT_NEAR(extent.min, 0, 1e-12);
    EXPECT_NEAR(extent.max, 10 * std::sqrt(2.0), 1e-12);
}

TEST(ConvexSolid, ContainsItsFacesButNotWhatLiesBefore) {
    EXPECT_TRUE(kConvexCube.contains({10, 5, 5}));
    EXPECT_FALSE(kConvexCube.contains({10.001, 5, 5}));
    EXPECT_TRUE(kConvexCube.contains({10.001, 5, 5}, 0.01));
}

TEST(ConvexSolid, AsAPolyhedronItIsClosed) {
    const Vec3 normal = normalised(Vec3{1, 2, 3});
    const Polyhedron solid = kConvexCube.clipped({normal, dot(normal, {5, 5, 5})})->toPolyhedron();

    for (const PolyhedronEdge& edge : solid.edges()) {
        EXPECT_GE(edge.left, 0);
        EXPECT_GE(edge.right, 0);
    }
    EXPECT_NEAR(solid.volume(), 500, 1e-9);
}

}  // namespace
}  // namespace shoulderline
