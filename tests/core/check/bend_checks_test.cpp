#include <cmath>

#include <gtest/gtest.h>

#include "core/piece/edit.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::findings;
using testing::ofRule;
using testing::statedPart;

Piece bentRail(BendMethod method, const char* rise, const char* plies, const char* thickness) {
    Piece piece = testing::twoPostsAndARail();
    Part& rail = statedPart(piece, "rail");
    rail.thickness = thickness;
    rail.bend.emplace();
    rail.bend->method = method;
    rail.bend->rise = rise;
    rail.bend->plies = plies;
    return piece;
}

// 2 in over 20 in: radius 26 in. Two plies of 3/8 in lie on a form of 19 1/2 in, 52 times their
// thickness, where the species of the piece breaks; three of 1/4 in at 92 times may.
TEST(BentFindings, PliesTooThickForTheirFormAreToldWithTheNumberThatBends) {
    const Piece thick = bentRail(BendMethod::Laminated, "2 in", "2", "3/4 in");
    const std::vector<Finding> breaks = ofRule(findings(thick), RuleId::BendPlyRupture);
    ASSERT_EQ(breaks.size(), 1u);
    EXPECT_EQ(breaks.front().severity, Severity::MustMend);
    EXPECT_NEAR(breaks.front().value, 52.0, 1e-6);

    const Piece some = bentRail(BendMethod::Laminated, "2 in", "3", "3/4 in");
    const std::vector<Finding> tight = ofRule(findings(some), RuleId::BendPlyLeast);
    ASSERT_EQ(tight.size(), 1u);
    EXPECT_NEAR(tight.front().value, 26.0 * 8 / 9 / 0.25, 1e-6);
    ASSERT_FALSE(tight.front().mends.empty());
    ASSERT_TRUE(tight.front().mends.front().edit);
    const Result<Piece> mended = apply(some, *tight.front().mends.front().edit);
    ASSERT_TRUE(mended);
    EXPECT_TRUE(ofRule(findings(*mended), RuleId::BendPlyLeast).empty());
    EXPECT_TRUE(ofRule(findings(*mended), RuleId::BendPlyRupture).empty());
}

// The slope of an arc at its ends is tan(angle / 2) = 4 x rise x chord / (chord^2 - 4 rise^2).
TEST(BentFindings, ShortGrainOfASawnCurveIsToldWithTheRiseThatWorks) {
    const Piece sawn = bentRail(BendMethod::Sawn, "1 in", "", "1/2 in");
    const std::vector<Finding> told = ofRule(findings(sawn), RuleId::BendShortGrain);
    ASSERT_EQ(told.size(), 1u);
    EXPECT_NEAR(told.front().value, 4.0 * 1 * 20 / (400 - 4), 1e-6);
    EXPECT_TRUE(
        ofRule(findings(bentRail(BendMethod::Sawn, "1/4 in", "", "1/2 in")), RuleId::BendShortGrain)
            .empty());
}

TEST(BentFindings, ShouldersSquareToTheCurveAreToldWithHowFarTheyStandOpen) {
    Piece piece = bentRail(BendMethod::Laminated, "1 in", "6", "3/4 in");
    EXPECT_TRUE(ofRule(findings(piece), RuleId::BendShoulderOpen).empty());
    statedPart(piece, "rail").bend->shoulders = BendShoulders::Curve;
    const Piece curved = piece;
    const std::vector<Finding> told = ofRule(findings(curved), RuleId::BendShoulderOpen);
    ASSERT_EQ(told.size(), 1u);
    EXPECT_EQ(told.front().severity, Severity::Note);
    // About the thickness times the slope of the arc at its end, 4 x rise x chord / (chord^2 -
    // 4 rise^2).
    EXPECT_NEAR(told.front().value, 0.75 * 25.4 * 80.0 / 396.0, 0.2);
    ASSERT_FALSE(told.front().mends.empty());
    ASSERT_TRUE(told.front().mends.front().edit);
    const Result<Piece> mended = apply(curved, *told.front().mends.front().edit);
    ASSERT_TRUE(mended);
    EXPECT_TRUE(ofRule(findings(*mended), RuleId::BendShoulderOpen).empty());
}

TEST(BentFindings, ASawnCurveDeeperThanItsStockIsTold) {
    const Piece deep = bentRail(BendMethod::Sawn, "1 in", "", "1/2 in");
    const std::vector<Finding> told = ofRule(findings(deep), RuleId::BendInStock);
    ASSERT_EQ(told.size(), 1u);
    EXPECT_NEAR(told.front().limit, 0.875 * 25.4, 1e-6);
    // From the top of the outer circle to the ends of the inner one.
    EXPECT_NEAR(told.front().value, (50.5 + 0.25 - std::sqrt(50.25 * 50.25 - 100.0)) * 25.4, 1e-6);
    EXPECT_TRUE(
        ofRule(findings(bentRail(BendMethod::Sawn, "1/4 in", "", "1/2 in")), RuleId::BendInStock)
            .empty());
}

TEST(BentFindings, SteamedWoodUnderTwelveTimesItsThicknessIsTold) {
    EXPECT_EQ(ofRule(findings(bentRail(BendMethod::Steamed, "9 in", "", "7/8 in")),
                     RuleId::BendSteamLeast)
                  .size(),
              1u);
    EXPECT_TRUE(ofRule(findings(bentRail(BendMethod::Steamed, "2 in", "", "7/8 in")),
                       RuleId::BendSteamLeast)
                    .empty());
}

TEST(BentFindings, ATenonThatLeavesTheCurvedBlankMustBeMended) {
    EXPECT_EQ(ofRule(findings(bentRail(BendMethod::Laminated, "3 in", "12", "3/4 in")),
                     RuleId::BendTenonInBlank)
                  .size(),
              1u);
    EXPECT_TRUE(ofRule(findings(bentRail(BendMethod::Laminated, "1/4 in", "4", "3/4 in")),
                       RuleId::BendTenonInBlank)
                    .empty());
}

}  // namespace
}  // namespace shoulderline
