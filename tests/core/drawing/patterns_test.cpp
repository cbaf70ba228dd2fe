#include "core/drawing/patterns.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/title_block.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

// A rail of 300 x 60 x 20 whose lower edge is a circular arch 12 mm high over its whole length,
// with a 10 mm hole bored through it 40 mm from the start and 30 mm from the face edge.
struct Arched {
    Piece piece;
    ResolvedPiece resolved;
    Arched() {
        piece.unit = Unit::Millimetre;
        piece.style = LengthStyle::millimetres(1);
        ResolvedPart rail;
        rail.name = rail.of = "rail";
        rail.shoulderLength.value = Length::mm(300.0);
        rail.width.value = Length::mm(60.0);
        rail.thickness.value = Length::mm(20.0);
        // From (300, 60) back to (0, 60) by an arc that bows into the wood: sagitta 12 on a chord
        // of 300, bulge -2 * 12 / 300.
        rail.body.face.vertices = {
            {{0, 0}, 0.0}, {{300, 0}, 0.0}, {{300, 60}, -0.08}, {{0, 60}, 0.0}};
        rail.body.thickness = 20.0;
        ResolvedCut bore;
        bore.kind = CutKind::Bore;
        bore.face = Face::FaceSide;
        bore.box = {{35, 25, 0}, {45, 35, 20}};
        bore.isThrough = true;
        rail.cuts.push_back(bore);
        resolved.parts.push_back(rail);
    }
    [[nodiscard]] Sheet pattern() const {
        return patternsOf(piece, resolved, {{0}, "rail", 1, false}, kMetrics).at(0).drawing;
    }
};

bool patternSays(const Sheet& sheet, const std::string& text) {
    const std::vector<std::string> words = testing::wordsOn(sheet);
    return std::find(words.begin(), words.end(), text) != words.end();
}

// By hand: radius (150^2 + 12^2) / (2 * 12) = 943.5; its centre lies under the middle, 943.5 - 12
// past the lower edge: 60 + 943.5 - 12 = 991.5 from the face edge.
TEST(Patterns, TellRadiusAndCentreOfAnArc) {
    EXPECT_TRUE(patternSays(Arched().pattern(),
                            "a:  R 943.5,  centre 150 along, 991.5 from the face edge"));
}

// By hand at 100 along: 991.5 - sqrt(943.5^2 - 50^2) = 49.33 from the face edge.
TEST(Patterns, OffsetsFollowTheOutline) {
    const Sheet sheet = Arched().pattern();
    EXPECT_TRUE(patternSays(sheet, "49.3"));
    EXPECT_TRUE(patternSays(sheet, "48")) << "at the crown";
    EXPECT_TRUE(patternSays(sheet, "lower line from the face edge"));
    EXPECT_FALSE(patternSays(sheet, "upper line from the face edge")) << "that one is straight";
}

TEST(Patterns, OutlineAndBoreAreAtFullSize) {
    const Sheet sheet = Arched().pattern();
    std::vector<ArcOp> arcs;
    for (const Op& op : sheet.ops) {
        if (const auto* arc = std::get_if<ArcOp>(&op)) {
            arcs.push_back(*arc);
        }
    }
    ASSERT_EQ(arcs.size(), 2u);
    EXPECT_NEAR(arcs[0].radius, 943.5, 1e-6);
    EXPECT_NEAR(arcs[1].radius, 5.0, 1e-9);
    const DimensionOp length = testing::dimensionsOf(sheet, "length").at(0);
    EXPECT_NEAR(arcs[1].centre.x - std::min(length.from.x, length.to.x), 40.0, 1e-9);
}

TEST(Patterns, StationsAreWholeStepsAndTheEnd) {
    EXPECT_EQ(stationsAlong(300.0, Unit::Millimetre).size(), 31u);
    const std::vector<double> inches = stationsAlong(30.75 * 25.4, Unit::Inch);
    EXPECT_NEAR(inches[1], 25.4, 1e-9);
    EXPECT_NEAR(inches.back(), 30.75 * 25.4, 1e-9);
    EXPECT_EQ(inches.size(), 32u);
}

TEST(Patterns, APlainPartHasNone) {
    const Piece piece = testing::twoPostsAndARail();
    EXPECT_TRUE(patternsJob(piece, testing::resolved(piece), *findPaper("A4"), {}, "", kMetrics)
                    .pages.empty());
}

TEST(Patterns, LetteringOfTheSamplesLiesOnNothing) {
    int count = 0;
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        for (const PartKind& kind : partKinds(resolved)) {
            for (const Pattern& pattern : patternsOf(piece, resolved, kind, kMetrics)) {
                EXPECT_EQ(testing::overlapsOn(pattern.drawing, kMetrics),
                          std::vector<std::string>{})
                    << name << ": " << pattern.name;
                ++count;
            }
        }
    }
    EXPECT_GE(count, 5);
}

}  // namespace
}  // namespace shoulderline
