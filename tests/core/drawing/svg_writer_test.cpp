#include "core/drawing/svg_writer.h"

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/svg_font.h"
#include "tests/core/drawing/sheet_checks.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

Sheet sheetWith(std::vector<Op> ops) {
    Sheet sheet;
    sheet.title = "a <rail> & \"its\" post";
    sheet.size = {297.0, 210.0};
    sheet.ops = std::move(ops);
    return sheet;
}

int timesIn(const std::string& text, const std::string& what) {
    int times = 0;
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) {
        ++times;
    }
    return times;
}

TEST(SvgWriter, UserUnitIsAMillimetre) {
    const std::string svg = svgOf(sheetWith({}), kMetrics);

    EXPECT_NE(svg.find("width=\"297mm\" height=\"210mm\" viewBox=\"0 0 297 210\""),
              std::string::npos)
        << svg;
}

TEST(SvgWriter, CoordinatesAreToTheMicrometre) {
    const std::string svg =
        svgOf(sheetWith({Stroke{{{1.0 / 3.0, 10.0}, {150.1234567, -0.0001}}, LineRole::Visible}}),
              kMetrics);

    EXPECT_NE(svg.find("d=\"M0.333 10 L150.123 0\""), std::string::npos) << svg;
}

TEST(SvgWriter, NamesAreEscaped) {
    const std::string svg =
        svgOf(sheetWith({BeginGroup{{SubjectKind::Part, 0}, "a\x01 < b & c"},
                         TextOp{{5, 5}, "1 < 2 & \"3\"", 3.5, Align::Left, false, false},
                         EndGroup{}}),
              kMetrics);

    EXPECT_NE(svg.find("<title>a &lt;rail&gt; &amp; &quot;its&quot; post</title>"),
              std::string::npos);
    EXPECT_NE(svg.find("<title>a &lt; b &amp; c</title>"), std::string::npos);
    EXPECT_NE(svg.find("aria-label=\"1 &lt; 2 &amp; &quot;3&quot;\""), std::string::npos);
    EXPECT_NE(svg.find(">&amp;</tspan>"), std::string::npos);
}

TEST(SvgWriter, EachRoleThatIsDrawnIsALayer) {
    const std::string svg = svgOf(sheetWith({Stroke{{{0, 0}, {9, 9}}, LineRole::Visible},
                                             Stroke{{{0, 0}, {9, 9}}, LineRole::CutPlane},
                                             Stroke{{{5, 0}, {9, 9}}, LineRole::Visible}}),
                                  kMetrics);

    EXPECT_EQ(timesIn(svg, "id=\"visible\""), 1);
    EXPECT_EQ(timesIn(svg, "id=\"cut-plane\""), 1);
    EXPECT_EQ(timesIn(svg, "class=\"layer"), 2);
    EXPECT_NE(svg.find("id=\"visible\" class=\"layer visible\" fill=\"none\" stroke=\"black\" "
                       "stroke-width=\"0.5\""),
              std::string::npos)
        << svg;
}

// ISO 128-20, table 2: a dash is 12 widths, a gap 3: 60 mm of 0.25 mm are 16 dashes and 15 gaps.
// A closed line that is filled hides the drawing: no role of line is.
TEST(SvgWriter, NoRoleOfLineIsFilled) {
    for (int role = 0; role <= static_cast<int>(LineRole::Border); ++role) {
        const std::string svg = svgOf(
            sheetWith({Stroke{{{5, 5}, {90, 5}, {90, 60}, {5, 5}}, static_cast<LineRole>(role)}}),
            kMetrics);
        EXPECT_EQ(timesIn(svg, "class=\"layer "), 1) << role;
        EXPECT_EQ(timesIn(svg, "fill=\"none\""), 1) << role;
        EXPECT_EQ(timesIn(svg, "fill=\"black\""), 0) << role;
    }
}

TEST(SvgWriter, DashesAreStrokesOfTheirOwn) {
    const std::string svg =
        svgOf(sheetWith({Stroke{{{0, 0}, {60, 0}}, LineRole::Hidden}}), kMetrics);

    EXPECT_EQ(timesIn(svg, "M"), 16);
    EXPECT_EQ(svg.find("dasharray"), std::string::npos);
}

TEST(SvgWriter, AFractionIsStackedOverABar) {
    const std::string svg =
        svgOf(sheetWith({TextOp{{5, 5}, "16 1/2", 3.5, Align::Left, false, false}}), kMetrics);

    EXPECT_EQ(timesIn(svg, "<text "), 3);
    EXPECT_EQ(timesIn(svg, "<path "), 1);
    EXPECT_NE(svg.find("aria-label=\"16 1/2\""), std::string::npos);
}

TEST(SvgWriter, TurnedLetteringReadsUpwards) {
    const std::string svg =
        svgOf(sheetWith({TextOp{{5, 9}, "post", 3.5, Align::Left, true, false}}), kMetrics);

    EXPECT_NE(svg.find("translate(5 9) rotate(-90)"), std::string::npos) << svg;
}

TEST(SvgWriter, LinesOffThePageAreLeftOut) {
    PrintJob job;
    job.contents.push_back(sheetWith({Stroke{{{0, 0}, {10, 0}}, LineRole::Visible},
                                      Stroke{{{500, 0}, {600, 0}}, LineRole::Visible}}));
    Page page;
    page.size = {210, 297};
    page.printable = {{10, 10}, {200, 280}};
    page.origin = {0, 0};

    const std::string svg = svgOf(job, page, kMetrics);

    EXPECT_NE(svg.find("M10 10 L20 10"), std::string::npos) << svg;
    EXPECT_EQ(svg.find("M510"), std::string::npos);
}

// The vectors of RFC 4648 section 10.
TEST(SvgWriter, AFontIsCarriedByteForByte) {
    const auto source = [](std::string_view digits) {
        return "src:url(data:font/ttf;base64," + std::string(digits) + ") format('truetype')";
    };

    EXPECT_NE(embeddedFont("f").find(source("Zg==")), std::string::npos);
    EXPECT_NE(embeddedFont("fo").find(source("Zm8=")), std::string::npos);
    EXPECT_NE(embeddedFont("foobar").find(source("Zm9vYmFy")), std::string::npos);
    EXPECT_NE(embeddedFont(std::string_view("\0\xFB\xFF", 3)).find(source("APv/")),
              std::string::npos);
    EXPECT_EQ(embeddedFont({}), "");
}

TEST(SvgWriter, APageCarriesTheFontOfItsLetteringOnce) {
    const TextOp words{{20, 20}, "post", 3.5, Align::Left, false, false};
    PrintJob job;
    job.contents.push_back(sheetWith({words}));
    Page page;
    page.size = {210, 297};
    page.printable = {{10, 10}, {200, 280}};
    page.furniture = sheetWith({words});

    const std::string svg = svgOf(job, page, kMetrics, "foobar");

    EXPECT_EQ(timesIn(svg,
                      "class=\"layer lettering\" fill=\"black\" stroke=\"none\" "
                      "font-family=\"'Routed Gothic', "),
              2);
    EXPECT_EQ(timesIn(svg, "@font-face{font-family:'Routed Gothic';"), 1);
    EXPECT_EQ(timesIn(svg, "base64"), 1);
    EXPECT_EQ(timesIn(svgOf(job.contents[0], kMetrics, "foobar"), "@font-face"), 1);
    EXPECT_EQ(timesIn(svgOf(job, page, kMetrics), "<style>"), 0);
}

}  // namespace
}  // namespace shoulderline
