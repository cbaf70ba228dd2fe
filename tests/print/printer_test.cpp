// Prints on their way through a print server (CUPS) to what the printer is given, measured on the
// raster at 600 dots per inch.
#include "ui/printing/printer.h"

#include <QPrintDialog>
#include <QPrinter>
#include <QTemporaryDir>
#include <QTimer>
#include <algorithm>
#include <cmath>
#include <memory>

#include <gtest/gtest.h>

#include "core/drawing/calibration.h"
#include "core/drawing/lettering_metrics.h"
#include "tests/print/print_server.h"
#include "tests/print/raster.h"
#include "tests/support/pieces.h"
#include "ui/printing/pdf_writer.h"

namespace shoulderline {
namespace {

using testing::Crop;
using testing::nearest;
using testing::rasterised;

constexpr double kRulerError = 0.05;  // mm in 100

class AtThePrinter : public ::testing::Test {
  protected:
    // One for all: Qt keeps to the first server that it talks to.
    static void SetUpTestSuite() { server_ = std::make_unique<testing::PrintServer>(); }
    static void TearDownTestSuite() { server_.reset(); }
    void SetUp() override {
        ASSERT_EQ(server_->trouble(), "");
        server_->clear();
    }

    [[nodiscard]] std::string fileFor(const char* name) const {
        return folder_.filePath(QString::fromLatin1(name)).toStdString();
    }
    [[nodiscard]] static PrintJob post(Held held = Held::Either) {
        const Piece piece = testing::sample("armchair");
        TileOptions options;
        options.held = held;
        return fullSizeJob(piece,
                           testing::resolved(piece),
                           {0},
                           *findPaper("A4"),
                           options,
                           "2026-11-24",
                           LetteringMetrics());
    }
    [[nodiscard]] static PrintJob calibration() {
        return calibrationJob(*findPaper("A4"), true, "2026-11-24", LetteringMetrics());
    }

