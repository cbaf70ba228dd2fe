#include <algorithm>
#include <set>

#include <gtest/gtest.h>

#include "core/check/findings_json.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::findings;
using testing::ofRule;
using testing::statedPart;
using testing::twoPostsAndARail;

JointStatement statement(const char* tenoned,
                         const char* mortised,
                         SizeName name,
                         const char* size) {
    JointStatement joint;
    joint.tenoned = tenoned;
    joint.mortised = mortised;
    joint.sizes[name] = {SizeState::Stated, size};
    return joint;
}

Piece frameWith(SizeName name, const char* size) {
    Piece piece = twoPostsAndARail();
    piece.joints.push_back(statement("rail", "post", name, size));
    return piece;
}

class SampleFindings : public ::testing::TestWithParam<const char*> {};
TEST_P(SampleFindings, NothingMustBeMended) {
    for (const Finding& finding : findings(testing::sample(GetParam()))) {
        EXPECT_NE(finding.severity, Severity::MustMend) << finding.message;
    }
}
INSTANTIATE_TEST_SUITE_P(Samples, SampleFindings, ::testing::ValuesIn(testing::kSamples));

// Each rule with a piece that breaks it: the figure and the limit in inches (or plain ratios).
struct Broken {
    RuleId rule;
    Piece (*piece)();
    Severity severity;
    double value;
    double limit;
    const char* says;
};
void PrintTo(const Broken& broken, std::ostream* os) {
    *os << ruleIdText(broken.rule) << " (" << broken.says << ")";
}

// The message with plain spaces before its units.
std::string plain(std::string message) {
    const std::string noBreak = "\u00a0";
    for (std::size_t at = message.find(noBreak); at != std::string::npos;
         at = message.find(noBreak)) {
        message.replace(at, noBreak.size(), " ");
    }
    return message;
}

