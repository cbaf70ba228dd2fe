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

// All that is lettered on a drawing, the figures of its dimensions too.
std::vector<TextOp> letteringOf(const Sheet& drawing) {
    std::vector<TextOp> lettering;
    for (const Op& op : drawing.ops) {
        if (const auto* text = std::get_if<TextOp>(&op)) {
            lettering.push_back(*text);
        } else if (const auto* dimension = std::get_if<DimensionOp>(&op)) {
            lettering.push_back(partsOf(*dimension, kMetrics).figure);
        }
    }
    return lettering;
}

// Whether the words lie within what one of the sheets prints.
bool standWhole(const Rect& words, const std::vector<const Page*>& sheets) {
    return std::any_of(sheets.begin(), sheets.end(), [&](const Page* page) {
        if (page->turn != Angle()) {
            return true;  // the whole drawing, along the diagonal
        }
        const Vec2 min = page->origin;
        const Vec2 max = page->origin + page->printable.max - page->printable.min;
        return words.min.x >= min.x && words.min.y >= min.y && words.max.x <= max.x &&
               words.max.y <= max.y;
    });
}

// What no sheet of its drawing has whole: a cut or an edge runs through it.
std::vector<std::string> cutWordsOf(const PrintJob& job) {
    std::vector<std::string> cut;
    for (std::size_t i = 1; i < job.contents.size(); ++i) {
        std::vector<const Page*> sheets;
        std::vector<Rect> cuts;
        for (const Page& page : job.pages) {
            if (page.content == i) {
                sheets.push_back(&page);
                const std::vector<Rect> some = cutsOf(page);
                cuts.insert(cuts.end(), some.begin(), some.end());
            }
        }
        for (const TextOp& text : letteringOf(job.contents[i])) {
            const Rect words = boundsOf(text, kMetrics);
            const bool isCut = std::any_of(cuts.begin(), cuts.end(), [&](const Rect& line) {
                return line.min.x < words.max.x && line.max.x > words.min.x &&
                       line.min.y < words.max.y && line.max.y > words.min.y;
            });
            if (isCut || !standWhole(words, sheets)) {
                cut.push_back(job.contents[i].title + ": " + text.text);
            }
        }
    }
    return cut;
}

// Words and figures of a pattern are to be read at the bench before its sheets are joined, too.
TEST_P(SeamsOfSample, LeaveAllWordsOfAPatternWholeOnOneSheet) {
    const Piece piece = testing::sample(GetParam());
    const ResolvedPiece made = testing::resolved(piece);
    PrintOrder order;
    order.kind = PrintKind::Patterns;
    for (const char* paper : {"A4", "Letter", "A3"}) {
        order.paper = *findPaper(paper);
        for (const Held held : {Held::Either, Held::Upright, Held::Lying}) {
            order.tiles.held = held;
            for (const double overlap : {10.0, 15.0, 30.0}) {
                order.tiles.overlap = overlap;
                for (const PrintUnits units : {PrintUnits::AsPiece,
                                               PrintUnits::InchesAndMillimetres,
                                               PrintUnits::MillimetresAndInches}) {
                    order.units = units;
                    EXPECT_EQ(cutWordsOf(printJob(piece, made, order, kMetrics)),
                              std::vector<std::string>{})
                        << paper << ", overlap " << overlap;
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

// Twelve holes in a row are one line of words, 400 mm long: more than a sheet is wide.
TEST(Patterns, WrapALineThatIsLongerThanASheet) {
    Piece piece = testing::sample("armchair");
    Part& arm = testing::statedPart(piece, "arm");
    for (int i = 0; i < 12; ++i) {
        CutStatement bore;
        bore.kind = CutKind::Bore;
        bore.along = std::to_string(8 + i) + " in";
        bore.across = "2 1/4 in";
        bore.width = "1/4 in";
        bore.depth = "1/4 in";
        arm.cuts.push_back(bore);
    }
    PrintOrder order;
    order.kind = PrintKind::Patterns;
    order.paper = *findPaper("A4");

    const PrintJob job = printJob(piece, testing::resolved(piece), order, kMetrics);

    EXPECT_EQ(cutWordsOf(job), std::vector<std::string>{});
    bool isTold = false;
    for (const std::string& words : testing::wordsOn(job.contents.at(1))) {
        isTold = isTold || words.find("12 \u00d7 bore \u23001/4, 1/4 deep") == 0;
        EXPECT_LT(kMetrics.width(words, 2.5, false), 297.0) << words;
    }
    EXPECT_TRUE(isTold);
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
