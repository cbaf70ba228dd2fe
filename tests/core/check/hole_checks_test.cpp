#include <cmath>

#include <gtest/gtest.h>

#include "core/piece/edit.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::findings;
using testing::ofRule;
using testing::statedPart;
using testing::twoPostsAndARail;

// The rail is 7/8 in thick, 3 in wide and 20 in long.
Piece railWith(const std::vector<CutStatement>& cuts) {
    Piece piece = twoPostsAndARail();
    statedPart(piece, "rail").cuts = cuts;
    return piece;
}

CutStatement hole(CutKind kind, const char* along, const char* across, const char* width) {
    CutStatement cut;
    cut.kind = kind;
    cut.along = along;
    cut.across = across;
    cut.width = width;
    return cut;
}

// What the finding says works is put in as it says, and the finding is gone.
void expectMended(const Piece& piece, RuleId rule) {
    const std::vector<Finding> told = ofRule(findings(piece), rule);
    ASSERT_EQ(told.size(), 1u);
    ASSERT_FALSE(told.front().mends.empty()) << told.front().message;
    for (const Mend& mend : told.front().mends) {
        ASSERT_TRUE(mend.edit) << mend.text;
        const Result<Piece> mended = shoulderline::apply(piece, *mend.edit);
        ASSERT_TRUE(mended) << mend.text;
        EXPECT_TRUE(ofRule(findings(*mended), rule).empty()) << mend.text;
    }
}

TEST(HoleChecks, AHoleInTheMiddleOfItsFaceIsSilent) {
    CutStatement bore = hole(CutKind::Bore, "10 in", "1 1/2 in", "1/2 in");
    EXPECT_TRUE(ofRule(findings(railWith({bore})), RuleId::MouthOnFace).empty());
    bore.tiltAcross = "20 deg";
    EXPECT_TRUE(ofRule(findings(railWith({bore})), RuleId::MouthOnFace).empty());
}

// By how much: the axis comes out tan 45 degrees times 7/8 in further across, its ellipse there is
// 1/4 in over the cosine wide to either side.
TEST(HoleChecks, ATiltedBoreThatBreaksOutIsToldWithATiltAndAPlaceThatWork) {
    CutStatement bore = hole(CutKind::Bore, "10 in", "2 in", "1/2 in");
    bore.tiltAcross = "45 deg";
    const Piece piece = railWith({bore});

    const std::vector<Finding> told = ofRule(findings(piece), RuleId::MouthOnFace);
    ASSERT_EQ(told.size(), 1u);
    EXPECT_NEAR(told.front().value / 25.4, 2 + 0.875 + 0.25 * std::sqrt(2.0) - 3, 1e-6);
    EXPECT_EQ(told.front().mends.size(), 2u) << "a smaller tilt, or another place";
    expectMended(piece, RuleId::MouthOnFace);
}

// The corner of its flat bottom lies r sin t deeper than its middle.
TEST(HoleChecks, ABlindTiltedBoreWhoseBottomComesThroughIsTold) {
    CutStatement bore = hole(CutKind::Bore, "10 in", "1 1/2 in", "1/2 in");
    bore.tiltAlong = "30 deg";
    bore.depth = "7/8 in";
    const Piece piece = railWith({bore});
    const std::vector<Finding> told = ofRule(findings(piece), RuleId::MouthOnFace);
    ASSERT_EQ(told.size(), 1u);
    EXPECT_NEAR(told.front().value / 25.4, 0.875 * std::sqrt(3.0) / 2 + 0.25 * 0.5 - 0.875, 1e-6);
    expectMended(piece, RuleId::MouthOnFace);
}

// Holes that lean towards one another meet inside though their mouths are far apart.
TEST(HoleChecks, BoresThatLeanIntoOneAnotherAreToldWithAPlaceThatWorks) {
    CutStatement left = hole(CutKind::Bore, "9 1/2 in", "1 1/2 in", "1/4 in");
    CutStatement right = hole(CutKind::Bore, "10 1/2 in", "1 1/2 in", "1/4 in");
    EXPECT_TRUE(ofRule(findings(railWith({left, right})), RuleId::MortiseGapLeast).empty());
    left.tiltAlong = "30 deg";
    right.tiltAlong = "-30 deg";
    const Piece piece = railWith({left, right});
    const std::vector<Finding> told = ofRule(findings(piece), RuleId::MortiseGapLeast);
    ASSERT_EQ(told.size(), 1u);
    EXPECT_EQ(told.front().value, 0.0);
    expectMended(piece, RuleId::MortiseGapLeast);
}

