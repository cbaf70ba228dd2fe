// Loads carried to the joints of a piece, and what is said of their strength.

#include <algorithm>

#include <gtest/gtest.h>

#include "core/check/strength_report.h"
#include "tests/support/pieces.h"
#include "tests/support/row_of_chairs.h"

namespace shoulderline {
namespace {

using testing::findings;
using testing::ofRule;
using testing::resolved;
using testing::twoPostsAndARail;

StrengthReport reportOn(const Piece& piece) {
    return strengthReport(piece, resolved(piece), testing::speciesTable(), testing::strengthBook());
}

// A frame whose joints are those of the published white-oak tests, to the millimetre.
Piece testedFrame() {
    Piece piece = twoPostsAndARail();
    piece.unit = Unit::Millimetre;
    piece.stocks[1].thickness = "22.2 mm";
    piece.parts[1].width = "63.5 mm";
    JointStatement joint;
    joint.tenoned = "rail";
    joint.mortised = "post";
    joint.sizes = {{SizeName::TenonThickness, {SizeState::Stated, "9.5 mm"}},
                   {SizeName::TenonWidth, {SizeState::Stated, "38 mm"}},
                   {SizeName::TenonLength, {SizeState::Stated, "32 mm"}}};
    piece.joints = {joint};
    return piece;
}

StatedLoad push(const std::string& newtons, const std::string& height) {
    return {"shove", "post, right", Side::Left, newtons, height, false, "", ""};
}

TEST(StrengthOf, AJointLikeTheTestedOnesIsMeasured) {
    const StrengthReport report = reportOn(testedFrame());

    const JointStrength& joint = report.joints.front().strength;
    EXPECT_TRUE(joint.isEstimated());
    EXPECT_TRUE(joint.isCovered);
    EXPECT_LT(joint.bending.range.low, 358.0) << "published mean";
    EXPECT_GT(joint.bending.range.high, 358.0);
    EXPECT_FALSE(joint.assumptions.test(static_cast<std::size_t>(Assumption::OtherSizes)));
}

TEST(StrengthOf, AJointFarFromTheTestedSizesIsOnlyRanked) {
    Piece piece = testedFrame();
    piece.joints[0].sizes[SizeName::TenonLength].expression = "20 mm";

    const JointStrength joint = reportOn(piece).joints.front().strength;

    EXPECT_FALSE(joint.isCovered);
    EXPECT_TRUE(joint.assumptions.test(static_cast<std::size_t>(Assumption::OtherSizes)));
    EXPECT_LT(joint.bending.range.middle(),
              reportOn(testedFrame()).joints.front().strength.bending.range.middle());
}

TEST(StrengthOf, AMendIsJudgedByTheSizesItWouldGive) {
    const Piece piece = testedFrame();
    const ResolvedPiece frame = resolved(piece);
    const StrengthEstimator estimator(
        piece, frame, testing::speciesTable(), testing::strengthBook());
    Piece longer = piece;
    longer.joints[0].sizes[SizeName::TenonLength].expression = "36 mm";

    const Range foreseen = estimator.strengthOf(0, {{}, {}, 36.0}).bending.range;
    const Range made = reportOn(longer).joints.front().strength.bending.range;

    EXPECT_NEAR(foreseen.low, made.low, 1e-9);
    EXPECT_NEAR(foreseen.high, made.high, 1e-9);
}

TEST(StrengthOf, WoodWithoutFiguresHasNoEstimate) {
    Piece piece = testedFrame();
    piece.stocks[1].species = "Driftwood";

    EXPECT_EQ(reportOn(piece).joints.front().strength.whyNot, "no published strength of its wood");
}

TEST(StrengthOf, KindsThatNoTestWasReadOfHaveNoEstimate) {
    Piece piece = testedFrame();
    piece.joints[0].sizes.clear();
    for (const JointKind kind :
         {JointKind::Dowelled, JointKind::Bridle, JointKind::Lap, JointKind::Round}) {
        piece.joints[0].kind = kind;
        const StrengthReport report = reportOn(piece);
        ASSERT_FALSE(report.joints.empty());
        EXPECT_FALSE(report.joints.front().strength.isEstimated()) << wordFor(kind);
        EXPECT_EQ(report.estimated, 0u);
    }
}

TEST(StrengthOf, TwinTenonsAreStrongerButOnlyRanked) {
    Piece piece = testedFrame();
    piece.joints[0].sizes[SizeName::TenonThickness].expression = "8 mm";
    const Range single = reportOn(piece).joints.front().strength.bending.range;
    piece.joints[0].features = {JointFeature::Twin};
    piece.joints[0].sizes[SizeName::TenonThickness].expression = "5 mm";

    const JointStrength twin = reportOn(piece).joints.front().strength;

    EXPECT_TRUE(twin.section.isTwin);
    EXPECT_FALSE(twin.isCovered);
    EXPECT_GT(twin.bending.range.middle(), single.middle());
}

TEST(StrengthTest, OfTheMakersOwnBringsItsJointAndOnesLikeItToIt) {
    Piece piece = testedFrame();
    piece.joints[0].sizes[SizeName::TenonLength].expression = "20 mm";
    piece.use.tests = {{"rail", "post", "180", "broken in the vice", ""}};

    const JointStrength joint = reportOn(piece).joints.front().strength;

    EXPECT_TRUE(joint.isCovered) << "by the maker's own test";
    EXPECT_EQ(joint.ownTest, 180.0);
    EXPECT_NEAR(joint.bending.range.middle(), 180.0, 1e-9);
    EXPECT_NEAR(joint.bending.range.low, 180.0 * (1.0 - 62.0 / 358.0), 1e-9)
        << "the greatest published spread on either side";
}

TEST(StrengthTest, OfAJointThatIsNotThereIsTold) {
    Piece piece = testedFrame();
    piece.use.tests = {{"rail", "arm", "180", "", ""}, {"rail", "post", "0", "", ""}};

    EXPECT_EQ(reportOn(piece).troubles.size(), 2u);
    EXPECT_EQ(ofRule(findings(piece), RuleId::PieceResolves).size(), 2u);
}

// Two posts and one rail: the two joints carry force times height between them.
TEST(CarriedLoads, ASidePushIsBorneByBothJoints) {
    Piece piece = testedFrame();
    piece.use.loads = {push("200", "18 in")};

    const StrengthReport report = reportOn(piece);

    ASSERT_EQ(report.loads.size(), 1u);
    double sum = 0.0;
    for (const JointRating& joint : report.joints) {
        ASSERT_TRUE(joint.working);
        sum += joint.working->demand.newtonMetres;
        EXPECT_GE(
            joint.working->ratio.low,
            joint.working->demand.newtonMetres / (testing::strengthBook().staticShare() * 500.0));
    }
    EXPECT_NEAR(sum, 200.0 * 18.0 * 0.0254, 1e-6);
}

TEST(CarriedLoads, ManyTimesOverCountsTheShareForRepeatedLoad) {
    Piece piece = testedFrame();
    piece.use.loads = {push("100", "18 in")};
    const double once = reportOn(piece).joints[0].working->ratio.high;
    piece.use.loads[0].isRepeated = true;
    const double often = reportOn(piece).joints[0].working->ratio.high;

    EXPECT_NEAR(often / once, testing::strengthBook().staticShare() / 0.30, 1e-9);
}

TEST(CarriedLoads, APressedRailHasItsEndsBentAndSheared) {
    Piece piece = testedFrame();
    piece.use.loads = {{"sitter", "rail", Side::Bottom, "900", "", false, "", ""}};
    const ResolvedPiece frame = resolved(piece);
    const CarriedLoads carried =
        carryLoads(piece, frame, testing::speciesTable(), testing::strengthBook());

    ASSERT_EQ(carried.loads.size(), 1u);
    const double length = testing::partNamed(frame, "rail").shoulderLength.value.mm();
    for (const std::vector<Demand>& demands : carried.demands) {
        ASSERT_EQ(demands.size(), 1u);
        EXPECT_NEAR(demands[0].newtonMetres, 900.0 * length / 8000.0, 1e-9);
        EXPECT_NEAR(demands[0].shearNewtons, 450.0, 1e-9);
    }
}

TEST(CarriedLoads, WhatCannotBeCarriedIsTold) {
    Piece piece = testedFrame();
    piece.use.loads = {push("much", "18 in"),
                       push("100", "-1 in"),
                       {"wave", "mast", Side::Left, "100", "", false, "", ""},
                       {"tide", "rail", Side::Back, "100", "", false, "", ""}};

    const StrengthReport report = reportOn(piece);

    EXPECT_TRUE(report.loads.empty());
    EXPECT_EQ(report.troubles.size(), 4u);
}

TEST(CarriedLoads, ATableIsNotJudgedByTheLoadsOnSeats) {
    EXPECT_TRUE(reportOn(testing::sample("table")).loads.empty());
    EXPECT_FALSE(reportOn(testing::sample("armchair")).loads.empty());
}

// Two side frames share the back's load, and the side rails' four joints of each carry it.
TEST(CarriedLoads, TheBackOfAChairIsBorneByItsSideFrames) {
    const Piece piece = testing::pieceAt("tests/pieces/upright_chair");
    const ResolvedPiece chair = resolved(piece);
    const CarriedLoads carried =
        carryLoads(piece, chair, testing::speciesTable(), testing::strengthBook());
    const auto back = std::find_if(carried.loads.begin(), carried.loads.end(), [](const Load& l) {
        return l.kind == LoadKind::BackPush;
    });
    ASSERT_NE(back, carried.loads.end());
    const auto index = static_cast<std::size_t>(back - carried.loads.begin());
    double sum = 0.0;
    for (const std::vector<Demand>& demands : carried.demands) {
        for (const Demand& demand : demands) {
            sum += demand.load == index ? demand.newtonMetres : 0.0;
        }
    }

    EXPECT_NEAR(sum, back->newtons * back->level / 1000.0, 1e-6 * sum);
}

// ISO 7173:1989, 7.6: no more on the back than what just tips the chair.
TEST(CarriedLoads, TheBackIsPushedNoHarderThanTipsTheChair) {
    const Piece piece = testing::pieceAt("tests/pieces/upright_chair");
    const CarriedLoads carried =
        carryLoads(piece, resolved(piece), testing::speciesTable(), testing::strengthBook());
    for (const Load& load : carried.loads) {
        if (load.isTipping) {
            EXPECT_LT(load.newtons, load.isRepeated ? 330.0 : 410.0);
        }
        EXPECT_GT(load.newtons + load.seatNewtons, 0.0);
    }
}

TEST(CarriedLoads, EachChairOfARowBearsItsOwn) {
    const StrengthReport one = reportOn(testing::sample("armchair"));
    const StrengthReport row = reportOn(testing::rowOfChairs(3));

    ASSERT_EQ(row.joints.size(), 3 * one.joints.size());
    EXPECT_NEAR(row.joints[row.order.front()].working->ratio.high,
                one.joints[one.order.front()].working->ratio.high,
                1e-9);
}

TEST(StrengthReport, OrdersFromTheHardestWorkedDown) {
    const StrengthReport report = reportOn(testing::sample("armchair"));

    for (std::size_t i = 1; i < report.order.size(); ++i) {
        const auto& before = report.joints[report.order[i - 1]];
        const auto& now = report.joints[report.order[i]];
        if (before.working && now.working) {
            EXPECT_GE(before.working->ratio.high, now.working->ratio.high);
        }
        EXPECT_FALSE(!before.working && now.working);
    }
    EXPECT_EQ(report.ranks[report.order.front()], 1u);
    EXPECT_EQ(report.ranks[report.order[1]], 1u) << "its mirror twin";
}

TEST(StrengthFinding, TellsTheHardestWorkedJointWithItsFigures) {
    Piece piece = testedFrame();
    // At the middle of the rail, so that both joints bear half.
    piece.use.loads = {push("200", "425.45 mm")};

    const std::vector<Finding> some = ofRule(findings(piece), RuleId::StrengthWorst);

    ASSERT_EQ(some.size(), 1u);
    EXPECT_EQ(some[0].severity, Severity::Note);
    EXPECT_NE(some[0].message.find("(2 joints)"), std::string::npos) << some[0].message;
    EXPECT_NE(some[0].message.find("glue face governs"), std::string::npos) << some[0].message;
    EXPECT_NE(some[0].message.find("no proof"), std::string::npos);
    EXPECT_EQ(some[0].unit, "ratio");
    ASSERT_FALSE(some[0].mends.empty());
    EXPECT_NE(some[0].mends[0].text.find("times as strong"), std::string::npos)
        << some[0].mends[0].text;
}

TEST(StrengthFinding, AMendThatIsTakenBringsWhatItSays) {
    Piece piece = testedFrame();
    piece.use.loads = {push("200", "18 in")};
    const Finding before = ofRule(findings(piece), RuleId::StrengthWorst).at(0);
    const auto glue = std::find_if(before.mends.begin(), before.mends.end(), [](const Mend& mend) {
        return mend.text.find("PU") != std::string::npos;
    });
    ASSERT_NE(glue, before.mends.end());

    const Piece after = shoulderline::apply(piece, *glue->edit).value();

    EXPECT_NE(glue->text.find("1.13 times"), std::string::npos) << glue->text;
    EXPECT_NEAR(
        before.value / ofRule(findings(after), RuleId::StrengthWorst).at(0).value, 1.13, 1e-6);
}

TEST(StrengthFinding, AskedMoreThanItBearsIsLookedAt) {
    Piece piece = testedFrame();
    piece.use.loads = {push("2000", "18 in")};

    const Finding finding = ofRule(findings(piece), RuleId::StrengthWorst).at(0);

    EXPECT_EQ(finding.severity, Severity::LookAt);
    EXPECT_GT(finding.value, 1.0);
}

TEST(StrengthFinding, IsSilentWhereNoLoadReachesAJoint) {
    EXPECT_TRUE(ofRule(findings(testedFrame()), RuleId::StrengthWorst).empty());
}

TEST(StrengthBook, RefusesABookThatLacksAnAssumption) {
    std::string text = testing::textOf("resources/strength/strength_book.json");
    text.replace(text.find("\"glue.alike\""), 12, "\"glue.alike?\"");

    EXPECT_FALSE(StrengthBook::read(text));
    EXPECT_FALSE(StrengthBook::read("[]"));
    EXPECT_FALSE(StrengthBook::read("{}"));
}

TEST(StrengthBook, EveryRowHasItsSource) {
    const StrengthBook& book = testing::strengthBook();
    for (std::size_t i = 0; i < kAssumptionCount; ++i) {
        EXPECT_FALSE(book[static_cast<Assumption>(i)].source.empty());
    }
    for (const PublishedLoad& load : book.loads()) {
        EXPECT_FALSE(load.source.empty()) << load.name;
    }
    EXPECT_NE(book.caution().find("no proof"), std::string::npos);
}

}  // namespace
}  // namespace shoulderline
