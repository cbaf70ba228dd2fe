#include <algorithm>

#include <gtest/gtest.h>

#include "core/piece/edit.h"
#include "tests/support/pieces.h"

// What is found of gaps and leans against published figures for people.
namespace shoulderline {
namespace {

using testing::findings;
using testing::ofRule;

// The armchair's side slats, 1 3/4 in wide in 21 1/4 in: four of them leave 2.85 in (72.4 mm), six
// 1.536 in (39 mm).
Piece withSideSlats(const char* count) {
    Piece piece = testing::sample("armchair");
    testing::statedMeasure(piece, "side slats").expression = count;
    return piece;
}

// 16 CFR 1508.4: 60 mm between the components of a crib at the most.
TEST(Gaps, OneThatASmallChildsHeadIsCaughtInIsANoteWithItsCaution) {
    const std::vector<Finding> found = ofRule(findings(withSideSlats("4")), RuleId::GapHead);

    ASSERT_EQ(found.size(), 1u) << "told once for the set";
    EXPECT_EQ(found[0].severity, Severity::Note);
    EXPECT_NEAR(found[0].value, (21.25 - 4 * 1.75) / 5 * 25.4, 1e-6);
    EXPECT_NEAR(found[0].limit, 60.0, 1e-9);
    EXPECT_NE(found[0].source.find("Caution"), std::string::npos);
}

TEST(Gaps, NarrowOnesAreNotTold) {
    EXPECT_TRUE(ofRule(findings(withSideSlats("6")), RuleId::GapHead).empty());
}

// One slat leaves 9.75 in (248 mm) at either side: a sphere of 230 mm goes through.
TEST(Gaps, OnesThatAHeadGoesThroughAreNotTold) {
    EXPECT_TRUE(ofRule(findings(withSideSlats("1")), RuleId::GapHead).empty());
}

TEST(Gaps, TheMendClosesThemWithTheFewestMembers) {
    const Piece piece = withSideSlats("3");
    const Finding finding = ofRule(findings(piece), RuleId::GapHead).at(0);
    ASSERT_FALSE(finding.mends.empty());
    ASSERT_TRUE(finding.mends[0].edit);

    const Piece mended = shoulderline::apply(piece, *finding.mends[0].edit).value();

    EXPECT_TRUE(ofRule(findings(mended), RuleId::GapHead).empty());
    const ResolvedPiece resolved = testing::resolved(mended);
    const auto slats = std::count_if(resolved.parts.begin(),
                                     resolved.parts.end(),
                                     [](const ResolvedPart& p) { return p.of == "side slat"; });
    // 5 at each side: (21.25 - 5 * 1.75) / 6 = 2.083 in (52.9 mm); 4 left 72.4 mm.
    EXPECT_EQ(slats, 10);
}

TEST(Leans, ABackThatLeansFurtherThanPublishedOnesIsANote) {
    Piece piece = testing::sample("armchair");
    Swing& swing = *piece.assemblies[1].swing;
    swing.peg.clear();
    EXPECT_TRUE(ofRule(findings(piece), RuleId::SwingLean).empty());
    swing.stations.push_back({"sleeping", "", "36 deg", {}});

    const std::vector<Finding> found = ofRule(findings(piece), RuleId::SwingLean);

    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].severity, Severity::Note);
    EXPECT_NEAR(found[0].value, 36.0, 1e-9);
    EXPECT_NEAR(found[0].limit, 30.0, 1e-9);
    const Piece mended = shoulderline::apply(piece, *found[0].mends.at(0).edit).value();
    EXPECT_TRUE(ofRule(findings(mended), RuleId::SwingLean).empty());
}

}  // namespace
}  // namespace shoulderline
