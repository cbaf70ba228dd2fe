#include "core/timber/bending.h"

#include <array>

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

// The boatbuilders' rule for laminating forms: rise lost = rise / plies squared. Its own examples:
// of 3 in of camber four plies lose 3/16 in, eight lose 3/64 in.
TEST(Springback, IsThatOfTheBoatbuildersForm) {
    EXPECT_NEAR(3.0 * springbackShare(4), 3.0 / 16, 1e-12);
    EXPECT_NEAR(3.0 * springbackShare(8), 3.0 / 64, 1e-12);
}

// One to eight plies, worked from beam theory: a stack of free plies is bent with n times the
// stiffness of one, and returns as one beam of n times the depth.
TEST(Springback, OfOneToEightPliesIsWhatBeamTheoryGives) {
    constexpr double kPly = 3.0;
    for (int plies = 1; plies <= 8; ++plies) {
        const double bent = plies * kPly * kPly * kPly / 12;
        const double glued = plies * kPly * plies * kPly * plies * kPly / 12;
        EXPECT_NEAR(springbackShare(plies), bent / glued, 1e-12) << plies;
    }
    EXPECT_DOUBLE_EQ(springbackShare(1), 1.0);
}

TEST(Springback, OfUnlikePliesGoesByTheirCubes) {
    EXPECT_NEAR(springbackShare(std::array{2.0, 3.0, 2.0}), 43.0 / 343.0, 1e-12);
    EXPECT_NEAR(springbackShare(std::array{3.0, 3.0, 3.0, 3.0, 3.0}), springbackShare(5), 1e-12);
}

// Moduli of white oak: Wood Handbook, FPL-GTR-190 (2010), Table 5-3a: 12 300 MPa and 105 MPa.
TEST(Bending, WhiteOakBreaksAtUnderSixtyTimesItsThickness) {
    EXPECT_NEAR(ruptureRadiusShare(12300.0, 105.0), 58.57, 0.01);
}

TEST(Bending, PliesTakeTheirPlaningAndTheKerfsBetweenThem) {
    EXPECT_NEAR(boardForPlies(4, 3.0, 0.5, 2.0), 4 * 4.0 + 3 * 2.0, 1e-12);
}

}  // namespace
}  // namespace shoulderline