class BrokenRule : public ::testing::TestWithParam<Broken> {};
TEST_P(BrokenRule, IsFoundWithItsFigureLimitSourceAndAMend) {
    const Broken& broken = GetParam();
    const std::vector<Finding> some = ofRule(findings(broken.piece()), broken.rule);

    ASSERT_FALSE(some.empty()) << ruleIdText(broken.rule);
    const Finding& finding = some.front();
    const double scale = finding.unit == "mm" ? 25.4 : 1.0;
    EXPECT_EQ(finding.severity, broken.severity) << finding.message;
    EXPECT_NEAR(finding.value / scale, broken.value, 1e-6) << finding.message;
    EXPECT_NEAR(finding.limit / scale, broken.limit, 1e-6) << finding.message;
    EXPECT_NE(plain(finding.message).find(broken.says), std::string::npos) << finding.message;
    EXPECT_EQ(finding.message.find('{'), std::string::npos) << finding.message;
    EXPECT_FALSE(finding.source.empty());
}
INSTANTIATE_TEST_SUITE_P(
    Rules,
    BrokenRule,
    ::testing::Values(
        Broken{RuleId::TenonThicknessShare,
               [] { return frameWith(SizeName::TenonThickness, "5/8 in"); },
               Severity::LookAt,
               0.625 / 0.875,
               0.5,
               "5/8 in thick"},
        Broken{RuleId::TenonThicknessShare,
               [] { return frameWith(SizeName::TenonThickness, "1 in"); },
               Severity::MustMend,
               1 / 0.875,
               0.5,
               "1 in thick"},
        Broken{RuleId::TenonWidthRatio,
               [] { return frameWith(SizeName::TenonWidth, "2 3/4 in"); },
               Severity::LookAt,
               2.75 / 0.3125,
               6,
               "times its thickness"},
        Broken{RuleId::TenonLengthShare,
               [] { return frameWith(SizeName::TenonLength, "5/8 in"); },
               Severity::LookAt,
               0.3125,
               0.4,
               "at least 0.4"},
        Broken{RuleId::TenonLengthRatioLeast,
               [] { return frameWith(SizeName::TenonLength, "1/2 in"); },
               Severity::LookAt,
               1.6,
               2,
               "times its thickness"},
        Broken{RuleId::MortiseFloorLeast,
               [] { return frameWith(SizeName::TenonLength, "1 7/8 in"); },
               Severity::LookAt,
               0.0625,
               0.1875,
               "floor of 1/16 in"},
        Broken{RuleId::MortiseFloorLeast,
               [] { return frameWith(SizeName::TenonLength, "2 in"); },
               Severity::MustMend,
               -0.0625,
               0.1875,
               "breaks through"},
        Broken{RuleId::MortiseWallLeast,
               [] { return frameWith(SizeName::ShoulderFaceSide, "1/8 in"); },
               Severity::LookAt,
               0.125,
               0.25,
               "wood beside the mortise"},
        Broken{RuleId::MortiseEndLeast,
               [] {
                   Piece piece = frameWith(SizeName::ShoulderFaceEdge, "1/4 in");
                   std::get<Spans>(statedPart(piece, "rail").relation).level->at = "24 in";
                   return piece;
               },
               Severity::LookAt,
               0.25,
               0.5,
               "end of post"},
        Broken{RuleId::ShoulderLeast,
               [] { return frameWith(SizeName::TenonWidth, "2 15/16 in"); },
               Severity::LookAt,
               0.03125,
               0.0625,
               "smallest shoulder"},
        Broken{RuleId::ChiselNearest,
               [] { return frameWith(SizeName::TenonThickness, "0.33 in"); },
               Severity::LookAt,
               0.33,
               0.3125,
               "no chisel on the rack"},
        Broken{RuleId::MouthTakesTenon,
               [] { return frameWith(SizeName::MortiseWidth, "1/4 in"); },
               Severity::MustMend,
               0.25,
               0.3125,
               "does not go in"},
        Broken{RuleId::MouthTakesTenon,
               [] { return frameWith(SizeName::MortiseLength, "1 1/2 in"); },
               Severity::MustMend,
               1.5,
               1.875,
               "1 1/2 in long"},
        Broken{RuleId::MouthTakesTenon,
               [] { return frameWith(SizeName::MortiseDepth, "1 1/4 in"); },
               Severity::MustMend,
               1.25,
               1.3125,
               "1 1/4 in deep"},
        Broken{RuleId::MouthTakesTenon,
               [] {
                   Piece piece = frameWith(SizeName::MortiseWidth, "25/64 in");
                   piece.joints.back().sizes[SizeName::MortiseWidth].state = SizeState::AsFound;
                   return piece;
               },
               Severity::LookAt,
               25.0 / 64,
               0.3125,
               "it is loose"},
        Broken{RuleId::ThroughProjection,
               [] {
                   Piece piece = frameWith(SizeName::Projection, "1 in");
                   piece.joints.back().kind = JointKind::Through;
                   return piece;
               },
               Severity::LookAt,
               1,
               0.25,
               "1 in proud"},
        Broken{
            RuleId::MouthOnFace,
            [] {
                Piece piece = twoPostsAndARail();
                std::get<Spans>(statedPart(piece, "rail").relation).set = {Side::Front, "-1/2 in"};
                return piece;
            },
            Severity::MustMend,
            0.21875,
            0,
            "runs off"},
        Broken{RuleId::StockYields,
               [] {
                   Piece piece = twoPostsAndARail();
                   piece.stocks[1].greatestWidth = "2 in";
                   return piece;
               },
               Severity::MustMend,
               3,
               2,
               "3 in wide"},
        Broken{RuleId::StockYields,
               [] {
                   Piece piece = twoPostsAndARail();
                   statedPart(piece, "rail").thickness = "1 in";
                   return piece;
               },
               Severity::MustMend,
               1,
               0.875,
               "1 in thick"}));