    static inline std::unique_ptr<testing::PrintServer> server_;
    QTemporaryDir folder_;
};

// The first page with a square to check by, and the square's top left corner.
struct Square {
    int page = 0;
    Vec2 paper;
    Vec2 corner;
};
Square squareIn(const PrintJob& job) {
    for (std::size_t i = 0; i < job.pages.size(); ++i) {
        for (const Op& op : job.pages[i].furniture.ops) {
            const auto* stroke = std::get_if<Stroke>(&op);
            if (stroke != nullptr && stroke->points.size() == 5 &&
                std::abs(stroke->points[2].x - stroke->points[0].x - 100.0) < 1e-9) {
                return {static_cast<int>(i) + 1, job.pages[i].size, stroke->points[0]};
            }
        }
    }
    ADD_FAILURE() << "no page has a square";
    return {};
}

// How wide the square comes out, its left side looked for at `left`, its right side at `right`, in
// a band below its words.
double widthOfSquare(const std::string& file, int page, double left, double right, double middle) {
    const Crop crop = rasterised(file, page, left - 3, middle - 25, right - left + 6, 50);
    const auto upright = testing::uprightLines(crop, middle + 5, middle + 22);
    return nearest(upright, right) - nearest(upright, left);
}

TEST_F(AtThePrinter, AHundredMillimetresAreAHundred) {
    const PrintJob job = post(Held::Upright);  // a lying page would come turned
    QPrinter printer(QPrinter::HighResolution);
    printer.setPrinterName(testing::PrintServer::queue());
    ASSERT_EQ(printer.outputFormat(), QPrinter::NativeFormat) << "the queue is found";
    ASSERT_TRUE(print(job, printer));
    const std::string file = server_->output();
    ASSERT_EQ(server_->trouble(), "");
    const Square square = squareIn(job);

    const Vec2 corner = square.corner;
    const Crop crop = rasterised(file, square.page, corner.x - 3, corner.y - 3, 106, 106);
    const auto upright = testing::uprightLines(crop, corner.y + 40, corner.y + 80);
    const auto level = testing::levelLines(crop, corner.x + 80, corner.x + 95);
    const double across = nearest(upright, corner.x + 100) - nearest(upright, corner.x);
    const double down = nearest(level, corner.y + 100) - nearest(level, corner.y);
    EXPECT_NEAR(across, 100.0, kRulerError);
    EXPECT_NEAR(down, 100.0, kRulerError);
    RecordProperty("across_micrometres", static_cast<int>(std::lround(across * 1000)));
    RecordProperty("down_micrometres", static_cast<int>(std::lround(down * 1000)));
    EXPECT_NE(server_->log().find("print-scaling=none"), std::string::npos) << "the job says so";
}

TEST_F(AtThePrinter, OnlyThePagesOfTheRangeAreSent) {
    QPrinter printer(QPrinter::HighResolution);
    printer.setPrinterName(testing::PrintServer::queue());
    printer.setPrintRange(QPrinter::PageRange);
    printer.setFromTo(2, 3);
    ASSERT_TRUE(print(post(), printer));

    const testing::Output info = testing::runProgram("pdfinfo", {server_->output()});
    EXPECT_NE(info.text.find("Pages:           2"), std::string::npos) << info.text;
    const std::string text = testing::runProgram("pdftotext", {server_->output(), "-"}).text;
    EXPECT_NE(text.find("front post, A1"), std::string::npos);
    EXPECT_EQ(text.find("map of its sheets"), std::string::npos);
}

// A page that lies goes onto the paper it was laid out for, whatever the printer takes as a rule,
// also once the print dialog has written the printer's own paper into the job.
TEST_F(AtThePrinter, ALyingPageKeepsItsPaper) {
    for (const bool hasDialog : {false, true}) {
        QPrinter printer;
        printer.setPrinterName(testing::PrintServer::queue());
        if (hasDialog) {
            QPrintDialog dialog(&printer);
            QTimer::singleShot(0, &dialog, &QDialog::accept);
            ASSERT_EQ(dialog.exec(), QDialog::Accepted);
        }
        ASSERT_TRUE(print(post(Held::Lying), printer));
        const testing::Output info = testing::runProgram("pdfinfo", {server_->output()});
        EXPECT_NE(info.text.find("A4"), std::string::npos) << hasDialog << info.text;
        // It comes turned, and whole: its ruler ends at the foot of the paper, its seam at the top.
        constexpr double kAcross = 210.0;
        constexpr double kDown = 297.0;
        constexpr double kEdge = 60.0;
        const Crop foot = rasterised(server_->output(), 2, 0.0, kDown - kEdge, kAcross, kEdge);
        const Crop top = rasterised(server_->output(), 2, 0.0, 0.0, kAcross, kEdge);
        EXPECT_FALSE(testing::uprightLines(foot, kDown - 50.0, kDown - 20.0).empty()) << hasDialog;
        EXPECT_FALSE(testing::uprightLines(top, 20.0, 50.0).empty()) << hasDialog;
    }
}

// A viewer or a setting that fits pages to the printer's margins: the square tells by a ruler, and
// the calibration sheet's figures are refused with the cause.
TEST_F(AtThePrinter, AScaledJobIsNoticed) {
    const PrintJob sheet = calibration();
    ASSERT_TRUE(writePdf(sheet, fileFor("sheet.pdf"), "2026-11-24"));
    server_->send(fileFor("sheet.pdf"), {"media=A4", "print-scaling=fit"});
    const std::string fitted = server_->output();
    ASSERT_EQ(server_->trouble(), "");
    const Crop crop = rasterised(fitted, 1, 1.0, 200.0, 208.0, 30.0);
    const auto lines = testing::uprightLines(crop, 203.0, 227.0);
    ASSERT_GE(lines.size(), 2u);
    const double across = lines.back() - lines.front();
    RecordProperty("across_of_170_micrometres", static_cast<int>(std::lround(across * 1000)));
    const double factor = across / calibrationLengths(*findPaper("A4")).x;
    EXPECT_LT(factor, 0.96);
    const Result<ScaleCorrection> refused =
        correctionFrom(*findPaper("A4"), calibrationLengths(*findPaper("A4")) * factor);
    ASSERT_FALSE(refused);
    EXPECT_NE(refused.error().message.find("fitted"), std::string::npos);
}

// The printer's margins are 18 and 36 points on A4 of 595 x 842: a fitted page is 770 / 842 as
// large, in their middle.
TEST_F(AtThePrinter, TheSquareOfAFittedTileIsFarFromAHundred) {
    PrintJob job = post(Held::Upright);
    const Square square = squareIn(job);
    job.pages = {job.pages[static_cast<std::size_t>(square.page) - 1]};
    ASSERT_TRUE(writePdf(job, fileFor("tile.pdf"), "2026-11-24"));
    server_->send(fileFor("tile.pdf"), {"media=A4", "print-scaling=fit"});
    const std::string fitted = server_->output();
    ASSERT_EQ(server_->trouble(), "");

    constexpr double kPoint = 25.4 / 72.0;
    const double factor = 770.0 / 842.0;
    const double left = (18.0 + (559.0 - 595.0 * factor) / 2.0) * kPoint + factor * square.corner.x;
    const double middle = 36.0 * kPoint + factor * (square.corner.y + 60.0);
    const double width = widthOfSquare(fitted, 1, left, left + 100.0 * factor, middle);
    RecordProperty("fitted_square_micrometres", static_cast<int>(std::lround(width * 1000)));
    EXPECT_NEAR(width, 100.0 * factor, 0.1);
    EXPECT_LT(width, 95.0) << "a ruler tells at once";
}

}  // namespace
}  // namespace shoulderline
