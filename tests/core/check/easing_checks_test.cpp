#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::findings;
using testing::ofRule;
using testing::statedPart;

EasingStatement chamfer(Arris at, const char* size) {
    EasingStatement stated;
    stated.at = at;
    stated.size = size;
    return stated;
}

// The rail lies flush in front of the posts: its shoulder covers an arris of each.
Piece postsChamfered(const char* size) {
    Piece piece = testing::twoPostsAndARail();
    statedPart(piece, "post").easings = {chamfer(Arris::AllAlong, size)};
    return piece;
}

TEST(EasedArrises, AChamferThatRunsUnderAShoulderIsTold) {
    EXPECT_TRUE(ofRule(findings(testing::twoPostsAndARail()), RuleId::EasingStops).empty());

    const std::vector<Finding> told =
        ofRule(findings(postsChamfered("3/16 in")), RuleId::EasingStops);
    ASSERT_FALSE(told.empty());
    EXPECT_EQ(told.front().severity, Severity::LookAt);
    EXPECT_NEAR(told.front().value, 3 * Length::kMmPerInch, 1e-6) << "the width of the rail";
}

TEST(EasedArrises, ACoveThatRunsUnderAShoulderIsToldByItsName) {
    Piece piece = postsChamfered("3/16 in");
    statedPart(piece, "post").easings.front().kind = EasingKind::Cove;

    const std::vector<Finding> told = ofRule(findings(piece), RuleId::EasingStops);
    ASSERT_FALSE(told.empty());
    EXPECT_NE(told.front().message.find("the cove (all along)"), std::string::npos);
}

TEST(EasedArrises, StoppingItBesideTheRailMendsIt) {
    const Piece piece = postsChamfered("3/16 in");
    const std::vector<Finding> told = ofRule(findings(piece), RuleId::EasingStops);
    ASSERT_FALSE(told.empty());
    ASSERT_TRUE(told.front().mends.front().edit);

    Piece mended = apply(piece, *told.front().mends.front().edit).value();

    EXPECT_TRUE(ofRule(findings(mended), RuleId::EasingStops).empty());
    EXPECT_TRUE(testing::resolved(mended).troubles.empty());
    EXPECT_FALSE(statedPart(mended, "post").easings.empty());
}

TEST(EasedArrises, OneBesideWhichNothingJoinsIsLeftAlone) {
    Piece piece = testing::twoPostsAndARail();
    statedPart(piece, "rail").easings = {chamfer(Arris::AllAlong, "1/8 in")};
    statedPart(piece, "post").easings = {chamfer(Arris::FarEnd, "1/8 in")};

    EXPECT_TRUE(ofRule(findings(piece), RuleId::EasingStops).empty());
}

// As in any face that is shaped away: the mortise is measured from the wood that is there.
TEST(EasedArrises, AMouthThatAChamferCutsIntoLiesBelowTheFace) {
    EXPECT_TRUE(ofRule(findings(postsChamfered("1/16 in")), RuleId::ShoulderMeetsFace).empty());
    EXPECT_FALSE(ofRule(findings(postsChamfered("5/8 in")), RuleId::ShoulderMeetsFace).empty());
}

}  // namespace
}  // namespace shoulderline