TEST(Meetings, TenonsThatMeetInAPostAreFoundWithTheTradesAnswers) {
    Piece piece = testing::sample("armchair");
    std::erase_if(piece.joints, [](const JointStatement& joint) {
        return joint.tenoned == "front rail" && joint.mortised == "front post";
    });

    const std::vector<Finding> meetings = ofRule(findings(piece), RuleId::MortiseGapLeast);

    ASSERT_EQ(meetings.size(), 1u) << "left and right are told once";
    EXPECT_EQ(meetings[0].severity, Severity::MustMend);
    EXPECT_EQ(meetings[0].parts.size(), 2u);
    // The side rail's mortise reaches to 2 1/8 - 1 7/16 = 11/16 from the front, the front rail's
    // lies from 17/32 to 27/32: they share 5/32 of depth.
    EXPECT_NEAR(meetings[0].value / 25.4, -5.0 / 32, 1e-9);
    EXPECT_GE(meetings[0].mends.size(), 3u);
}

TEST(Meetings, EveryMendWithAnEditMends) {
    Piece piece = testing::sample("armchair");
    std::erase_if(piece.joints, [](const JointStatement& joint) {
        return joint.tenoned == "front rail" && joint.mortised == "front post";
    });
    const Finding finding = ofRule(findings(piece), RuleId::MortiseGapLeast).front();
    int tried = 0;
    for (const Mend& mend : finding.mends) {
        if (mend.edit) {
            ++tried;
            const Piece mended = shoulderline::apply(piece, *mend.edit).value();
            for (const Finding& left : ofRule(findings(mended), RuleId::MortiseGapLeast)) {
                EXPECT_FALSE(left.message.find("front post") != std::string::npos)
                    << mend.text << ": " << left.message;
            }
        }
    }
    EXPECT_GE(tried, 3);
}

TEST(Mends, EachMendOfABrokenProportionBringsItWithinTheRule) {
    const Piece pieces[] = {frameWith(SizeName::TenonThickness, "5/8 in"),
                            frameWith(SizeName::TenonWidth, "2 3/4 in"),
                            frameWith(SizeName::TenonLength, "5/8 in"),
                            frameWith(SizeName::TenonLength, "1 7/8 in"),
                            frameWith(SizeName::ShoulderFaceSide, "1/8 in"),
                            frameWith(SizeName::TenonWidth, "2 15/16 in"),
                            frameWith(SizeName::MortiseWidth, "1/4 in"),
                            frameWith(SizeName::MortiseLength, "1 1/2 in"),
                            frameWith(SizeName::MortiseDepth, "1 1/4 in"),
                            frameWith(SizeName::MortiseWidth, "1 1/4 in"),
                            frameWith(SizeName::ShoulderBackSide, "5/8 in"),
                            frameWith(SizeName::ShoulderBackEdge, "1/32 in")};
    for (const Piece& piece : pieces) {
        const Finding finding = findings(piece).front();
        for (const Mend& mend : finding.mends) {
            if (mend.edit) {
                const Piece mended = shoulderline::apply(piece, *mend.edit).value();
                EXPECT_TRUE(ofRule(findings(mended), finding.rule).empty())
                    << finding.message << " / " << mend.text;
            }
        }
    }
}

TEST(BareFaced, TheCheekWithoutAShoulderIsNotAskedForOneButTheOthersAre) {
    Piece piece = frameWith(SizeName::TenonLength, "1 1/4 in");
    piece.joints.back().features = {JointFeature::BareFaced};
    EXPECT_TRUE(ofRule(findings(piece), RuleId::ShoulderLeast).empty());
    EXPECT_TRUE(ofRule(findings(piece), RuleId::TenonLengthShare).empty());

    piece.joints.back().sizes[SizeName::TenonWidth] = {SizeState::Stated, "2 15/16 in"};
    EXPECT_EQ(ofRule(findings(piece), RuleId::ShoulderLeast).size(), 1u);
    piece.joints.back().sizes[SizeName::TenonWidth] = {SizeState::Stated, "2 in"};
    piece.joints.back().sizes[SizeName::TenonLength] = {SizeState::Stated, "1 7/8 in"};
    EXPECT_EQ(ofRule(findings(piece), RuleId::MortiseFloorLeast).size(), 1u)
        << "it is a blind joint";
}

