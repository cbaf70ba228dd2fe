// Which lines a part's views have where its tenons leave the wood, and what its words say of walls
// and edges that are not square.
#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/line_bands.h"
#include "core/drawing/part_sizing.h"
#include "core/drawing/sheets.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kMetrics;
using testing::partNamed;
using testing::resolved;
using testing::sample;

// How long the lines of a view are that stand at `x`, within a hair.
double lengthAt(const std::vector<PartLine>& lines, double x, bool isVisible) {
    double length = 0.0;
    for (const PartLine& line : lines) {
        const bool isThere = std::abs(line.a.x - x) < 1e-3 && std::abs(line.b.x - x) < 1e-3;
        length += isThere && line.isVisible == isVisible ? std::abs(line.b.y - line.a.y) : 0.0;
    }
    return length;
}

// The cabinet's shelves go into their housings with their whole thickness, stopped short of the
// front: only there is a shoulder.
TEST(ShoulderLines, AShelfInAStoppedHousingHasOneAtTheStopAlone) {
    const ResolvedPiece made = resolved(sample("chart_cabinet"));
    const ResolvedPart& shelf = partNamed(made, "shelf");
    const PartView view = partView(shelf, Face::FaceSide);
    const std::vector<PartLine> lines = linesOf(shelf, view);
    ASSERT_FALSE(shelf.tenons.empty());
    const double stop = shelf.width.value.mm() - shelf.tenons.front().box.size().y;

    EXPECT_GT(stop, 1.0);
    EXPECT_NEAR(lengthAt(lines, 0.0, true), stop, 1e-3);
    EXPECT_NEAR(lengthAt(lines, 0.0, false), 0.0, 1e-3);
}

TEST(ShoulderLines, ARailWithShouldersAllRoundHasThemInFull) {
    const ResolvedPiece made = resolved(testing::twoPostsAndARail());
    const ResolvedPart& rail = partNamed(made, "rail");
    const std::vector<PartLine> lines = linesOf(rail, partView(rail, Face::FaceSide));

    EXPECT_NEAR(lengthAt(lines, 0.0, true), rail.width.value.mm(), 1e-3);
}

// The chair's side rails meet its posts at 3.8 degrees: their far shoulder lines lie a millimetre
// behind the near ones.
TEST(ShoulderLines, OfAShoulderALittleOutOfSquareTheFarLineIsLeftOutWhereItWouldFillUp) {
    const ResolvedPiece made = resolved(sample("side_chair"));
    const ResolvedPart& rail = partNamed(made, "side rail, right");
    const std::vector<PartLine> all = linesOf(rail, partView(rail, Face::FaceSide));
    const auto hiddenShoulders = [](const std::vector<PartLine>& lines) {
        return std::count_if(lines.begin(), lines.end(), [](const PartLine& line) {
            return line.isShoulder && !line.isVisible;
        });
    };
    ASSERT_GT(hiddenShoulders(all), 0);

    EXPECT_EQ(hiddenShoulders(withoutBands(all, 0.25)), 0);
    EXPECT_GT(hiddenShoulders(withoutBands(all, 1.0)), 0) << "at full size there is room for both";
    const auto others = [](const std::vector<PartLine>& lines) {
        return std::count_if(lines.begin(), lines.end(), [](const PartLine& line) {
            return !line.isShoulder || line.isVisible;
        });
    };
    EXPECT_EQ(others(withoutBands(all, 0.25)), others(all));
}

std::string wordsOfPart(const char* name, const std::string& part) {
    const Piece piece = sample(name);
    const ResolvedPiece made = resolved(piece);
    std::string words;
    for (const PartKind& kind : partKinds(made)) {
        if (kind.name == part) {
            for (const Sheet& sheet :
                 partSheets(piece, made, kind, {{297, 210}, 0.0, "", 1, 9}, kMetrics)) {
                for (const std::string& line : testing::wordsOn(sheet)) {
                    words += line + "|";
                }
            }
        }
    }
    return words;
}

// The wall of a tusk tenon's slot that the wedge bears on slopes with it: both mouths are seen on
// the face side, and one is shorter.
TEST(WedgeSlots, AreDrawnWithTheirSlopingWall) {
    const ResolvedPiece made = resolved(sample("bed_frame"));
    const ResolvedPart& rail = partNamed(made, "side rail, right");
    const auto slot = std::find_if(rail.cuts.begin(), rail.cuts.end(), [](const ResolvedCut& cut) {
        return cut.kind == CutKind::Notch && cut.exact && cut.box.min.x < 0.0;
    });
    ASSERT_NE(slot, rail.cuts.end());
    const double wide = slot->box.size().y;

    // At the start the outer wall is the one at the lower x; its far edge lies farther in.
    const std::vector<PartLine> onFace = linesOf(rail, partView(rail, Face::FaceSide));
    EXPECT_NEAR(lengthAt(onFace, slot->box.min.x, true), wide, 1e-3);
    double farther = 0.0;
    for (const PartLine& line : onFace) {
        const bool isUpright = std::abs(line.a.x - line.b.x) < 1e-6;
        const bool isWithin = line.a.x > slot->box.min.x + 0.1 && line.a.x < slot->box.max.x - 0.1;
        farther += isUpright && isWithin && line.isVisible ? std::abs(line.a.y - line.b.y) : 0.0;
    }
    EXPECT_NEAR(farther, wide, 1e-3);

    const std::vector<PartLine> onEdge = linesOf(rail, partView(rail, Face::FaceEdge));
    EXPECT_TRUE(std::any_of(onEdge.begin(), onEdge.end(), [](const PartLine& line) {
        return std::abs(line.a.x - line.b.x) > 0.1 && std::abs(line.a.y - line.b.y) > 1.0;
    })) << "a line aslope, on the edge";
    EXPECT_NE(wordsOfPart("bed_frame", "side rail").find("shorter at the back side"),
              std::string::npos);
}

// Where the arm's face edge is shaped away, there is no edge to gauge a peg's hole from once it is.
TEST(PlacesAcross, AreFromTheBlanksEdgeWhereTheFaceEdgeIsShapedAway) {
    const std::string words = wordsOfPart("armchair", "arm");

    EXPECT_NE(words.find("from the blank's edge"), std::string::npos) << words;
    const ResolvedPiece made = resolved(sample("armchair"));
    const ResolvedPart& arm = partNamed(made, "arm, right");
    const double length = arm.shoulderLength.value.mm();
    EXPECT_EQ(referenceAcross(arm, 1, 50.0, 60.0), "face edge");
    EXPECT_EQ(referenceAcross(arm, 1, length - 60.0, length - 50.0), "the blank's edge");
}

// The arm's curve has a radius of 26 feet: no bench and no trammel is so long.
TEST(OutlineTables, TellAFlatCurveByItsRiseForABatten) {
    const std::string words = wordsOfPart("armchair", "arm");

    EXPECT_NE(words.find("sprung batten, rises "), std::string::npos) << words;
    EXPECT_NE(words.find(" over a chord of "), std::string::npos);
    EXPECT_EQ(words.find("arc R \u2248308"), std::string::npos);
    EXPECT_NE(words.find("arc R 3 3/4"), std::string::npos) << "the rounded front is swung";
}

}  // namespace
}  // namespace shoulderline
