// Values that cannot be: each is told with the nearest that works, and that value, read out of the
// finding and typed as it stands there, makes the finding go.

#include <regex>

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::findings;
using testing::ofRule;
using testing::sample;
using testing::statedPart;
using testing::twoPostsAndARail;

// The first finding of a rule that says `words`; its whole text, mends and all.
std::string textSaying(const Piece& piece, RuleId rule, const std::string& words) {
    for (const Finding& finding : ofRule(findings(piece), rule)) {
        std::string text = finding.message;
        for (const Mend& mend : finding.mends) {
            text += "\n" + mend.text;
        }
        // Figures are kept on one line with their units.
        const std::string hard = "\u00a0";
        for (std::size_t at = text.find(hard); at != std::string::npos; at = text.find(hard)) {
            text.replace(at, hard.size(), " ");
        }
        if (text.find(words) != std::string::npos) {
            return text;
        }
    }
    return {};
}

// What stands in the brackets of `pattern` in the text, as a maker would type it over.
std::string valueIn(const std::string& text, const std::string& pattern) {
    std::smatch match;
    if (!std::regex_search(text, match, std::regex(pattern))) {
        ADD_FAILURE() << "no value as '" << pattern << "' in: " << text;
        return {};
    }
    std::string value = match[1];
    const std::string about = "\u2248";
    if (value.rfind(about, 0) == 0) {
        value.erase(0, about.size());
    }
    return value;
}

constexpr const char* kLengthIn = "([^;,]*? in)";

TEST(BadValues, ARadiusThatDoesNotReachOverItsChord) {
    Piece piece = sample("armchair");
    Bend& bend = *statedPart(piece, "back slat").bend;
    bend.rise.clear();
    bend.radius = "1/4 in";
    const std::string told =
        textSaying(piece, RuleId::PieceResolves, "does not reach over a chord");
    ASSERT_FALSE(told.empty());

    bend.radius = valueIn(told, std::string("a radius of ") + kLengthIn + " is the least");
    EXPECT_EQ(textSaying(piece, RuleId::PieceResolves, "does not reach"), "") << bend.radius;
}

TEST(BadValues, ARadiusTooSmallForThePliesOfTheStock) {
    Piece piece = sample("armchair");
    Bend& bend = *statedPart(piece, "back slat").bend;
    bend.rise.clear();
    bend.radius = "9 in";
    const std::string told = textSaying(piece, RuleId::BendPlyLeast, "to a radius of");
    ASSERT_FALSE(told.empty());

    bend.radius = valueIn(told, std::string("to a radius of ") + kLengthIn + " or more");
    EXPECT_EQ(textSaying(piece, RuleId::BendPlyLeast, "back slat"), "") << bend.radius;
    EXPECT_TRUE(ofRule(findings(piece), RuleId::BendPlyLeast).empty()) << bend.radius;
}

TEST(BadValues, ABowDeeperThanItsForm) {
    Piece piece = sample("armchair");
    Bend& bend = *statedPart(piece, "back slat").bend;
    bend.rise = "30 in";
    const std::string told = textSaying(piece, RuleId::PieceResolves, "half the chord");
    ASSERT_FALSE(told.empty());

    bend.rise = valueIn(told, std::string("half the chord, ") + kLengthIn + ", is the most");
    EXPECT_EQ(textSaying(piece, RuleId::PieceResolves, "half the chord"), "") << bend.rise;
}

RestStation& upright(Piece& piece) {
    for (Assembly& assembly : piece.assemblies) {
        if (assembly.swing) {
            return assembly.swing->stations.front();
        }
    }
    std::abort();
}

TEST(BadValues, AStationOutOfReach) {
    Piece piece = sample("armchair");
    RestStation& station = upright(piece);
    station.lean.clear();
    station.behind = "40 in";
    const std::string told = textSaying(piece, RuleId::SwingReach, "past its end");
    ASSERT_FALSE(told.empty());

    station.behind = valueIn(told, std::string("the bar ") + kLengthIn + " behind the pivot$");
    EXPECT_EQ(textSaying(piece, RuleId::SwingReach, "past its end"), "") << station.behind;
}

TEST(BadValues, AStationWithALeanThatNoBackHas) {
    Piece piece = sample("armchair");
    RestStation& station = upright(piece);
    station.lean = "-5 deg";
    const std::string told = textSaying(piece, RuleId::SwingReach, "leans from");
    ASSERT_FALSE(told.empty());

    station.lean = valueIn(told, "a lean of ([0-9.]+)") + " deg";
    EXPECT_EQ(textSaying(piece, RuleId::SwingReach, "leans from"), "") << station.lean;
}

TEST(BadValues, AStationWhosePegFindsNoWood) {
    Piece piece = sample("armchair");
    RestStation& station = upright(piece);
    station.lean = "60 deg";
    const std::string told = textSaying(piece, RuleId::SwingReach, "finds no wood");
    ASSERT_FALSE(told.empty());

    station.lean.clear();
    station.behind = valueIn(told, std::string("with the bar ") + kLengthIn + " behind");
    EXPECT_EQ(textSaying(piece, RuleId::SwingReach, "finds no wood"), "") << station.behind;
}

Piece railShaped(const ShapedEdge& edge) {
    Piece piece = twoPostsAndARail();
    statedPart(piece, "rail").shape = {{Face::BackEdge, edge}};
    return piece;
}

TEST(BadValues, AnOutlineThatCrossesItselfAtAPointTooFarIn) {
    ShapedEdge edge{{Datum::Start, "", "4 in", Run::Line, "", {}},
                    {Datum::Far, "", "0", Run::Line, "", {}}};
    const std::string told = textSaying(railShaped(edge), RuleId::PieceResolves, "cannot be made");
    ASSERT_FALSE(told.empty());

    edge[0].in = valueIn(told, std::string("can be set in by up to ") + kLengthIn + "\\.");
    EXPECT_EQ(textSaying(railShaped(edge), RuleId::PieceResolves, "cannot be made"), "")
        << edge[0].in;
}

TEST(BadValues, AnOutlineThatCrossesItselfByTheBowOfAnArc) {
    ShapedEdge edge{{Datum::Start, "2 in", "", Run::Arc, "-4 in", {}},
                    {Datum::Far, "2 in", "", Run::Line, "", {}}};
    const std::string told = textSaying(railShaped(edge), RuleId::PieceResolves, "cannot be made");
    ASSERT_FALSE(told.empty());

    edge[0].bow = valueIn(told, std::string("can be bowed up to ") + kLengthIn + "\\.");
    EXPECT_EQ(textSaying(railShaped(edge), RuleId::PieceResolves, "cannot be made"), "")
        << edge[0].bow;
}

TEST(BadValues, AnOutlineThatTurnsBackAtAPointTooFarAlong) {
    ShapedEdge edge{{Datum::Start, "2 in", "", Run::Line, "", {}},
                    {Datum::Start, "12 in", "", Run::Line, "", {}},
                    {Datum::Start, "8 in", "", Run::Line, "", {}}};
    const std::string told = textSaying(railShaped(edge), RuleId::PieceResolves, "cannot be made");
    ASSERT_FALSE(told.empty());

    edge[1].along = valueIn(
        told, std::string("Point 2 of the back edge can lie up to ") + kLengthIn + " along");
    EXPECT_EQ(textSaying(railShaped(edge), RuleId::PieceResolves, "cannot be made"), "")
        << edge[1].along;
}

}  // namespace
}  // namespace shoulderline