TEST(MouthAsFound, TenonMadeToItFitsAndNoChiselIsAskedOfIt) {
    Piece piece = frameWith(SizeName::MortiseWidth, "25/64 in");
    piece.joints.back().sizes[SizeName::MortiseWidth].state = SizeState::AsFound;
    const Finding loose = ofRule(findings(piece), RuleId::MouthTakesTenon).at(0);
    ASSERT_EQ(loose.mends.size(), 1u);

    const Piece mended = shoulderline::apply(piece, *loose.mends[0].edit).value();

    EXPECT_TRUE(ofRule(findings(mended), RuleId::MouthTakesTenon).empty());
    EXPECT_TRUE(ofRule(findings(piece), RuleId::ChiselNearest).empty());
}

TEST(Contacts, PartsThatTouchWithoutAJointAreToldAndTheMendJoinsThem) {
    Piece piece = testing::sample("armchair");
    std::erase_if(piece.joints, [](const JointStatement& joint) {
        return joint.tenoned == "front cleat" && joint.mortised == "front rail";
    });
    const std::vector<Finding> touching = ofRule(findings(piece), RuleId::JointWanted);

    ASSERT_EQ(touching.size(), 1u);
    EXPECT_NE(touching[0].message.find("front cleat"), std::string::npos);
    const Piece mended = shoulderline::apply(piece, *touching[0].mends.front().edit).value();
    EXPECT_TRUE(ofRule(findings(mended), RuleId::JointWanted).empty());
}

TEST(Contacts, PartsThatRunThroughOneAnotherMustBeMended) {
    Piece piece = testing::sample("armchair");
    testing::statedMeasure(piece, "back width").expression = "22 in";

    const std::vector<Finding> through = ofRule(findings(piece), RuleId::PartsClear);

    ASSERT_FALSE(through.empty());
    EXPECT_EQ(through[0].severity, Severity::MustMend);
    EXPECT_GT(through[0].value, 0.0);
}

TEST(Contacts, PartsJustClearOfOneAnotherAreNotTold) {
    Piece piece = testing::sample("armchair");
    EXPECT_TRUE(ofRule(findings(piece), RuleId::PartsClear).empty());
    EXPECT_TRUE(ofRule(findings(piece), RuleId::JointWanted).empty());
}

TEST(Limits, AMeasureOverItsMostIsLookedAt) {
    Piece piece = testing::sample("armchair");
    testing::statedMeasure(piece, "seat height").most = "16 in";

    const std::vector<Finding> some = ofRule(findings(piece), RuleId::MeasureLimits);

    ASSERT_EQ(some.size(), 1u);
    EXPECT_EQ(some[0].severity, Severity::LookAt);
    EXPECT_EQ(some[0].measure, "seat height");
}

TEST(Stock, UnknownSpeciesIsANote) {
    Piece piece = testing::sample("bench");
    piece.stocks[0].species = "island driftwood";

    const std::vector<Finding> all = findings(piece);

    ASSERT_FALSE(all.empty());
    EXPECT_EQ(all.back().severity, Severity::Note);
    EXPECT_NE(all.back().message.find("island driftwood"), std::string::npos);
}

TEST(Order, MustMendComesFirst) {
    Piece piece = frameWith(SizeName::TenonLength, "2 in");
    piece.stocks[0].species = "island driftwood";
    const std::vector<Finding> all = findings(piece);

    EXPECT_TRUE(std::is_sorted(all.begin(), all.end(), [](const Finding& a, const Finding& b) {
        return a.severity < b.severity;
    }));
    EXPECT_EQ(all.front().severity, Severity::MustMend);
    EXPECT_EQ(all.back().severity, Severity::Note);
}

TEST(FindingsJson, HoldsEveryFinding) {
    const Piece piece = frameWith(SizeName::TenonLength, "2 in");
    const std::string json = findingsJson(findings(piece), testing::resolved(piece));

    EXPECT_NE(json.find("\"id\": \"mortise.floor.least\""), std::string::npos);
    EXPECT_NE(json.find("\"severity\": \"must mend\""), std::string::npos);
}

}  // namespace
}  // namespace shoulderline
