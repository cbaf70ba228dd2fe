#include <gtest/gtest.h>

#include "core/piece/edit.h"
#include "tests/support/peg_mortises.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::findings;
using testing::ofRule;
using testing::pegMortise;
using testing::pegThroughTheTenon;
using testing::statedPart;
using testing::twoPostsAndARail;

// The rail is 7/8 in thick, 3 in wide and 20 in long.
Piece railPeggedAt(const std::vector<CutStatement>& cuts) {
    Piece piece = twoPostsAndARail();
    statedPart(piece, "rail").cuts = cuts;
    return piece;
}

TEST(PegChecks, APegThroughATenonIsAPinnedJointAndNoFinding) {
    const Piece piece = pegThroughTheTenon();

    EXPECT_TRUE(ofRule(findings(piece), RuleId::MortiseGapLeast).empty());
    EXPECT_TRUE(ofRule(findings(piece), RuleId::MouthOnFace).empty());
}

// Moved until it lies partly past the end of the tenon, it holds nothing there.
TEST(PegChecks, APegAcrossTheEndOfATenonIsTold) {
    Piece piece = pegThroughTheTenon();
    const ResolvedPiece made = testing::resolved(piece);
    const MortiseSolid& mortise = testing::partNamed(made, "post, left").mortises.at(0);
    CutStatement& cut = statedPart(piece, "post").cuts.front();
    const int axis = axesOn(cut.face).across;
    const bool entersLow = axesOn(mortise.face).fromHigh == false;
    cut.across =
        std::to_string(entersLow ? mortise.tenon.max[axis] : mortise.tenon.min[axis]) + " mm";

    const std::vector<Finding> told = ofRule(findings(piece), RuleId::MortiseGapLeast);
    ASSERT_FALSE(told.empty());
    EXPECT_EQ(told.front().severity, Severity::MustMend);
    EXPECT_NE(told.front().message.find("the peg mortise"), std::string::npos);
}

TEST(PegChecks, APegMortiseTooNearAMortiseThatItDoesNotCrossIsTold) {
    Piece piece = pegThroughTheTenon();
    const ResolvedPiece made = testing::resolved(piece);
    const MortiseSolid& mortise = testing::partNamed(made, "post, left").mortises.at(0);
    // Its near side 1 mm below the mortise.
    statedPart(piece, "post").cuts.front().along =
        std::to_string(mortise.box.min.x - 1.0 - testing::kInch / 8) + " mm";

    const std::vector<Finding> told = ofRule(findings(piece), RuleId::MortiseGapLeast);
    ASSERT_FALSE(told.empty());
    EXPECT_NEAR(told.front().value, 1.0, 1e-3);
}

TEST(PegChecks, OneThatBreaksOutOfTheSideIsToldWithAPlaceThatWorks) {
    const Piece piece = railPeggedAt({pegMortise("10 in", "1/8 in", "3/8 in", "1/2 in")});

    const std::vector<Finding> told = ofRule(findings(piece), RuleId::MouthOnFace);
    ASSERT_EQ(told.size(), 1U);
    EXPECT_NEAR(told.front().value, testing::kInch / 16, 1e-6);
    ASSERT_EQ(told.front().mends.size(), 1U);
    ASSERT_TRUE(told.front().mends.front().edit);
    const Result<Piece> mended = apply(piece, *told.front().mends.front().edit);
    ASSERT_TRUE(mended);
    EXPECT_TRUE(ofRule(findings(*mended), RuleId::MouthOnFace).empty());
}

TEST(PegChecks, TwoTooNearOneAnotherAreToldOnce) {
    const Piece near = railPeggedAt({pegMortise("10 in", "1 in", "3/8 in", "1/2 in"),
                                     pegMortise("10 13/32 in", "1 in", "3/8 in", "1/2 in")});
    const Piece apart = railPeggedAt({pegMortise("10 in", "1 in", "3/8 in", "1/2 in"),
                                      pegMortise("12 in", "1 in", "3/8 in", "1/2 in")});

    const std::vector<Finding> told = ofRule(findings(near), RuleId::MortiseGapLeast);
    ASSERT_EQ(told.size(), 1U);
    EXPECT_NEAR(told.front().value, testing::kInch / 32, 1e-6);
    EXPECT_TRUE(ofRule(findings(apart), RuleId::MortiseGapLeast).empty());
}

}  // namespace
}  // namespace shoulderline