// The rail is hollowed by 1 in at its middle, by an arc from end to end: there a hole of 1/2 in
// whose centre is 1 1/8 in from the blank's edge has 1/8 in of it in the air; at the end it has
// none.
TEST(HoleChecks, ABoreThatBreaksOutOfAHollowedEdgeIsToldWithPlacesThatWork) {
    Piece piece = railWith({hole(CutKind::Bore, "10 in", "1 1/8 in", "1/2 in")});
    EXPECT_TRUE(ofRule(findings(piece), RuleId::MouthOnFace).empty());
    statedPart(piece, "rail").shape[Face::FaceEdge] = {
        {Datum::Start, "", "", Run::Arc, "-1 in", {}}, {Datum::Far, "", "", Run::Line, "", {}}};

    const std::vector<Finding> told = ofRule(findings(piece), RuleId::MouthOnFace);
    ASSERT_EQ(told.size(), 1u);
    EXPECT_NEAR(told.front().value / 25.4, 0.125, 2e-3);
    EXPECT_EQ(told.front().mends.size(), 2u) << "further from the edge, or nearer to the end";
    expectMended(piece, RuleId::MouthOnFace);
}

TEST(HoleChecks, APegUnderAnArmsCurveIsToldOnceTheCurveReachesIt) {
    Piece piece = testing::sample("armchair");
    EXPECT_TRUE(ofRule(findings(piece), RuleId::MouthOnFace).empty());
    statedPart(piece, "arm").shape[Face::FaceEdge][1].in = "1 3/4 in";
    EXPECT_FALSE(ofRule(findings(piece), RuleId::MouthOnFace).empty());
}

TEST(ScrewHoleChecks, AHeadSunkTooDeepIsToldWithTheDepthThatWorks) {
    CutStatement screw = hole(CutKind::ScrewHole, "10 in", "1 1/2 in", "3/16 in");
    screw.head = ScrewHead::Plugged;
    EXPECT_TRUE(ofRule(findings(railWith({screw})), RuleId::ScrewUnderHead).empty());
    screw.headDepth = "3/4 in";
    const Piece piece = railWith({screw});
    const std::vector<Finding> told = ofRule(findings(piece), RuleId::ScrewUnderHead);
    ASSERT_EQ(told.size(), 1u);
    EXPECT_EQ(told.front().severity, Severity::LookAt);
    EXPECT_NEAR(told.front().value / 25.4, 0.125, 1e-9);
    expectMended(piece, RuleId::ScrewUnderHead);

    screw.headDepth = "7/8 in";
    EXPECT_EQ(ofRule(findings(railWith({screw})), RuleId::ScrewUnderHead).front().severity,
              Severity::MustMend);
}

Piece tableWithSlots(const char* length, SlotWay way) {
    Piece piece = testing::sample("table");
    for (CutStatement& cut : statedPart(piece, "end rail").cuts) {
        if (cut.slot != SlotWay::Round) {
            cut.length = length;
            cut.slot = way;
        }
    }
    return piece;
}

TEST(ScrewHoleChecks, TheTablesSlotsByRuleTakeItsMovement) {
    const std::vector<Finding> all = findings(testing::sample("table"));
    EXPECT_TRUE(ofRule(all, RuleId::SlotTakesMovement).empty());
    EXPECT_TRUE(ofRule(all, RuleId::ScrewUnderHead).empty());
}

// Wood Handbook, FPL-GTR-190, eq. (13-2): D C (MF - MI), with 0.00431 for American beech across
// flat-sawn boards (Table 13-5), from 6.2 to 11.0 % (Table 4-2, 30 and 60 % at 21 C).
TEST(ScrewHoleChecks, ASlotTooShortForTheMovementIsToldWithTheLengthThatTakesIt) {
    const Piece piece = tableWithSlots("5.5 mm", SlotWay::Along);
    const std::vector<Finding> told = ofRule(findings(piece), RuleId::SlotTakesMovement);
    ASSERT_FALSE(told.empty());
    const ResolvedPiece table = testing::resolved(piece);
    const double distance =
        testing::partNamed(table, "end rail, left").shoulderLength.value.mm() / 2 - 60;
    EXPECT_NEAR(told.front().limit, 5 + distance * 0.00431 * (11.0 - 6.2), 0.1);
    EXPECT_NEAR(told.front().value, 5.5, 1e-9);

    // Each slot is stated by itself: mended one by one, as often as is told.
    Piece mended = piece;
    for (int i = 0; i < 2; ++i) {
        const std::vector<Finding> left = ofRule(findings(mended), RuleId::SlotTakesMovement);
        ASSERT_FALSE(left.empty());
        ASSERT_TRUE(left.front().mends.front().edit);
        mended = *shoulderline::apply(mended, *left.front().mends.front().edit);
    }
    EXPECT_TRUE(ofRule(findings(mended), RuleId::SlotTakesMovement).empty());
}

TEST(ScrewHoleChecks, ASlotAlongTheGrainOfWhatMovesIsTold) {
    const std::vector<Finding> told =
        ofRule(findings(tableWithSlots("9 mm", SlotWay::Across)), RuleId::SlotTakesMovement);
    ASSERT_FALSE(told.empty());
    EXPECT_NE(told.front().message.find("along the grain"), std::string::npos);
    EXPECT_NE(told.front().mends.front().text.find("along the part"), std::string::npos);
}

}  // namespace
}  // namespace shoulderline
