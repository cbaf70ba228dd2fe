// SVG against PDF: librsvg and poppler draw the same page, and both are measured.
#include <QFile>
#include <QImage>
#include <QRawFont>
#include <QTemporaryDir>
#include <QXmlStreamReader>
#include <algorithm>
#include <cmath>
#include <filesystem>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/paper.h"
#include "core/drawing/svg_writer.h"
#include "core/storage/piece_file.h"
#include "tests/print/raster.h"
#include "tests/support/pieces.h"
#include "ui/painting/lettering_font.h"
#include "ui/printing/pdf_writer.h"

namespace shoulderline {
namespace {

constexpr double kScreenPixelsPerMm = 300.0 / 25.4;

class Svgs : public ::testing::Test {
  protected:
    [[nodiscard]] std::string fileFor(const std::string& name) const {
        return folder_.filePath(QString::fromStdString(name)).toStdString();
    }

    // A page drawn from its SVG by librsvg, and from its PDF by poppler, at 300 dots per inch.
    [[nodiscard]] QImage bySvg(const PrintJob& job, std::size_t page) const {
        const std::string svg = fileFor("page.svg");
        const std::string png = fileFor("svg.png");
        EXPECT_TRUE(replaceFile(svg, svgOf(job, job.pages[page], metrics_, font_)));
        EXPECT_EQ(testing::runProgram("rsvg-convert",
                                      {"-d", "300", "-p", "300", "-b", "white", "-o", png, svg})
                      .code,
                  0);
        return QImage(QString::fromStdString(png)).convertToFormat(QImage::Format_Grayscale8);
    }
    [[nodiscard]] QImage byPdf(const PrintJob& job, std::size_t page) const {
        const std::string pdf = fileFor("page.pdf");
        const std::string png = fileFor("pdf");
        EXPECT_TRUE(writePdf(job, pdf, "2026-11-24"));
        const std::string number = std::to_string(page + 1);
        EXPECT_EQ(testing::runProgram(
                      "pdftocairo",
                      {"-png", "-singlefile", "-r", "300", "-f", number, "-l", number, pdf, png})
                      .code,
                  0);
        return QImage(QString::fromStdString(png + ".png"))
            .convertToFormat(QImage::Format_Grayscale8);
    }

