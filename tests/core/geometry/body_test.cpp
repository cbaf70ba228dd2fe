#include "core/geometry/body.h"

#include <numbers>

#include <gtest/gtest.h>

#include "tests/core/geometry/outlines.h"

namespace shoulderline {
namespace {

using testing::kAngle;
// A leg 400 long that tapers from 40 to 20 along one side.
const Outline kTaper = Outline::polygon({{0, 0}, {400, 0}, {400, 20}, {0, 40}});

TEST(Body, APlainBodyHasTheExactVolumeOfItsArcs) {
    const Body disc{{{{{-10, 0}, 1}, {{10, 0}, 1}}}, 5, {}};

    EXPECT_NEAR(disc.volume().value(), std::numbers::pi * 500, 1e-9);
    EXPECT_LT(disc.toPolyhedron()->volume(), std::numbers::pi * 500);
}

TEST(Body, ALegTaperedBothWaysHasTheVolumeOfAPrismoid) {
    const Body leg{kTaper, 40, kTaper};

    // Prismoidal rule: length / 6 * (end + 4 * middle + other end); exact for such a solid.
    EXPECT_NEAR(leg.volume().value(), 400.0 / 6 * (1600 + 4 * 900 + 400), 1e-6);
}

TEST(Body, ASharedRoundingStaysSmooth) {
    const Outline rounded{{{{0, 0}},
                           {{380, 0}, std::tan(std::numbers::pi / 8)},
                           {{400, 20}},
                           {{400, 40}},
                           {{0, 40}}}};
    const Polyhedron solid = Body{kTaper, 40, rounded}.toPolyhedron().value();
    const FlatOutline flat = rounded.flatten();

    const auto expected = std::count(flat.isSmooth.begin(), flat.isSmooth.end(), true);
    EXPECT_EQ(solid.smoothEdges.size(), static_cast<std::size_t>(expected));
}

TEST(Body, ABowedSlatIsItsEdgeOutlineThroughTheWidth) {
    const double bulge = 0.1;
    const Outline bow{{{{0, 0}, -bulge}, {{500, 0}}, {{500, 8}, bulge}, {{0, 8}}}};
    const Body slat{Outline::rectangle(500, 60), 70, bow};

    const Result<Polyhedron> solid = slat.toPolyhedron();

    ASSERT_TRUE(solid);
    EXPECT_NEAR(solid->volume(), bow.area() * 60, 500 * 60 * 0.02);
    EXPECT_GT(solid->volume(), 0);
    EXPECT_NEAR(solid->bounds().max.y, 60, 1e-12);
    EXPECT_NEAR(solid->bounds().max.z, 8 + 25, 0.02);
}

TEST(Body, ARectangularEdgeAroundEverythingChangesNothing) {
    const Body with{kAngle, 8, Outline::rectangle(30, 8)};

    EXPECT_NEAR(with.volume().value(), 500 * 8, 1e-9);
}

TEST(Body, OutlinesThatTurnBackAlongTheLengthAreRefused) {
    const Outline hooked = Outline::polygon(
        {{0, 0}, {30, 0}, {30, 30}, {10, 30}, {10, 20}, {20, 20}, {20, 10}, {0, 10}});
    const Result<Polyhedron> solid = Body{hooked, 30, hooked}.toPolyhedron();

    ASSERT_FALSE(solid);
    EXPECT_EQ(solid.error().code, ErrorCode::OutOfRange);
}

TEST(Body, OutlinesThatShareNothingAreRefused) {
    const Outline beyond = Outline::polygon({{500, 0}, {600, 0}, {550, 10}});

    EXPECT_FALSE((Body{kTaper, 10, beyond}.toPolyhedron()));
}

// A back leg: bent at the seat as seen from the side, tapered as seen from the front.
const Outline kBentLeg =
    Outline::polygon({{0, 30}, {400, 0}, {900, 60}, {900, 90}, {400, 45}, {0, 65}});
const Outline kTaperedLeg = Outline::polygon({{0, 6}, {400, 0}, {900, 8}, {900, 30}, {0, 30}});

TEST(Body, ABentAndTaperedLegIsOneClosedSolidAndItsPiecesFillIt) {
    const Body leg{kBentLeg, 30, kTaperedLeg};
    const Result<Polyhedron> solid = leg.toPolyhedron();
    double pieces = 0;
    for (const ConvexSolid& piece : leg.pieces()) {
        pieces += piece.volume();
    }

    ASSERT_TRUE(solid);
    for (const PolyhedronEdge& edge : solid->edges()) {
        EXPECT_NE(edge.left, edge.right);
    }
    EXPECT_NEAR(solid->volume(), pieces, 1e-6 * pieces);
}

TEST(Body, AnOutlineThatIsNotConvexFallsIntoPiecesOfItsVolume) {
    const Outline arch{
        {{{0, 0}}, {{100, 0}, -0.4}, {{400, 0}}, {{500, 0}}, {{500, 80}}, {{0, 80}}}};
    const Body rail{arch, 20, {}};
    double pieces = 0;
    for (const ConvexSolid& piece : rail.pieces()) {
        pieces += piece.volume();
    }

    EXPECT_NEAR(pieces, rail.volume().value(), 2 * 320 * 20 * kArcSagitta);
    EXPECT_NEAR(pieces, rail.toPolyhedron()->volume(), 1e-6 * pieces);
}

TEST(Body, NoThicknessAndACrossedOutlineAreRefused) {
    EXPECT_FALSE((Body{kTaper, 0, {}}.volume()));
    EXPECT_FALSE((Body{Outline::polygon({{0, 0}, {9, 9}, {9, 0}, {0, 9}}), 5, {}}.toPolyhedron()));
}

}  // namespace
}  // namespace shoulderline
