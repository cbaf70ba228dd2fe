#include <QCoreApplication>
#include <QPrinter>
#include <QTemporaryDir>
#include <cmath>
#include <fstream>
#include <sstream>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/paper.h"
#include "tests/print/raster.h"
#include "tests/support/pieces.h"
#include "ui/printing/pdf_writer.h"
#include "ui/printing/printer.h"

namespace shoulderline {
namespace {

using testing::Crop;
using testing::nearest;
using testing::rasterised;
using testing::runProgram;

constexpr double kRulerError = 0.1;  // mm in 100, asked of the prints
constexpr double kSeamError = 0.2;   // mm across a seam

class Prints : public ::testing::Test {
  protected:
    Prints() : piece_(testing::sample("armchair")), resolved_(testing::resolved(piece_)) {}

    [[nodiscard]] std::string fileFor(const std::string& name) const {
        return folder_.filePath(QString::fromStdString(name)).toStdString();
    }
    [[nodiscard]] PrintJob fullSize(const std::string& paper,
                                    const std::vector<std::size_t>& kinds) const {
        return fullSizeJob(piece_, resolved_, kinds, *findPaper(paper), {}, "2026-11-24", metrics_);
    }
    [[nodiscard]] std::string written(const PrintJob& job, const std::string& name) const {
        const std::string file = fileFor(name);
        const Result<void> result = writePdf(job, file, "2026-11-24");
        EXPECT_TRUE(result) << result.error().message;
        return file;
    }

