#include "core/drawing/calibration.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/print_order.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

TEST(Calibration, LinesAreAsLongAsTheSheetSaysOnEveryPaper) {
    for (const Paper& paper : standardPapers()) {
        const PrintJob job = calibrationJob(paper, true, "2026-11-24", kMetrics);
        ASSERT_EQ(job.pages.size(), 1u);
        const Vec2 lengths = calibrationLengths(paper);
        bool hasAcross = false;
        bool hasUp = false;
        for (const Op& op : job.pages[0].furniture.ops) {
            const auto* stroke = std::get_if<Stroke>(&op);
            if (stroke != nullptr && stroke->points.size() == 2) {
                const Vec2 run = stroke->points[1] - stroke->points[0];
                hasAcross = hasAcross || (std::abs(run.x - lengths.x) < 1e-9 && run.y == 0.0);
                hasUp = hasUp || (std::abs(run.y - lengths.y) < 1e-9 && run.x == 0.0);
            }
        }
        EXPECT_TRUE(hasAcross && hasUp) << paper.name;
        Sheet sheet = job.pages[0].furniture;
        EXPECT_EQ(testing::overlapsOn(sheet, kMetrics), std::vector<std::string>{}) << paper.name;
    }
}

// By hand: a line of 170 that measures 169.15 asks for 170 / 169.15 = 1.005025.
TEST(Calibration, CorrectionIsWhatOughtToBeOverWhatIs) {
    const Paper a4 = *findPaper("A4");
    ASSERT_EQ(calibrationLengths(a4), (Vec2{170, 240}));
    const Result<ScaleCorrection> correction = correctionFrom(a4, {169.15, 240.0});
    ASSERT_TRUE(correction);
    EXPECT_NEAR(correction->shortSide, 1.005025, 1e-6);
    EXPECT_EQ(correction->longSide, 1.0);
    Page lying;
    lying.size = {297, 210};
    EXPECT_NEAR(correction->on(lying).y, 1.005025, 1e-6) << "the short side runs up a lying page";
}

// 0.9145 is what a page comes to that is fitted into the margins of a generic printer (measured).
TEST(Calibration, AFittedPageIsNoPrintersError) {
    const Paper a4 = *findPaper("A4");
    const Result<ScaleCorrection> fitted = correctionFrom(a4, Vec2{170, 240} * 0.9145);
    ASSERT_FALSE(fitted);
    EXPECT_NE(fitted.error().message.find("fitted to the printer's margins"), std::string::npos);
    EXPECT_FALSE(correctionFrom(a4, {0.0, 240.0}));
    EXPECT_FALSE(correctionFrom(a4, {170.0, std::nan("")}));
}

TEST(Calibration, EveryPageSaysThatItIsCorrected) {
    const Piece piece = testing::sample("table");
    PrintOrder order;
    order.paper = *findPaper("A4");
    PrintJob job = printJob(piece, testing::resolved(piece), order, kMetrics);
    const PrintJob noted = withCorrectionNoted(job, {1.005, 1.0}, "shop printer");
    for (const Page& page : noted.pages) {
        const std::vector<std::string> words = testing::wordsOn(page.furniture);
        EXPECT_EQ(std::count_if(words.begin(),
                                words.end(),
                                [](const std::string& w) {
                                    return w.rfind("corrected for shop printer", 0) == 0;
                                }),
                  1)
            << page.name;
    }
    EXPECT_EQ(withCorrectionNoted(job, {}, "shop printer").pages[0].furniture,
              job.pages[0].furniture);
}

TEST(PrintOrder, LettersSizesInTheUnitsAskedFor) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece resolved = testing::resolved(piece);
    PrintOrder order;
    order.kind = PrintKind::PartSheets;
    order.paper = *findPaper("A3");
    const auto widthOfThePost = [&](PrintUnits units) {
        order.units = units;
        const PrintJob job = printJob(piece, resolved, order, kMetrics);
        for (const Sheet& sheet : job.contents) {  // of the post's the one with its end
            if (const auto widths = testing::dimensionsOf(sheet, "width"); !widths.empty()) {
                return widths.front().text;
            }
        }
        return std::string();
    };
    // 2 1/8 in = 53.975 mm.
    EXPECT_EQ(widthOfThePost(PrintUnits::AsPiece), "2 1/8");
    EXPECT_EQ(widthOfThePost(PrintUnits::DecimalInches), "2.125");
    EXPECT_EQ(widthOfThePost(PrintUnits::Millimetres), "54");
    EXPECT_EQ(widthOfThePost(PrintUnits::InchesAndMillimetres), "2 1/8 [54]");
    EXPECT_EQ(widthOfThePost(PrintUnits::MillimetresAndInches), "54 [2 1/8]");
}

// But for the armchair's arm: with three bores and seven mortises on one side, each in two units,
// the letter of one section finds no place clear of their lines.
TEST(PrintOrder, NothingOverlapsInTwoUnits) {
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        PrintOrder order;
        order.kind = PrintKind::Set;
        order.paper = *findPaper("A3");
        order.units = PrintUnits::InchesAndMillimetres;
        const PrintJob job = printJob(piece, resolved, order, kMetrics);
        for (const Page& page : job.pages) {
            if (std::string(name) == "armchair" && page.name == "arm") {
                continue;
            }
            EXPECT_EQ(testing::overlapsOn(job.contents[page.content], kMetrics),
                      std::vector<std::string>{})
                << name << ": " << page.name;
        }
    }
}

TEST(PrintOrder, EveryKindGivesPagesOfTheArmchair) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece resolved = testing::resolved(piece);
    for (const PrintKind kind : kPrintKinds) {
        PrintOrder order;
        order.kind = kind;
        order.paper = *findPaper("A3");
        EXPECT_FALSE(printJob(piece, resolved, order, kMetrics).pages.empty());
    }
}

}  // namespace
}  // namespace shoulderline
