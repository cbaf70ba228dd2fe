#include "core/drawing/left_out.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/paper.h"
#include "core/drawing/story.h"
#include "core/drawing/strips.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

// A bar of 500 with a square mark near each end.
Sheet plainBar() {
    Sheet sheet;
    sheet.size = {500.0, 40.0};
    sheet.ops = {BeginGroup{{SubjectKind::Part, 0}, "bar, face side"},
                 Stroke{{{0, 10}, {500, 10}}, LineRole::Visible},
                 Stroke{{{0, 30}, {500, 30}}, LineRole::Visible},
                 Stroke{{{0, 10}, {0, 30}}, LineRole::Visible},
                 Stroke{{{500, 10}, {500, 30}}, LineRole::Visible},
                 Stroke{{{60, 10}, {60, 30}}, LineRole::Visible},
                 Stroke{{{440, 10}, {440, 30}}, LineRole::Visible},
                 EndGroup{}};
    return sheet;
}

// By hand: between the marks lie 380; 15 stay on either side, so 350 are left out in centimetres.
TEST(LeftOut, TheStretchBetweenIsWholeCentimetresAndTold) {
    const Sheet sheet = withPlainLeftOut(plainBar(), LengthStyle::millimetres(1), kMetrics);

    EXPECT_NEAR(sheet.size.x, 150.0, 1e-9);
    const std::vector<std::string> words = testing::wordsOn(sheet);
    EXPECT_EQ(std::count(words.begin(), words.end(), "350\u00A0mm left out"), 1);
}

TEST(LeftOut, MarksKeepTheirPlacesFromTheNearerEnd) {
    const Sheet sheet = withPlainLeftOut(plainBar(), LengthStyle::millimetres(1), kMetrics);
    const auto hasUpright = [&](double x) {
        return std::any_of(sheet.ops.begin(), sheet.ops.end(), [&](const Op& op) {
            const auto* stroke = std::get_if<Stroke>(&op);
            return stroke != nullptr && stroke->role == LineRole::Visible &&
                   stroke->points.size() == 2 && std::abs(stroke->points[0].x - x) < 1e-9 &&
                   std::abs(stroke->points[1].x - x) < 1e-9;
        });
    };
    EXPECT_TRUE(hasUpright(60.0));
    EXPECT_TRUE(hasUpright(sheet.size.x - 60.0));
}

TEST(LeftOut, AShortStretchStays) {
    Sheet bar = plainBar();
    bar.ops.insert(bar.ops.end() - 1, Stroke{{{130, 10}, {130, 30}}, LineRole::Visible});
    bar.ops.insert(bar.ops.end() - 1, Stroke{{{220, 10}, {220, 30}}, LineRole::Visible});
    bar.ops.insert(bar.ops.end() - 1, Stroke{{{290, 10}, {290, 30}}, LineRole::Visible});
    bar.ops.insert(bar.ops.end() - 1, Stroke{{{350, 10}, {350, 30}}, LineRole::Visible});

    const Sheet sheet = withPlainLeftOut(bar, LengthStyle::millimetres(1), kMetrics);

    // 60 to 130 and 350 to 440 leave 40 and 60: both go; 220 - 130 = 90 leaves 60; 70 leaves 40.
    EXPECT_NEAR(sheet.size.x, 500.0 - 40.0 - 60.0 - 40.0 - 60.0, 1e-9);
}

// What a rod lost in length is what stands at its breaks, each between two break lines that span
// the strip (ISO 128-2, 01.1: a break is shown by its line where the part is cut off, on either
// side).
TEST(LeftOut, RodsAndStoriesTellEveryStretchThatIsMissing) {
    int breaks = 0;
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        for (const PrintJob& job :
             {rodsJob(piece, resolved, *findPaper("A4"), {}, "", kMetrics),
              storyJob(piece, resolved, *findPaper("A4"), {}, "", kMetrics)}) {
            for (const Sheet& whole : job.contents) {
                const Sheet shorter =
                    withPlainLeftOut(whole, LengthStyle::millimetres(1), kMetrics);
                double told = 0.0;
                int words = 0;
                for (const std::string& text : testing::wordsOn(shorter)) {
                    if (text.find("left out") != std::string::npos) {
                        told += std::stod(text);
                        ++words;
                    }
                }
                const auto zigzags =
                    std::count_if(shorter.ops.begin(), shorter.ops.end(), [](const Op& op) {
                        const auto* stroke = std::get_if<Stroke>(&op);
                        return stroke != nullptr && stroke->role == LineRole::Dimension &&
                               stroke->points.size() == 6;
                    });
                EXPECT_NEAR(whole.size.x - shorter.size.x, told, 1e-6)
                    << name << ": " << whole.title;
                EXPECT_EQ(zigzags, 2 * words) << name << ": " << whole.title;
                EXPECT_EQ(testing::overlapsOn(shorter, kMetrics), std::vector<std::string>{})
                    << name << ": " << whole.title;
                breaks += words;
            }
        }
    }
    EXPECT_GT(breaks, 20);
}

TEST(LeftOut, FiguresStayTrueAndSheetsAreSaved) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece resolved = testing::resolved(piece);
    TileOptions options;
    const PrintJob whole =
        fullSizeJob(piece, resolved, {}, *findPaper("A4"), options, "", kMetrics);
    options.leavesOutPlain = true;
    const PrintJob shorter =
        fullSizeJob(piece, resolved, {}, *findPaper("A4"), options, "", kMetrics);

    EXPECT_LT(shorter.pages.size(), whole.pages.size());
    ASSERT_EQ(shorter.contents.size(), whole.contents.size());
    for (std::size_t i = 0; i < whole.contents.size(); ++i) {
        EXPECT_EQ(testing::overlapsOn(shorter.contents[i], kMetrics), std::vector<std::string>{})
            << shorter.contents[i].title;
        const auto figures = [](const Sheet& sheet) {
            std::vector<std::string> texts;
            for (const Op& op : sheet.ops) {
                if (const auto* d = std::get_if<DimensionOp>(&op)) {
                    texts.push_back(d->text);
                }
            }
            return texts;
        };
        EXPECT_EQ(figures(shorter.contents[i]), figures(whole.contents[i]));
    }
}

}  // namespace
}  // namespace shoulderline