    QTemporaryDir folder_;
    LetteringMetrics metrics_;
    const std::string font_ = letteringFontFile();
};

constexpr int kDark = 160;
constexpr int kGrey = 224;  // the edge of a line, where the other rasteriser may have drawn it

bool isInked(const QImage& image, int x, int y, int lighter) {
    return image.valid(x, y) && image.constScanLine(y)[x] < lighter;
}

bool isInkedNear(const QImage& image, int x, int y, int reach) {
    for (int dy = -reach; dy <= reach; ++dy) {
        for (int dx = -reach; dx <= reach; ++dx) {
            if (isInked(image, x + dx, y + dy, kGrey)) {
                return true;
            }
        }
    }
    return false;
}

// Dark pixels of `one` without ink in `other` within `reach` pixels, and all dark ones.
struct Apart {
    int strays = 0;
    int all = 0;
};
Apart apart(const QImage& one, const QImage& other, int reach) {
    Apart result;
    for (int y = 0; y < one.height(); ++y) {
        for (int x = 0; x < one.width(); ++x) {
            if (isInked(one, x, y, kDark)) {
                ++result.all;
                result.strays += isInkedNear(other, x, y, reach) ? 0 : 1;
            }
        }
    }
    return result;
}

void takeLetteringOff(Sheet& sheet) {
    sheet.ops.erase(std::remove_if(sheet.ops.begin(),
                                   sheet.ops.end(),
                                   [](const Op& op) { return std::holds_alternative<TextOp>(op); }),
                    sheet.ops.end());
    for (Op& op : sheet.ops) {
        if (auto* dimension = std::get_if<DimensionOp>(&op)) {
            dimension->text.clear();
        }
    }
}

// Lines, arrowheads and lettering, bold too, to a pixel.
TEST_F(Svgs, AgreeWithThePdf) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece resolved = testing::resolved(piece);
    PrintJob sheets =
        sheetJob(piece, resolved, true, *findPaper("A4"), 0.0, "2026-11-24", metrics_);
    PrintJob tiles =
        fullSizeJob(piece, resolved, {0}, *findPaper("A4"), {}, "2026-11-24", metrics_);
    constexpr int kReach = 1;
    for (int pass = 0; pass < 2; ++pass) {  // the second without lettering
        for (const auto& [job, page] :
             {std::pair{&sheets, std::size_t{0}}, {&tiles, std::size_t{2}}}) {
            const QImage svg = bySvg(*job, page);
            const QImage pdf = byPdf(*job, page);
            ASSERT_FALSE(svg.isNull() || pdf.isNull());
            EXPECT_NEAR(svg.width(), pdf.width(), 1);
            EXPECT_NEAR(svg.height(), pdf.height(), 1);
            for (const Apart& found : {apart(svg, pdf, kReach), apart(pdf, svg, kReach)}) {
                EXPECT_GT(found.all, 20000);
                EXPECT_EQ(found.strays, 0) << "of " << found.all << " on " << job->pages[page].name;
            }
            takeLetteringOff(job->contents[job->pages[page].content]);
            takeLetteringOff(job->pages[page].furniture);
        }
    }
}

// A mistake of a pixel and a half would be seen.
TEST_F(Svgs, AShiftOfTwoPixelsIsNoticed) {
    PrintJob job;
    job.contents.emplace_back();
    job.contents[0].size = {50, 50};
    job.contents[0].ops = {Stroke{{{10, 10}, {40, 10}}, LineRole::Visible}};
    job.pages.push_back({{50, 50}, {{0, 0}, {50, 50}}, {}, 0, {}, "line", {}});
    const QImage right = bySvg(job, 0);
    job.contents[0].ops = {Stroke{
        {{10, 10 + 2 / kScreenPixelsPerMm}, {40, 10 + 2 / kScreenPixelsPerMm}}, LineRole::Visible}};
    EXPECT_GT(apart(right, bySvg(job, 0), 1).strays, 100);
}

TEST_F(Svgs, AHundredMillimetresMeasureAHundred) {
    PrintJob job;
    job.contents.emplace_back();
    Sheet& sheet = job.contents[0];
    sheet.size = {297, 210};
    sheet.ops = {Stroke{{{20, 20}, {120, 20}, {120, 120}, {20, 120}, {20, 20}}, LineRole::Visible}};
    job.pages.push_back({{297, 210}, {{0, 0}, {297, 210}}, {}, 0, {}, "square", {}});

    const testing::Crop crop{bySvg(job, 0), 0.0, 0.0};
    const auto middleOfInk = [&](bool isUpright, double from, double to) {
        double sum = 0.0;
        double weight = 0.0;
        const int across = static_cast<int>(70.0 * kScreenPixelsPerMm);
        for (int i = static_cast<int>(from * kScreenPixelsPerMm);
             i < static_cast<int>(to * kScreenPixelsPerMm);
             ++i) {
            const int grey = isUpright ? crop.image.constScanLine(across)[i]
                                       : crop.image.constScanLine(i)[across];
            sum += (255 - grey) * (i + 0.5);
            weight += 255 - grey;
        }
        return sum / weight / kScreenPixelsPerMm;
    };
    for (const bool isUpright : {true, false}) {
        EXPECT_NEAR(middleOfInk(isUpright, 115, 125) - middleOfInk(isUpright, 15, 25), 100.0, 0.02);
    }
}

TEST_F(Svgs, AreWellFormedForEverySheetOfEverySample) {
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        for (const bool isParts : {true, false}) {
            const PrintJob job =
                sheetJob(piece, resolved, isParts, *findPaper("A3"), 0.0, "2026-11-24", metrics_);
            for (const Page& page : job.pages) {
                QXmlStreamReader reader(
                    QByteArray::fromStdString(svgOf(job, page, metrics_, font_)));
                int elements = 0;
                while (!reader.atEnd()) {
                    elements += reader.readNext() == QXmlStreamReader::StartElement;
                }
                EXPECT_FALSE(reader.hasError())
                    << page.name << ": " << reader.errorString().toStdString();
                EXPECT_GT(elements, 100);
            }
        }
    }
}

// What is read back out of the file is the font, as it is shipped, and it can be lettered with.
TEST_F(Svgs, CarryTheFontThatTheyAreLetteredIn) {
    const Piece piece = testing::sample("table");
    const PrintJob job = sheetJob(
        piece, testing::resolved(piece), false, *findPaper("A3"), 0.0, "2026-11-24", metrics_);
    QFile shipped(QStringLiteral(SHOULDERLINE_SOURCE_DIR "/resources/fonts/routed-gothic.ttf"));
    ASSERT_TRUE(shipped.open(QIODevice::ReadOnly));

    const QByteArray svg =
        QByteArray::fromStdString(svgOf(job, job.pages[0], metrics_, letteringFontFile()));

    const auto from = svg.indexOf("base64,") + 7;
    const QByteArray font = QByteArray::fromBase64(svg.mid(from, svg.indexOf(')', from) - from));
    EXPECT_TRUE(font == shipped.readAll());
    EXPECT_EQ(QRawFont(font, 20.0).familyName(), QStringLiteral("Routed Gothic"));
}

TEST_F(Svgs, AreValidForXmllint) {
    Piece piece = testing::sample("table");
    piece.name = "<Table & \"bench\">";
    const PrintJob job = sheetJob(
        piece, testing::resolved(piece), false, *findPaper("A3"), 0.0, "2026-11-24", metrics_);
    const std::string file = fileFor("table.svg");
    ASSERT_TRUE(replaceFile(file, svgOf(job, job.pages[0], metrics_, font_)));

    EXPECT_EQ(testing::runProgram("xmllint", {"--noout", file}).code, 0);
}

}  // namespace
}  // namespace shoulderline
