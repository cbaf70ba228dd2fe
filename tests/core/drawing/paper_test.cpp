#include "core/drawing/paper.h"

#include <cmath>
#include <map>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/tiles.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

// ISO 216: A0 is 841 x 1189, each next one halved and rounded down; ASME Y14.1 A and B are 8.5 x 11
// and 11 x 17 in; Legal is 8.5 x 14 in (common practice).
TEST(Papers, HaveTheSizesOfTheirStandards) {
    Vec2 a{841, 1189};
    for (const char* name : {"A0", "A1", "A2", "A3", "A4"}) {
        EXPECT_EQ(findPaper(name)->size, a) << name;
        a = {std::floor(a.y / 2), a.x};
    }
    EXPECT_NEAR(norm(findPaper("Letter")->size - Vec2{8.5 * 25.4, 11 * 25.4}), 0.0, 1e-9);
    EXPECT_NEAR(norm(findPaper("Tabloid")->size - Vec2{11 * 25.4, 17 * 25.4}), 0.0, 1e-9);
    EXPECT_NEAR(norm(findPaper("Legal")->size - Vec2{8.5 * 25.4, 14 * 25.4}), 0.0, 1e-9);
}

TEST(Papers, AreFoundInAnyCapitals) {
    EXPECT_EQ(findPaper(" letter ")->name, "Letter");
}

TEST(Papers, AStatedSizeIsRead) {
    EXPECT_EQ(findPaper("300 x 1300 mm")->size, (Vec2{300, 1300}));
    EXPECT_EQ(findPaper("300mm \u00d7 1300mm")->size, (Vec2{300, 1300}));
    EXPECT_NEAR(findPaper("24 x 36 in")->size.x, 609.6, 1e-9);
    EXPECT_NEAR(findPaper("8 1/2 x 11 in")->size.x, 215.9, 1e-9);
}

TEST(Papers, WhatIsNoneNamesWhatIsExpected) {
    for (const char* text :
         {"", "A9", "poster", "300 x", "x", "10 x 10 mm", "300 x 9000 mm", "-300 x 400 mm"}) {
        const Result<Paper> paper = findPaper(text);
        ASSERT_FALSE(paper) << text;
        EXPECT_EQ(paper.error().code, ErrorCode::BadText);
        EXPECT_NE(paper.error().message.find("mm"), std::string::npos) << paper.error().message;
    }
}

TEST(Tiles, NamesRunByRowLettersAndColumnNumbers) {
    EXPECT_EQ(tileName(0, 0), "A1");
    EXPECT_EQ(tileName(2, 11), "C12");
    EXPECT_EQ(tileName(25, 0), "Z1");
    EXPECT_EQ(tileName(26, 0), "AA1");
    EXPECT_EQ(tileName(701, 0), "ZZ1");
}

TEST(Tiles, OneSheetWhereItFits) {
    const TileGrid grid = tileGrid({200, 100}, *findPaper("A4"), {});

    EXPECT_EQ(grid.count(), 1);
}

TEST(Tiles, CoverTheWholeDrawingWithTheOverlapAsked) {
    for (const Vec2 drawing : {Vec2{880, 330}, Vec2{100, 2000}, Vec2{1500, 40}, Vec2{269, 170.5}}) {
        for (const Paper& paper : standardPapers()) {
            const TileGrid grid = tileGrid(drawing, paper, {});
            const Vec2 first = grid.origin(0, 0);
            const Vec2 last = grid.origin(grid.rows - 1, grid.columns - 1) + grid.room();
            EXPECT_LE(first.x, 1e-9);
            EXPECT_LE(first.y, 1e-9);
            EXPECT_GE(last.x, drawing.x - 1e-6) << paper.name;
            EXPECT_GE(last.y, drawing.y - 1e-6) << paper.name;
            if (grid.columns > 1) {
                EXPECT_NEAR(grid.origin(0, 0).x + grid.room().x - grid.origin(0, 1).x, 15.0, 1e-9);
            }
        }
    }
}

