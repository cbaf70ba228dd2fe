#include <gtest/gtest.h>

#include "core/drawing/fraction_text.h"
#include "core/drawing/lettering_metrics.h"
#include "tests/core/drawing/sheet_checks.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

std::vector<std::string> runsOf(const std::string& text) {
    std::vector<std::string> runs;
    for (const TextRun& run : layOutText(text, 3.5, false, kMetrics).runs) {
        runs.push_back(run.text);
    }
    return runs;
}

using Runs = std::vector<std::string>;

TEST(FractionText, WholeNumberAndFractionArePutAsThreeRuns) {
    EXPECT_EQ(runsOf("16 1/2"), (Runs{"16", "1", "2"}));
}

TEST(FractionText, AFractionAloneHasNoWhole) {
    EXPECT_EQ(runsOf("9/16"), (Runs{"9", "16"}));
}

TEST(FractionText, WordsAroundFractionsStay) {
    EXPECT_EQ(runsOf("3/8 wide, 1 1/4 deep"), (Runs{"3", "8", " wide, 1", "1", "4", " deep"}));
}

TEST(FractionText, FractionInBracketsIsOne) {
    EXPECT_EQ(runsOf("(25 3/4)"), (Runs{"(25", "3", "4", ")"}));
}

TEST(FractionText, DatesAndWordsWithStrokesStayPlain) {
    EXPECT_EQ(runsOf("and/or"), (Runs{"and/or"}));
    EXPECT_EQ(runsOf("1/2/2026"), (Runs{"1/2/2026"}));
}

TEST(FractionText, NumeratorStandsOverDenominatorWithTheBarBetween) {
    const TextLayout layout = layOutText("1 3/16", 5.0, false, kMetrics);

    ASSERT_EQ(layout.runs.size(), 3u);
    ASSERT_EQ(layout.bars.size(), 1u);
    const double bar = layout.bars[0].a.y;
    EXPECT_DOUBLE_EQ(bar, layout.bars[0].b.y);
    EXPECT_LT(layout.runs[1].at.y, bar);  // the numerator's baseline is over the bar
    EXPECT_GT(layout.runs[2].at.y - layout.runs[2].height,
              bar);  // the denominator's top is under it
    EXPECT_DOUBLE_EQ(layout.runs[1].height, 5.0 * kFractionFigure);
}

// Source: ISO 3098-1, nominal heights 1.8, 2.5, 3.5 and 5 mm.
TEST(FractionText, FiguresAreOfTheNextLowerStandardHeight) {
    const double heights[] = {1.8, 2.5, 3.5, 5.0};
    for (std::size_t i = 1; i < std::size(heights); ++i) {
        EXPECT_GE(heights[i] * kFractionFigure, heights[i - 1] - 1e-9);
    }
}

TEST(FractionText, IsNarrowerThanTheSameWrittenOut) {
    EXPECT_LT(kMetrics.width("15/16", 3.5, false), kMetrics.width("15-16", 3.5, false));
}

TEST(Lettering, WidthGrowsWithHeight) {
    EXPECT_NEAR(kMetrics.width("face edge 3 1/8", 7.0, false),
                2.0 * kMetrics.width("face edge 3 1/8", 3.5, false),
                1e-9);
}

TEST(Lettering, NothingIsNoWidth) {
    EXPECT_EQ(kMetrics.width("", 3.5, true), 0.0);
}

TEST(Lettering, TextThatIsNotUtf8StillHasAWidth) {
    EXPECT_GT(kMetrics.width("\xff\xc3", 3.5, false), 0.0);
}

}  // namespace
}  // namespace shoulderline