    QTemporaryDir folder_;
    LetteringMetrics metrics_;
    Piece piece_;
    ResolvedPiece resolved_;
};

// The square to check by, where the page has one: its top left corner.
std::optional<Vec2> squareOn(const Page& page) {
    for (const Op& op : page.furniture.ops) {
        const auto* stroke = std::get_if<Stroke>(&op);
        if (stroke != nullptr && stroke->points.size() == 5 &&
            std::abs(stroke->points[2].x - stroke->points[0].x - 100.0) < 1e-9) {
            return stroke->points[0];
        }
    }
    return std::nullopt;
}

void expectSquareOfAHundred(const std::string& file,
                            int page,
                            Vec2 corner,
                            const std::string& what) {
    const Crop crop = rasterised(file, page, corner.x - 3, corner.y - 3, 106, 106);
    const auto upright = testing::uprightLines(crop, corner.y + 40, corner.y + 80);
    const auto level = testing::levelLines(crop, corner.x + 80, corner.x + 95);
    const double across = nearest(upright, corner.x + 100) - nearest(upright, corner.x);
    const double down = nearest(level, corner.y + 100) - nearest(level, corner.y);
    EXPECT_NEAR(across, 100.0, kRulerError) << what;
    EXPECT_NEAR(down, 100.0, kRulerError) << what;
    ::testing::Test::RecordProperty("across_micrometres",
                                    static_cast<int>(std::lround(across * 1000)));
    ::testing::Test::RecordProperty("down_micrometres", static_cast<int>(std::lround(down * 1000)));
}

class PrintsOnPaper : public Prints, public ::testing::WithParamInterface<const char*> {};

TEST_P(PrintsOnPaper, AHundredMillimetresMeasureAHundred) {
    const PrintJob job = fullSize(GetParam(), {0, 2});
    const std::string file = written(job, "square.pdf");
    int measured = 0;
    for (std::size_t i = 0; i < job.pages.size() && measured < 2; ++i) {
        if (const std::optional<Vec2> corner = squareOn(job.pages[i])) {
            expectSquareOfAHundred(file, static_cast<int>(i) + 1, *corner, job.pages[i].name);
            ++measured;
        }
    }
    EXPECT_GT(measured, 0);
}

TEST_P(PrintsOnPaper, PageBoxesAreAsLargeAsThePaper) {
    const PrintJob job = fullSize(GetParam(), {0});
    const std::string file = written(job, "boxes.pdf");

    const std::string told =
        runProgram("pdfinfo", {"-f", "1", "-l", std::to_string(job.pages.size()), file}).text;

    for (std::size_t i = 0; i < job.pages.size(); ++i) {
        std::istringstream text(told);
        std::string line;
        bool found = false;
        while (std::getline(text, line)) {
            std::istringstream words(line);
            std::string page, size, by;
            std::size_t number = 0;
            double width = 0;
            double height = 0;
            if (words >> page >> number >> size >> width >> by >> height && page == "Page" &&
                number == i + 1 && size == "size:") {
                found = true;
                EXPECT_NEAR(width, job.pages[i].size.x * 72 / 25.4, 0.006);
                EXPECT_NEAR(height, job.pages[i].size.y * 72 / 25.4, 0.006);
            }
        }
        EXPECT_TRUE(found) << "page " << i + 1;
    }
}

INSTANTIATE_TEST_SUITE_P(
    Papers,
    PrintsOnPaper,
    ::testing::Values("Letter", "Legal", "Tabloid", "A4", "A3", "A2", "A1", "A0", "300 x 700 mm"),
    [](const auto& sampled) {
        std::string name;
        for (const char c : std::string(sampled.param)) {
            name += std::isalnum(static_cast<unsigned char>(c)) != 0 ? std::string(1, c)
                                                                     : std::string();
        }
        return name;
    });

DimensionOp shoulderLengthIn(const Sheet& drawing) {
    for (const Op& op : drawing.ops) {
        if (const auto* dimension = std::get_if<DimensionOp>(&op);
            dimension != nullptr && dimension->of == "shoulder length") {
            return *dimension;
        }
    }
    ADD_FAILURE() << "no shoulder length";
    return {};
}

// Joins the tiles A1, A2, A3 of the post by the match marks as they come out of the raster, and
// measures from its foot on A1 to its shoulder on A3.
TEST_F(Prints, ALineAcrossTwoSeamsIsAsLongAsItSays) {
    const PrintJob job = fullSize("A4", {0});
    const std::string file = written(job, "seams.pdf");
    ASSERT_EQ(job.pages[1].name, "front post, A1");
    ASSERT_EQ(job.pages[3].name, "front post, A3");
    const DimensionOp dimension = shoulderLengthIn(job.contents[job.pages[1].content]);
    const auto onPage = [&](Vec2 p, std::size_t page) {
        return p - job.pages[page].origin + job.pages[page].printable.min;
    };

    // The upright arm of the mark on each seam, as each of its two pages shows it.
    const auto markX = [&](std::size_t page, bool atRight) {
        Vec2 at;
        for (const Op& op : job.pages[page].furniture.ops) {
            const auto* arc = std::get_if<ArcOp>(&op);
            const bool isOurs =
                arc != nullptr &&
                (atRight ? arc->centre.x > job.pages[page].size.x - 40 : arc->centre.x < 40);
            if (isOurs && arc->centre.y < job.pages[page].size.y / 2) {
                at = arc->centre;
            }
        }
        const Crop crop = rasterised(file, static_cast<int>(page) + 1, at.x - 6, at.y - 6, 12, 12);
        return nearest(testing::uprightLines(crop, at.y - 3.8, at.y - 2.8), at.x);
    };
    const auto edgeX = [&](Vec2 corner, std::size_t page) {
        const Vec2 at = onPage(corner, page);
        const Crop crop = rasterised(file, static_cast<int>(page) + 1, at.x - 6, at.y, 12, 20);
        return nearest(testing::uprightLines(crop, at.y + 1.5, at.y + 4.5), at.x);
    };
    const double first = markX(1, true) - edgeX(dimension.from, 1);
    const double second = markX(2, true) - markX(2, false);
    const double third = edgeX(dimension.to, 3) - markX(3, false);

    EXPECT_NEAR(first + second + third, dimension.value, kSeamError);
    RecordProperty(
        "error_micrometres",
        static_cast<int>(std::lround((first + second + third - dimension.value) * 1000)));
    EXPECT_NEAR(dimension.value,
                testing::partNamed(resolved_, "front post, right").shoulderLength.value.mm(),
                1e-6);
}

// A level edge of the post that crosses the seam lies as far from the mark on one tile as on the
// other.
TEST_F(Prints, AnEdgeRunsStraightOnAcrossTheSeam) {
    const PrintJob job = fullSize("A4", {0});
    const std::string file = written(job, "straight.pdf");
    const auto dimension = shoulderLengthIn(job.contents[job.pages[1].content]);
    const auto markToEdge = [&](std::size_t page, bool atRight) {
        for (const Op& op : job.pages[page].furniture.ops) {
            const auto* arc = std::get_if<ArcOp>(&op);
            if (arc == nullptr ||
                (atRight ? arc->centre.x < job.pages[page].size.x - 40 : arc->centre.x > 40) ||
                arc->centre.y > job.pages[page].size.y / 2) {
                continue;
            }
            const Vec2 at = arc->centre;
            const Crop crop =
                rasterised(file, static_cast<int>(page) + 1, at.x - 6, at.y - 6, 12, 90);
            const double mark = nearest(testing::levelLines(crop, at.x - 3.8, at.x - 2.8), at.y);
            const double edge =
                dimension.from.y - job.pages[page].origin.y + job.pages[page].printable.min.y;
            // Beside the mark, on the side where the page is printed.
            const bool isPrintedRight = at.x + 5.5 < job.pages[page].printable.max.x;
            const double beside = isPrintedRight ? at.x + 4.2 : at.x - 5.5;
            return nearest(testing::levelLines(crop, beside, beside + 1.3), edge) - mark;
        }
        ADD_FAILURE() << "no match mark";
        return 0.0;
    };

    EXPECT_NEAR(markToEdge(1, true), markToEdge(2, false), kSeamError);
}

TEST_F(Prints, ViewersAreAskedNotToShrink) {
    const std::string file = written(fullSize("A4", {0}), "preferences.pdf");

    const testing::Output plain =
        runProgram("qpdf", {"--qdf", "--object-streams=disable", file, "-"});

    EXPECT_NE(plain.text.find("/PrintScaling /None"), std::string::npos);
    EXPECT_NE(plain.text.find("/PickTrayByPDFSize true"), std::string::npos);
}

TEST_F(Prints, EveryFontIsEmbedded) {
    const std::string file = written(fullSize("A4", {0, 1, 4}), "fonts.pdf");

    std::istringstream table(runProgram("pdffonts", {file}).text);
    std::string line;
    int fonts = 0;
    while (std::getline(table, line)) {
        std::istringstream words(line);
        std::string name, type, kind, encoding, embedded;
        words >> name >> type >> kind >> encoding >> embedded;
        if (type == "CID") {
            ++fonts;
            EXPECT_NE(name.find("RoutedGothic"), std::string::npos) << line;
            EXPECT_EQ(embedded, "yes") << line;
        }
    }
    EXPECT_EQ(fonts, 1) << "one lettering, no stand-ins";
}

TEST_F(Prints, TheFileIsSound) {
    const testing::Output check =
        runProgram("qpdf", {"--check", written(fullSize("Letter", {}), "sound.pdf")});

    EXPECT_EQ(check.code, 0) << check.text;
}

TEST_F(Prints, TwoRunsOfTheProgramGiveTheSameBytes) {
    const auto bytesOf = [&](const std::string& name) {
        const std::string file = fileFor(name);
        EXPECT_EQ(
            runProgram(QCoreApplication::applicationFilePath().toStdString(), {"--write", file})
                .code,
            0);
        std::ifstream stream(file, std::ios::binary);
        return std::string(std::istreambuf_iterator<char>(stream), {});
    };
    const std::string first = bytesOf("first.pdf");

    EXPECT_GT(first.size(), 10000u);
    EXPECT_TRUE(first == bytesOf("second.pdf"));
}

TEST_F(Prints, SheetsToScaleAreSoundToo) {
    const PrintJob job =
        sheetJob(piece_, resolved_, true, *findPaper("A3"), 0.0, "2026-11-24", metrics_);
    const testing::Output check = runProgram("qpdf", {"--check", written(job, "sheets.pdf")});

    EXPECT_EQ(check.code, 0) << check.text;
    EXPECT_NE(runProgram("pdftotext", {"-layout", fileFor("sheets.pdf"), "-"})
                  .text.find("make 2: 1 right as drawn, 1 left mirrored"),
              std::string::npos);
}

TEST_F(Prints, AFolderThatIsNotThereIsOneClearSentence) {
    const std::string file = fileFor("nowhere") + "/print.pdf";

    const Result<void> result = writePdf(fullSize("A4", {0}), file, "");

    ASSERT_FALSE(result);
    EXPECT_EQ(result.error().code, ErrorCode::CannotWrite);
    EXPECT_NE(result.error().message.find("print.pdf"), std::string::npos)
        << result.error().message;
}

TEST_F(Prints, NothingToPrintIsSaid) {
    const Result<std::string> result = pdfOf({}, "");

    ASSERT_FALSE(result);
    EXPECT_NE(result.error().message.find("nothing to print"), std::string::npos);
}

// QPrinter is what the window prints with; its own PDF stands in for a printer.
TEST_F(Prints, APrinterGetsTrueSizeToo) {
    const PrintJob job = fullSize("A4", {0});
    const std::string file = fileFor("printer.pdf");
    {
        QPrinter printer(QPrinter::HighResolution);
        printer.setOutputFormat(QPrinter::PdfFormat);
        printer.setOutputFileName(QString::fromStdString(file));
        const Result<void> result = print(job, printer);
        ASSERT_TRUE(result) << result.error().message;
    }
    const std::optional<Vec2> corner = squareOn(job.pages[0]);
    ASSERT_TRUE(corner.has_value());
    expectSquareOfAHundred(file, 1, *corner, "by QPrinter");
}

TEST_F(Prints, APrinterThatCannotPrintIsSaid) {
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(QString::fromStdString(fileFor("nowhere") + "/print.pdf"));

    const Result<void> result = print(fullSize("A4", {0}), printer);

    ASSERT_FALSE(result);
    EXPECT_EQ(result.error().code, ErrorCode::CannotWrite);
}

// A printer whose pages come out 0.5 % short across and 0.3 % long up the sheet, corrected: the
// raster is stretched by as much the other way.
TEST_F(Prints, ACorrectedPrintIsStretchedAndPdfFilesAreNot) {
    const PrintJob job = fullSize("A3", {0});
    const auto page = std::find_if(
        job.pages.begin(), job.pages.end(), [](const Page& p) { return squareOn(p).has_value(); });
    ASSERT_NE(page, job.pages.end());
    const int number = static_cast<int>(page - job.pages.begin()) + 1;
    const Vec2 corner = *squareOn(*page);
    const ScaleCorrection correction{1.0 / 0.995, 1.0 / 1.003};
    const std::string file = fileFor("corrected.pdf");
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(QString::fromStdString(file));
    ASSERT_TRUE(print(job, printer, correction));

    const Vec2 by = correction.on(*page);
    const Vec2 middle = page->size * 0.5;
    const auto moved = [&](Vec2 p) {
        return Vec2{middle.x + (p.x - middle.x) * by.x, middle.y + (p.y - middle.y) * by.y};
    };
    const Vec2 at = moved(corner);
    const Crop crop = rasterised(file, number, at.x - 3, at.y - 3, 107, 107);
    const auto upright = testing::uprightLines(crop, at.y + 40, at.y + 80);
    const auto level = testing::levelLines(crop, at.x + 80, at.x + 95);
    EXPECT_NEAR(nearest(upright, at.x + 100 * by.x) - nearest(upright, at.x), 100.0 * by.x, 0.05);
    EXPECT_NEAR(nearest(level, at.y + 100 * by.y) - nearest(level, at.y), 100.0 * by.y, 0.05);
    EXPECT_NE(runProgram("pdftotext", {file, "-"}).text.find("corrected for"), std::string::npos);
}

}  // namespace
}  // namespace shoulderline