TEST(Tiles, CutsKeepAwayFromPlacesWhereThereIsSlack) {
    const TileGrid plain = tileGrid({600, 100}, *findPaper("A4"), {});
    const double place = plain.cutAfterColumn(0);

    const TileGrid shifted = tileGrid({600, 100}, *findPaper("A4"), {}, {{place}, {}});

    EXPECT_GE(std::abs(shifted.cutAfterColumn(0) - place), 9.0);
    EXPECT_LE(shifted.start.x, 1e-9);
    EXPECT_GE(shifted.origin(0, shifted.columns - 1).x + shifted.room().x, 600.0 - 1e-9);
}

// Counted the slow way: lay sheets one after another until the drawing is covered.
int sheetsBySteps(Vec2 drawing, Vec2 room, double overlap) {
    const auto along = [&](double length, double side) {
        int sheets = 1;
        for (double covered = side; covered < length - 1e-9; covered += side - overlap) {
            ++sheets;
        }
        return sheets;
    };
    return along(drawing.x, room.x) * along(drawing.y, room.y);
}

TEST(Tiles, TakeTheFewerOfBothWaysUp) {
    for (const Vec2 drawing : {Vec2{880, 330}, Vec2{100, 2000}, Vec2{700, 700}, Vec2{190, 280}}) {
        const TileGrid grid = tileGrid(drawing, *findPaper("A4"), {});
        const Vec2 lying{297 - 20 - kBarStrip, 210 - 20 - kCaptionStrip};
        const Vec2 upright{210 - 20 - kBarStrip, 297 - 20 - kCaptionStrip};
        EXPECT_EQ(
            grid.count(),
            std::min(sheetsBySteps(drawing, lying, 15.0), sheetsBySteps(drawing, upright, 15.0)));
    }
}

std::vector<Vec2> marksIn(const Page& page) {
    std::vector<Vec2> marks;
    for (const Op& op : page.furniture.ops) {
        if (const auto* arc = std::get_if<ArcOp>(&op)) {
            marks.push_back(arc->centre - page.printable.min + page.origin);
        }
    }
    return marks;
}

TEST(FullSizeJob, NeighboursShareTheirMatchMarks) {
    const Piece piece = testing::sample("armchair");
    const PrintJob job = fullSizeJob(
        piece, testing::resolved(piece), {0}, *findPaper("A4"), {}, "2026-11-24", kMetrics);
    std::map<std::pair<long, long>, int> times;
    for (const Page& page : job.pages) {
        for (const Vec2& mark : marksIn(page)) {
            ++times[{std::lround(mark.x * 1000), std::lround(mark.y * 1000)}];
        }
    }
    ASSERT_FALSE(times.empty());
    for (const auto& [place, count] : times) {
        EXPECT_EQ(count, 2) << "the mark at " << place.first << ", " << place.second
                            << " micrometres";
    }
}

TEST(FullSizeJob, EveryPageHasItsBarsAndKeepsItsMarksOnThePaper) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece resolved = testing::resolved(piece);
    for (const Paper& paper : standardPapers()) {
        for (const Page& page :
             fullSizeJob(piece, resolved, {}, paper, {}, "2026-11-24", kMetrics).pages) {
            int bars = 0;
            for (const Op& op : page.furniture.ops) {
                const auto* stroke = std::get_if<Stroke>(&op);
                if (stroke == nullptr) {
                    continue;
                }
                const double length = norm(stroke->points.back() - stroke->points.front());
                bars += stroke->role == LineRole::Dimension && stroke->points.size() == 2 &&
                        (std::abs(length - 100.0) < 1e-9 || std::abs(length - 101.6) < 1e-9);
                for (const Vec2& p : stroke->points) {
                    EXPECT_TRUE(p.x >= 5 && p.y >= 5 && p.x <= page.size.x - 5 &&
                                p.y <= page.size.y - 5)
                        << paper.name << ", " << page.name;
                }
            }
            EXPECT_GE(bars, 2) << paper.name << ", " << page.name;
        }
    }
}

