#include <QImage>
#include <QRawFont>
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/drawing/fraction_text.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/lettering_widths.h"
#include "ui/painting/lettering_font.h"
#include "ui/painting/sheet_painter.h"

namespace shoulderline {
namespace {

// The font as Qt's own reader has it against the table that layout goes by.
TEST(LetteringFont, IsAsWideAsItsTableSays) {
    const QRawFont font = QRawFont::fromFont(letteringFont());
    ASSERT_TRUE(font.isValid());
    EXPECT_EQ(font.familyName(), QStringLiteral("Routed Gothic"));
    EXPECT_EQ(font.unitsPerEm(), static_cast<double>(kUnitsPerEm));
    EXPECT_NEAR(font.capHeight() * kUnitsPerEm / kLetteringPixels, kCapHeightUnits, 0.51);
    int compared = 0;
    for (char32_t c = 0x20; c < 0x2100; ++c) {
        const std::optional<int> units = advanceOf(c);
        if (!units) {
            continue;
        }
        const QList<quint32> glyphs = font.glyphIndexesForString(QString::fromUcs4(&c, 1));
        ASSERT_EQ(glyphs.size(), 1);
        EXPECT_NE(glyphs[0], 0u) << "U+" << std::hex << static_cast<std::uint32_t>(c);
        EXPECT_NEAR(font.advancesForGlyphIndexes(glyphs)[0].x(),
                    *units * static_cast<double>(kLetteringPixels) / kUnitsPerEm,
                    0.02)
            << "U+" << std::hex << static_cast<std::uint32_t>(c);
        ++compared;
    }
    EXPECT_GT(compared, 200);
}

constexpr double kPixelsPerMm = 20.0;

QImage painted(const Sheet& sheet, const SheetLook& look = {}) {
    QImage image(static_cast<int>(sheet.size.x * kPixelsPerMm),
                 static_cast<int>(sheet.size.y * kPixelsPerMm),
                 QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.scale(kPixelsPerMm, kPixelsPerMm);
    SheetPainter().paint(painter, sheet, look);
    return image;
}

QRect inkOf(const QImage& image) {
    QRect ink;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            if (qGray(image.pixel(x, y)) < 128) {
                ink |= QRect(x, y, 1, 1);
            }
        }
    }
    return ink;
}

Sheet sheetOf(std::vector<Op> ops) {
    Sheet sheet;
    sheet.size = {60, 30};
    sheet.ops = std::move(ops);
    return sheet;
}

TEST(SheetPainter, CapitalsAreAsHighAsStated) {
    const QRect ink =
        inkOf(painted(sheetOf({TextOp{{10, 20}, "H", 10.0, Align::Left, false, false}})));

    EXPECT_NEAR(ink.height() / kPixelsPerMm, 10.0, 0.15);
    EXPECT_NEAR((ink.bottom() + 1) / kPixelsPerMm, 20.0, 0.1);
}

TEST(SheetPainter, TextAlignedRightEndsThere) {
    const QRect ink =
        inkOf(painted(sheetOf({TextOp{{50, 20}, "HHH", 5.0, Align::Right, false, false}})));

    EXPECT_LT((ink.right() + 1) / kPixelsPerMm, 50.0);
    EXPECT_GT((ink.right() + 1) / kPixelsPerMm, 48.5);
}

TEST(SheetPainter, TurnedTextReadsUpwards) {
    const QRect ink =
        inkOf(painted(sheetOf({TextOp{{20, 28}, "HHH", 5.0, Align::Left, true, false}})));

    EXPECT_GT(ink.height(), ink.width());
    EXPECT_NEAR((ink.right() + 1) / kPixelsPerMm, 20.0, 0.2);
}

TEST(SheetPainter, FractionIsPaintedInsideItsLayout) {
    const LetteringMetrics metrics;
    const TextLayout layout = layOutText("3/8", 7.0, false, metrics);
    const QRect ink =
        inkOf(painted(sheetOf({TextOp{{10, 15}, "3/8", 7.0, Align::Left, false, false}})));

    EXPECT_GE(ink.top() / kPixelsPerMm, 15.0 - layout.ascent - 0.15);
    EXPECT_LE((ink.bottom() + 1) / kPixelsPerMm, 15.0 + layout.descent + 0.15);
    EXPECT_LE((ink.right() + 1) / kPixelsPerMm, 10.0 + layout.width + 0.15);
}

TEST(SheetPainter, WideLineIsHalfAMillimetre) {
    const QRect ink = inkOf(painted(sheetOf({Stroke{{{10, 15}, {50, 15}}, LineRole::Visible}})));

    EXPECT_EQ(ink.height(), static_cast<int>(0.5 * kPixelsPerMm));
}

TEST(SheetPainter, WhatIsChosenIsWiderAndInItsColour) {
    SheetLook look;
    look.colours.chosen = QColor(11, 102, 112);
    look.chosen = {Subject{SubjectKind::Part, 2}};
    const QImage image = painted(sheetOf({BeginGroup{{SubjectKind::Part, 2}, "rail"},
                                          Stroke{{{10, 15}, {50, 15}}, LineRole::Visible},
                                          EndGroup{}}),
                                 look);

    EXPECT_EQ(image.pixelColor(600, 300), look.colours.chosen);
    EXPECT_GT(inkOf(image).height(), static_cast<int>(0.5 * kPixelsPerMm));
}

TEST(SheetPainter, TintsAreLeftOutInPrint) {
    EXPECT_TRUE(
        inkOf(painted(sheetOf({Fill{{{10, 5}, {50, 5}, {50, 25}, {10, 25}}, true}}))).isNull());
}

// An arm's edge of 8 m radius: drawn as an arc it covers what its own points say, from end to end.
TEST(Painting, AFlatArcReachesBothItsEnds) {
    const double radius = 8000.0;
    const Vec2 centre{50.0, radius + 10.0};
    const double half = std::asin(45.0 / radius);
    const double up = -std::numbers::pi / 2.0;
    Sheet sheet;
    sheet.size = {100.0, 20.0};
    sheet.ops.push_back(ArcOp{
        centre, radius, Angle::radians(up - half), Angle::radians(2.0 * half), LineRole::Visible});
    const QRect ink = inkOf(painted(sheet));

    EXPECT_NEAR(ink.left() / kPixelsPerMm, 5.0 - 0.25, 0.1) << "with its square end";
    EXPECT_NEAR((ink.right() + 1) / kPixelsPerMm, 95.0 + 0.25, 0.1);
    EXPECT_NEAR(ink.top() / kPixelsPerMm, 10.0 - 0.25, 0.1) << "0.5 mm wide about its crown";
    const double ends = centre.y - radius * std::cos(half);
    EXPECT_NEAR((ink.bottom() + 1) / kPixelsPerMm, ends + 0.25, 0.1);
}

}  // namespace
}  // namespace shoulderline
