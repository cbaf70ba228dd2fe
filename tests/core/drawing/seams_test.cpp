// Where full-size drawings are cut into tiles.
#include <algorithm>

#include <gtest/gtest.h>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/print_order.h"
#include "core/drawing/strips.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

PrintJob jobOf(const char* sample, PrintKind kind) {
    const Piece piece = testing::sample(sample);
    PrintOrder order;
    order.kind = kind;
    order.paper = *findPaper("A4");
    return printJob(piece, testing::resolved(piece), order, kMetrics);
}

// The lettering of a drawing's own titles.
std::vector<TextOp> titlesOf(const Sheet& drawing) {
    std::vector<TextOp> titles;
    for (std::size_t i = 0; i + 1 < drawing.ops.size(); ++i) {
        const auto* group = std::get_if<BeginGroup>(&drawing.ops[i]);
        const auto* text = std::get_if<TextOp>(&drawing.ops[i + 1]);
        if (group != nullptr && group->name == kTitleGroup && text != nullptr) {
            titles.push_back(*text);
        }
    }
    return titles;
}

// The lines of a tile that it is cut along, in the drawing.
std::vector<Rect> cutsOf(const Page& page) {
    std::vector<Rect> cuts;
    for (const Op& op : page.furniture.ops) {
        const auto* stroke = std::get_if<Stroke>(&op);
        if (stroke != nullptr && stroke->role == LineRole::CutPlane) {
            const auto inDrawing = [&](Vec2 p) { return p - page.printable.min + page.origin; };
            Rect line{inDrawing(stroke->points[0]), inDrawing(stroke->points[0])};
            line.include(inDrawing(stroke->points[1]));
            cuts.push_back(line);
        }
    }
    return cuts;
}

class SeamsOfSample : public ::testing::TestWithParam<const char*> {};

TEST_P(SeamsOfSample, RunThroughNoTitle) {
    for (const PrintKind kind : {PrintKind::Patterns, PrintKind::Story, PrintKind::Rods}) {
        const PrintJob job = jobOf(GetParam(), kind);
        for (const Page& page : job.pages) {
            for (const TextOp& title : titlesOf(job.contents[page.content])) {
                const Rect words = boundsOf(title, kMetrics);
                for (const Rect& cut : cutsOf(page)) {
                    const bool isCut = cut.min.x < words.max.x && cut.max.x > words.min.x &&
                                       cut.min.y < words.max.y && cut.max.y > words.min.y;
                    EXPECT_FALSE(isCut) << page.name << ": " << title.text;
                }
            }
        }
    }
}

TEST_P(SeamsOfSample, LeaveEachTileItsWholeName) {
    for (const PrintKind kind :
         {PrintKind::Patterns, PrintKind::Story, PrintKind::Rods, PrintKind::PartsFullSize}) {
        const PrintJob job = jobOf(GetParam(), kind);
        for (const Page& page : job.pages) {
            for (const std::string& words : testing::wordsOn(page.furniture)) {
                EXPECT_EQ(words.find("..."), std::string::npos) << page.name << ": " << words;
                EXPECT_EQ(words.find("\u2026"), std::string::npos) << page.name << ": " << words;
            }
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Samples,
                         SeamsOfSample,
                         ::testing::ValuesIn(testing::kSamples),
                         [](const auto& sampled) { return std::string(sampled.param); });

std::size_t tilesOf(const PrintJob& job, const std::string& drawing) {
    return static_cast<std::size_t>(
        std::count_if(job.pages.begin(), job.pages.end(), [&](const Page& page) {
            return page.name == drawing ||
                   (page.name.rfind(drawing + ", ", 0) == 0 && page.name != drawing + ", map");
        }));
}

// An arm of 32 in is 813 mm, and A4 lying prints 267 mm, 15 of them shared with the next sheet:
// four sheets reach 813 and its figures, three do not. A seat of 13 in square is 330 mm each way,
// which two sheets upright reach both ways.
TEST(Patterns, GoOnAsFewSheetsAsTheirSizeAllows) {
    EXPECT_EQ(tilesOf(jobOf("armchair", PrintKind::Patterns), "pattern of arm, face side"), 4u);
    EXPECT_EQ(tilesOf(jobOf("pilot_stool", PrintKind::Patterns), "pattern of seat, face side"), 4u);
}

// Four legs tapered on two faces each are one taper.
TEST(Patterns, OfOneTaperArePrintedOnce) {
    const PrintJob job = jobOf("table", PrintKind::Patterns);
    EXPECT_EQ(job.contents.size(), 2u) << "the maps' empty one, and the taper";
    EXPECT_EQ(tilesOf(job, "pattern of front leg and back leg, face side, back edge"), 3u);
}

}  // namespace
}  // namespace shoulderline