TEST(FullSizeJob, APartOverSeveralSheetsHasAMapFirst) {
    const Piece piece = testing::sample("armchair");
    const PrintJob job = fullSizeJob(
        piece, testing::resolved(piece), {0}, *findPaper("A4"), {}, "2026-11-24", kMetrics);

    ASSERT_GT(job.pages.size(), 2u);
    EXPECT_EQ(job.pages[0].name, "front post, map");
    EXPECT_TRUE(job.contents[job.pages[0].content].ops.empty());
    EXPECT_EQ(job.pages[1].name, "front post, A1");
}

TEST(FullSizeJob, AKindThatIsNotThereIsPassedOver) {
    const Piece piece = testing::sample("armchair");

    EXPECT_TRUE(
        fullSizeJob(piece, testing::resolved(piece), {999}, *findPaper("A4"), {}, "", kMetrics)
            .pages.empty());
}

TEST(FullSizeJob, PieceWithoutPartsGivesNoPages) {
    EXPECT_TRUE(fullSizeJob({}, {}, {}, *findPaper("A4"), {}, "", kMetrics).pages.empty());
}

bool hasSquare(const Page& page) {
    return std::any_of(page.furniture.ops.begin(), page.furniture.ops.end(), [](const Op& op) {
        const auto* stroke = std::get_if<Stroke>(&op);
        return stroke != nullptr && stroke->points.size() == 5 &&
               std::abs(stroke->points[2].x - stroke->points[0].x - 100.0) < 1e-9 &&
               std::abs(stroke->points[2].y - stroke->points[0].y - 100.0) < 1e-9;
    });
}

// Bars of 100 mm both ways on every page; and the square where there is room, clear of the drawing:
// on the map at least, where there is one.
TEST(FullSizeJob, EveryPageCanBeCheckedBothWays) {
    const auto hasBar = [](const Page& page, double Vec2::*axis) {
        return std::any_of(page.furniture.ops.begin(), page.furniture.ops.end(), [&](const Op& op) {
            const auto* stroke = std::get_if<Stroke>(&op);
            const double inches = 4.0 * 25.4;
            const double length = stroke != nullptr && stroke->points.size() == 2
                                      ? std::abs(stroke->points[1].*axis - stroke->points[0].*axis)
                                      : 0.0;
            return std::abs(length - 100.0) < 1e-9 || std::abs(length - inches) < 1e-9;
        });
    };
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        for (const char* paper : {"A4", "Letter", "A3"}) {
            int squares = 0;
            for (const Page& page :
                 fullSizeJob(piece, resolved, {}, *findPaper(paper), {}, "", kMetrics).pages) {
                EXPECT_TRUE(hasBar(page, &Vec2::x) && hasBar(page, &Vec2::y))
                    << name << " on " << paper << ": " << page.name;
                const bool isMap = page.name.size() > 5 &&
                                   page.name.compare(page.name.size() - 5, 5, ", map") == 0;
                EXPECT_TRUE(!isMap || hasSquare(page)) << page.name;
                squares += hasSquare(page) ? 1 : 0;
            }
            EXPECT_GT(squares, 0) << name << " on " << paper;
        }
    }
}

