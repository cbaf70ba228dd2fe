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

// A rail whose lower edge is hollow, bored askew from its face side and with a slotted screw hole.
Sheet patternOfABoredRail() {
    Piece piece = testing::twoPostsAndARail();
    Part& rail = testing::statedPart(piece, "rail");
    rail.shape = {{Face::BackEdge,
                   {{Datum::Start, "2 in", "", Run::Arc, "-(1/2 in)", {}},
                    {Datum::Far, "2 in", "", Run::Line, "", {}}}}};
    CutStatement bore;
    bore.kind = CutKind::Bore;
    bore.along = "6 in";
    bore.across = "1 in";
    bore.width = "1/2 in";
    bore.depth = "5/8 in";
    bore.tiltAlong = "20 deg";
    bore.tiltAcross = "10 deg";
    CutStatement slot;
    slot.kind = CutKind::ScrewHole;
    slot.along = "9 in";
    slot.across = "1 in";
    slot.width = "3/16 in";
    slot.slot = SlotWay::Across;
    slot.length = "7/16 in";
    rail.cuts = {bore, slot};
    const ResolvedPiece resolved = testing::resolved(piece);
    for (const PartKind& kind : partKinds(resolved)) {
        if (kind.name == "rail") {
            return patternsOf(piece, resolved, kind, kMetrics).at(0).drawing;
        }
    }
    return {};
}

// The lean of a bore, and the depth of any hole, is what an outline cannot show.
TEST(Patterns, TellWhatTheOutlineOfAHoleDoesNot) {
    const Sheet sheet = patternOfABoredRail();

    EXPECT_TRUE(
        patternSays(sheet,
                    "bore \u23001/2, 5/8 deep along it, leans 20\u00b0, 1 in 2.7, towards the "
                    "right end and 10\u00b0, 1 in 5.7, away from the face edge:  6 along, 1 from "
                    "the face edge"));
    EXPECT_TRUE(patternSays(sheet,
                            "slot 3/16 \u00d7 7/16 across the part, through:  9 along, 1 from the "
                            "face edge"));
    EXPECT_EQ(testing::overlapsOn(sheet, kMetrics), std::vector<std::string>{});
}

// A bore made for a pin or a peg is told like one that is stated. By hand: its box is 10 mm across,
// its middle 40 mm along and 30 mm from the face edge.
TEST(Patterns, TellBoresForPinsToo) {
    EXPECT_TRUE(patternSays(Arched().pattern(),
                            "bore \u230010, through:  40 along, 30 from the face edge"));
}

TEST(Patterns, ArcsOfOneCircleHaveOneLetter) {
    Arched arched;
    std::vector<OutlineVertex>& vertices = arched.resolved.parts[0].body.face.vertices;
    // The arch in two halves of the same circle: (150, 48) lies on it, 12 above the edge.
    vertices = {{{0, 0}, 0.0},
                {{300, 0}, 0.0},
                {{300, 60}, -std::tan(std::atan(0.08) / 2.0)},
                {{150, 48}, -std::tan(std::atan(0.08) / 2.0)},
                {{0, 60}, 0.0}};
    const std::vector<std::string> words = testing::wordsOn(arched.pattern());
    const auto tells = [&](const char* letter) {
        return std::count_if(words.begin(), words.end(), [&](const std::string& word) {
            return word.rfind(std::string(letter) + ":  R ", 0) == 0;
        });
    };
    EXPECT_EQ(tells("a"), 1);
    EXPECT_EQ(tells("b"), 0);
}

// A taper that serves all four legs tells how many of each: 2 and 2 by the table's parts.
TEST(Patterns, ThatServeSeveralPartsTellHowManyOfEach) {
    const Piece piece = testing::sample("table");
    const ResolvedPiece table = testing::resolved(piece);
    bool isTold = false;
    for (const Page& page : patternsJob(piece, table, *findPaper("A4"), {}, "", kMetrics).pages) {
        for (const Op& op : page.furniture.ops) {
            const auto* words = std::get_if<TextOp>(&op);
            isTold = isTold || (words != nullptr &&
                                words->text.find("front leg: make 2") != std::string::npos &&
                                words->text.find("back leg: make 2") != std::string::npos);
        }
    }
    EXPECT_TRUE(isTold);
}

// A facet of its round is too short for a dash: what lies behind the mouth is one line.
TEST(Patterns, WhatALeaningBoreHidesIsDashedAllRound) {
    const Sheet sheet = patternOfABoredRail();
    const auto hidden = std::count_if(sheet.ops.begin(), sheet.ops.end(), [](const Op& op) {
        const auto* stroke = std::get_if<Stroke>(&op);
        return stroke != nullptr && stroke->role == LineRole::Hidden;
    });
    const auto longOnes = std::count_if(sheet.ops.begin(), sheet.ops.end(), [](const Op& op) {
        const auto* stroke = std::get_if<Stroke>(&op);
        return stroke != nullptr && stroke->role == LineRole::Hidden && stroke->points.size() > 20;
    });

    EXPECT_GE(longOnes, 1);
    EXPECT_LE(hidden, 4);
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
