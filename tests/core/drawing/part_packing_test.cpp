#include <gtest/gtest.h>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/hatching.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/part_layout.h"
#include "core/drawing/sheets.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

// How the views, sections and tables of a part find room on sheets.
namespace shoulderline {
namespace {

using testing::kMetrics;

// A block that is a plain rectangle, with words in it to be found again.
PartBlock blockOf(Face face, Vec2 size, const std::string& words) {
    std::vector<Vec2> ring = ringOf(Rect{{0, 0}, size});
    ring.push_back(ring.front());
    PartBlock block;
    block.face = face;
    block.ops = {Stroke{ring, LineRole::Visible},
                 TextOp{{1.0, 4.0}, words, 2.5, Align::Left, false, false}};
    block.bounds = {{0, 0}, size};
    return block;
}
PartBlock sideOf(Face face, Vec2 size, const std::string& words) {
    PartBlock block = blockOf(face, size, words);
    block.bodyHeight = size.y;
    return block;
}

// Where a block has come to lie of those on a page.
std::optional<Rect> placeOf(const std::vector<Op>& page, const std::string& words) {
    for (std::size_t i = 1; i < page.size(); ++i) {
        const auto* text = std::get_if<TextOp>(&page[i]);
        if (text != nullptr && text->text == words) {
            return boundsOf(std::vector<Op>{page[i - 1]}, kMetrics);
        }
    }
    return std::nullopt;
}

TEST(Packing, ATableStandsByTheViewWithItsPoints) {
    PartDrawingBlocks blocks;
    blocks.sides = {sideOf(Face::FaceSide, {100, 20}, "front"),
                    sideOf(Face::BackSide, {100, 20}, "back")};
    PartBlock table = blockOf(Face::BackSide, {40, 12}, "table");
    table.isTable = true;
    blocks.further = {table};

    const auto pages = packed(blocks, {{200, 100}, true, 3.5, false}, kMetrics);

    ASSERT_TRUE(pages);
    ASSERT_EQ(pages->size(), 1u);
    const std::optional<Rect> view = placeOf(pages->front(), "back");
    const std::optional<Rect> there = placeOf(pages->front(), "table");
    ASSERT_TRUE(view && there);
    const bool isUnder = std::abs(there->min.y - view->max.y - 6.0) < 1e-6;
    const bool isBeside = std::abs(there->min.x - view->max.x - 9.0) < 1e-6 &&
                          there->min.y < view->max.y && view->min.y < there->max.y;
    EXPECT_TRUE(isUnder || isBeside) << there->min.x << ", " << there->min.y;
}

TEST(Packing, SidesThatShareASheetStandOverOneAnother) {
    PartDrawingBlocks blocks;
    blocks.sides = {sideOf(Face::FaceSide, {60, 20}, "front"),
                    sideOf(Face::FaceEdge, {60, 20}, "edge")};

    const auto pages = packed(blocks, {{200, 100}, true, 3.5, false}, kMetrics);

    ASSERT_EQ(pages->size(), 1u);
    EXPECT_GE(placeOf(pages->front(), "edge")->min.y, placeOf(pages->front(), "front")->max.y);
}

// A low section comes first in reading order and takes the corner that only the high one could
// have: sorted by size both find room on the one sheet.
TEST(Packing, AThriftyOneSortsWhereThatSavesASheet) {
    PartDrawingBlocks blocks;
    blocks.sides = {sideOf(Face::FaceSide, {100, 30}, "front")};
    PartBlock low = blockOf(Face::FaceSide, {35, 25}, "low");
    PartBlock high = blockOf(Face::FaceSide, {35, 70}, "high");
    low.isSection = high.isSection = true;
    blocks.further = {low, high};
    const Vec2 room{150, 80};

    const auto plain = packed(blocks, {room, true, 3.5, false}, kMetrics);
    const auto thrifty = packed(blocks, {room, true, 3.5, true}, kMetrics);

    ASSERT_TRUE(plain && thrifty);
    EXPECT_EQ(plain->size(), 2u);
    EXPECT_EQ(thrifty->size(), 1u);
}

TEST(Packing, AThriftyOneSetsCloserWhereThatSavesASheet) {
    PartDrawingBlocks blocks;
    blocks.sides = {sideOf(Face::FaceSide, {100, 30}, "front")};
    PartBlock section = blockOf(Face::FaceSide, {40, 30}, "section");
    section.isSection = true;
    blocks.further = {section};
    const Vec2 room{148, 45};  // 100, 40, and 8 of the 9 mm between

    EXPECT_EQ(packed(blocks, {room, true, 3.5, false}, kMetrics)->size(), 2u);
    const auto thrifty = packed(blocks, {room, true, 3.5, true}, kMetrics);
    ASSERT_EQ(thrifty->size(), 1u);
    EXPECT_NEAR(
        placeOf(thrifty->front(), "section")->min.x - placeOf(thrifty->front(), "front")->max.x,
        6.0,
        1e-6);
}

std::vector<Sheet> sheetsOf(const char* sample, const std::string& part, Vec2 paper) {
    const Piece piece = testing::sample(sample);
    const ResolvedPiece made = testing::resolved(piece);
    for (const PartKind& kind : partKinds(made)) {
        if (kind.name == part) {
            return partSheets(piece, made, kind, {paper, 0.0, "", 0, 0}, kMetrics);
        }
    }
    return {};
}

bool says(const Sheet& sheet, const std::string& words) {
    const std::vector<std::string> all = testing::wordsOn(sheet);
    return std::find(all.begin(), all.end(), words) != all.end();
}

// Their sections would stand on a second sheet by themselves; lettered a size smaller they go on
// with the views, which stay as large.
TEST(PartSheet, SectionsDoNotStandOnASheetByThemselves) {
    const std::vector<Sheet> head = sheetsOf("bed_frame", "head rail, lower", {297, 210});
    ASSERT_EQ(head.size(), 1u);
    EXPECT_TRUE(says(head.front(), "1 : 5"));

    const std::vector<Sheet> back = sheetsOf("raked_chair", "lower back rail", {297, 210});
    ASSERT_EQ(back.size(), 1u);
    EXPECT_TRUE(says(back.front(), "1 : 2"));
}

// As a rail's edge with a taller section beside it: the section would push the edge under the face
// side, where third angle projection has the other edge.
TEST(Packing, AThriftyOneKeepsSidesInProjection) {
    PartDrawingBlocks blocks;
    blocks.sides = {sideOf(Face::FaceEdge, {100, 10}, "edge"),
                    sideOf(Face::FaceSide, {100, 30}, "front")};
    PartBlock section = blockOf(Face::FaceSide, {40, 20}, "section");
    section.isSection = true;
    blocks.further = {section};

    const auto pages = packed(blocks, {{160, 60}, true, 3.5, true}, kMetrics);

    ASSERT_TRUE(pages);
    EXPECT_LT(placeOf(pages->front(), "edge")->min.y, placeOf(pages->front(), "front")->min.y);
}

// A leg tapered both ways has two outlines, whose points are told apart.
TEST(PartSheet, TablesOfOutlinesNameTheirViewAndTheirPoints) {
    const std::vector<Sheet> leg = sheetsOf("table", "front leg", {297, 210});
    int tables = 0;
    for (const Sheet& sheet : leg) {
        tables += says(sheet, "outline of the face side, points P1 to P2") ? 1 : 0;
        tables += says(sheet, "outline of the back edge, points Q1 to Q2") ? 1 : 0;
    }
    EXPECT_EQ(tables, 2);
    EXPECT_TRUE(says(leg.front(), "Q1")) << "on the view of the back edge";
}

// Read from the left, sections come in the order of their letters.
TEST(PartSheet, SectionsOfBothEndsOfARailStandInTheOrderOfTheirLetters) {
    const Piece piece = testing::sample("side_chair");
    const ResolvedPiece made = testing::resolved(piece);
    for (const PartKind& kind : partKinds(made)) {
        if (kind.name != "side rail") {
            continue;
        }
        const std::vector<Sheet> sheets =
            partSheets(piece, made, kind, {{210, 297}, 0.0, "", 1, 9}, kMetrics);
        ASSERT_EQ(sheets.size(), 1U);
        const auto placeOf = [&](const std::string& title) {
            for (const Op& op : sheets.front().ops) {
                const auto* text = std::get_if<TextOp>(&op);
                if (text != nullptr && text->text.rfind(title, 0) == 0) {
                    return text->at;
                }
            }
            return Vec2{-1.0, -1.0};
        };
        const Vec2 a = placeOf("A\u2013A, ");
        const Vec2 b = placeOf("B\u2013B, ");
        EXPECT_GT(a.x, 0.0);
        EXPECT_NEAR(a.y, b.y, 1.0);
        EXPECT_LT(a.x, b.x);
    }
}

// At twice the scale the rail's section and the points of its outline had a second sheet without
// any view to read them by.
TEST(PartSheet, ARailsSectionAndPointsStandBesideItRatherThanOnASheetOfTheirOwn) {
    for (const char* chair : {"side_chair", "raked_chair"}) {
        EXPECT_EQ(sheetsOf(chair, "front rail", {210, 297}).size(), 1U) << chair;
    }
}

// 36 in high and 20 deep, one over the other: at 1:10 too high for the sheet, at 1:16 it would
// leave a quarter of it empty.
TEST(PieceSheet, IsAsLargeAsAScaleOfAMakersRuleAllows) {
    const Piece piece = testing::sample("raked_chair");
    const Sheet sheet =
        pieceSheet(piece, testing::resolved(piece), {{297, 210}, 0.0, "", 1, 9}, kMetrics);

    EXPECT_TRUE(says(sheet, "1 : 12"));
}

}  // namespace
}  // namespace shoulderline