// Of two neighbours one is cut along the seam and the other bears the line it is glued to.
TEST(FullSizeJob, ASeamIsCutOnOneTileAndGluedOnTheOther) {
    const Piece piece = testing::sample("armchair");
    const PrintJob job = fullSizeJob(
        piece, testing::resolved(piece), {0}, *findPaper("A4"), {}, "2026-11-24", kMetrics);
    std::map<long, std::pair<int, int>> seams;  // by place: cut, glued
    for (const Page& page : job.pages) {
        for (const Op& op : page.furniture.ops) {
            const auto* stroke = std::get_if<Stroke>(&op);
            const bool isUpright = stroke != nullptr && stroke->points.size() == 2 &&
                                   stroke->points[0].x == stroke->points[1].x &&
                                   std::abs(stroke->points[0].y - stroke->points[1].y) > 110.0;
            if (isUpright) {
                const double at = stroke->points[0].x - page.printable.min.x + page.origin.x;
                std::pair<int, int>& seam = seams[std::lround(at * 1000)];
                (stroke->role == LineRole::CutPlane ? seam.first : seam.second) += 1;
            }
        }
    }
    ASSERT_FALSE(seams.empty());
    for (const auto& [at, seam] : seams) {
        EXPECT_EQ(seam.first, seam.second) << at;
        EXPECT_GE(seam.first, 1) << at;
    }
}

TEST(FullSizeJob, TilesNameTheFacesOnThem) {
    const Piece piece = testing::sample("armchair");
    const PrintJob job = fullSizeJob(
        piece, testing::resolved(piece), {0}, *findPaper("A2"), {}, "2026-11-24", kMetrics);
    bool isSaid = false;
    for (const Op& op : job.pages.back().furniture.ops) {
        const auto* text = std::get_if<TextOp>(&op);
        isSaid = isSaid || (text != nullptr && text->text.find("; face side") != std::string::npos);
    }
    EXPECT_TRUE(isSaid);
}

TEST(Tiles, AreHeldAsAsked) {
    for (const Vec2 drawing : {Vec2{880, 330}, Vec2{100, 2000}}) {
        TileOptions options;
        options.held = Held::Upright;
        EXPECT_LT(tileGrid(drawing, *findPaper("A4"), options).page.x, 211.0);
        options.held = Held::Lying;
        EXPECT_GT(tileGrid(drawing, *findPaper("A4"), options).page.x, 296.0);
    }
}

// The diagonal of the room on A4 is sqrt(270^2 + 175^2) = 321.7: a stick of 300 x 10 needs two
// sheets across and goes on one aslant; one of 330 does not.
TEST(Tiles, ALongStickGoesOnOneSheetAlongTheDiagonal) {
    const Paper paper = *findPaper("A4");
    EXPECT_EQ(tileGrid({300, 10}, paper, {}).count(), 2);
    const std::optional<Diagonal> diagonal = diagonalOn({300, 10}, paper, {});
    ASSERT_TRUE(diagonal);
    EXPECT_FALSE(diagonalOn({330, 10}, paper, {}));
    Page page;
    page.printable = diagonal->printable;
    page.origin = diagonal->origin;
    page.turn = diagonal->turn;
    for (const Vec2 corner : {Vec2{0, 0}, Vec2{300, 0}, Vec2{300, 10}, Vec2{0, 10}}) {
        const Vec2 p = page.onPage(corner);
        EXPECT_TRUE(p.x >= page.printable.min.x && p.x <= page.printable.max.x &&
                    p.y >= page.printable.min.y && p.y <= page.printable.max.y)
            << corner.x << ", " << corner.y;
    }
    EXPECT_NEAR(norm(page.onPage({300, 0}) - page.onPage({0, 0})), 300.0, 1e-9);
}

TEST(SheetJob, OnePageForEachKind) {
    const Piece piece = testing::sample("bench");
    const ResolvedPiece resolved = testing::resolved(piece);

    // The front rail is pegged and the back rail is not, so that they do not share one; the front
    // post with its pegs takes two.
    EXPECT_EQ(sheetJob(piece, resolved, true, *findPaper("A3"), 0.0, "", kMetrics).pages.size(),
              partKinds(resolved).size() + 1);
    EXPECT_EQ(sheetJob(piece, resolved, false, *findPaper("A3"), 0.0, "", kMetrics).pages.size(),
              1u);
}

}  // namespace
}  // namespace shoulderline
