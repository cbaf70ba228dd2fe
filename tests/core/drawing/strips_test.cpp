#include "core/drawing/strips.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include <gtest/gtest.h>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/rods.h"
#include "core/drawing/story.h"
#include "core/resolve/end_plane.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

// Where lines cross the strip, from the leftmost on.
std::vector<double> linesAcross(const Sheet& strip) {
    std::vector<double> lines;
    for (const Op& op : strip.ops) {
        const auto* stroke = std::get_if<Stroke>(&op);
        if (stroke != nullptr && stroke->role == LineRole::Visible &&
            std::abs(stroke->points.front().x - stroke->points.back().x) < 1e-9) {
            lines.push_back(stroke->points.front().x);
        }
    }
    std::sort(lines.begin(), lines.end());
    return lines;
}

TEST(MarkedStrip, LinesLieAtFullSizeAndMarksOnOneLineShareIt) {
    const Sheet strip = markedStrip(
        {{100.0, "b"}, {0.0, "a"}, {100.001, "c"}, {333.3, "d"}}, 0.0, 333.3, "strip", kMetrics);
    const std::vector<double> lines = linesAcross(strip);

    ASSERT_EQ(lines.size(), 3u);
    EXPECT_NEAR(lines[1] - lines[0], 100.0, 1e-9);
    EXPECT_NEAR(lines[2] - lines[0], 333.3, 1e-9);
    const std::vector<std::string> words = testing::wordsOn(strip);
    EXPECT_NE(std::find(words.begin(), words.end(), "b; c"), words.end());
}

TEST(Rods, HaveEveryLineAtItsPlaceAndNamed) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece resolved = testing::resolved(piece);
    const PrintJob job = rodsJob(piece, resolved, *findPaper("A4"), {}, "2026-11-24", kMetrics);
    ASSERT_EQ(job.contents.size(), 4u) << "that of the maps, and three rods";
    const Rod rod = rodOf(piece, resolved, RodKind::Heights);
    const std::vector<double> lines = linesAcross(job.contents[1]);

    ASSERT_EQ(lines.size(), rod.lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        EXPECT_NEAR(lines[i] - lines[0], rod.lines[i].at - rod.lines[0].at, 1e-9);
    }
    std::string words;
    for (const std::string& row : testing::wordsOn(job.contents[1])) {
        words += row + " ";
    }
    for (const RodLine& line : rod.lines) {
        EXPECT_NE(words.find(line.name), std::string::npos) << line.name;
        for (const std::string& other : line.others) {
            EXPECT_NE(words.find(other), std::string::npos) << other;
        }
    }
}

// A rod is hooked on at its zero, and read to the top of the piece.
TEST(Rods, HaveTheirZeroAndTheWholeHeight) {
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        const PrintJob job = rodsJob(piece, resolved, *findPaper("A4"), {}, "", kMetrics);
        double top = 0.0;
        for (const ResolvedPart& part : resolved.parts) {
            for (const Vec3& corner : part.wood().whole().vertices) {
                top = std::max(top, part.frame.toOuter(corner).z);
            }
        }
        const std::vector<double> heights = linesAcross(job.contents.at(1));
        EXPECT_NEAR(heights.back() - heights.front(), top, 0.01) << name;
        for (std::size_t i = 1; i < job.contents.size(); ++i) {
            const std::vector<std::string> words = testing::wordsOn(job.contents[i]);
            EXPECT_EQ(std::count_if(words.begin(),
                                    words.end(),
                                    [](const std::string& row) { return row.find("0  ") == 0; }),
                      1)
                << name << ": " << job.contents[i].title;
        }
    }
}

// Long names take further rows, not smaller lettering or dots.
TEST(Rods, LabelsAreLegible) {
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const PrintJob job =
            rodsJob(piece, testing::resolved(piece), *findPaper("A4"), {}, "2026-11-24", kMetrics);
        for (const Sheet& content : job.contents) {
            for (const Op& op : content.ops) {
                if (const auto* text = std::get_if<TextOp>(&op)) {
                    EXPECT_GE(text->height, 2.5) << name << ": " << text->text;
                    EXPECT_EQ(text->text.find("\u2026"), std::string::npos) << text->text;
                }
            }
        }
    }
}

TEST(Stories, MarkShouldersAndMortiseEnds) {
    for (const char* name : testing::kSamples) {
        const ResolvedPiece resolved = testing::resolved(testing::sample(name));
        for (const PartKind& kind : partKinds(resolved)) {
            const ResolvedPart& part = resolved.parts[kind.parts.front()];
            std::vector<double> places{part.overBox().min.x, part.overBox().max.x};
            // Of a slanted shoulder the corner at the face side and face edge.
            const Extent body = alongFaceArris(part);
            if (part.startTenon.mm() > 0.0) {
                places.push_back(body.min);
            }
            if (part.farTenon.mm() > 0.0) {
                places.push_back(body.max);
            }
            std::set<std::tuple<Face, long, long>> done;  // beside one another the marks are one
            for (const MortiseSolid& mortise : part.mortises) {
                const double low = mortise.box.min.x;
                const double high = mortise.box.max.x;
                const bool isNew =
                    done.insert({mortise.face, std::lround(low * 1e3), std::lround(high * 1e3)})
                        .second;
                if (isNew && mortise.face != Face::StartEnd && mortise.face != Face::FarEnd) {
                    places.push_back(low);
                    places.push_back(high);
                }
            }
            std::sort(places.begin(), places.end());
            const std::vector<double> lines = linesAcross(storyStrip(resolved, kind, kMetrics));
            ASSERT_EQ(lines.size(), places.size()) << name << ": " << kind.name;
            for (std::size_t i = 0; i < lines.size(); ++i) {
                EXPECT_NEAR(lines[i] - lines[0], places[i] - places[0], 1e-9) << kind.name;
            }
        }
    }
}

// The armchair's sticks took 59 sheets of A4 when each had its own.
TEST(Stories, ShareSheetsAndLoseNone) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece resolved = testing::resolved(piece);
    const PrintJob job = storyJob(piece, resolved, *findPaper("A4"), {}, "2026-11-24", kMetrics);

    EXPECT_LE(job.pages.size(), 16u);
    std::string all;
    for (const Sheet& content : job.contents) {
        for (const std::string& words : testing::wordsOn(content)) {
            all += words + "\n";
        }
    }
    for (const PartKind& kind : partKinds(resolved)) {
        EXPECT_NE(all.find(kind.name + ", make"), std::string::npos) << kind.name;
    }
}

TEST(Strips, LetteringOfTheSamplesLiesOnNothing) {
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        for (const PrintJob& job :
             {rodsJob(piece, resolved, *findPaper("A4"), {}, "2026-11-24", kMetrics),
              storyJob(piece, resolved, *findPaper("A4"), {}, "2026-11-24", kMetrics)}) {
            EXPECT_FALSE(job.pages.empty());
            for (const Sheet& content : job.contents) {
                EXPECT_EQ(testing::overlapsOn(content, kMetrics), std::vector<std::string>{})
                    << name << ": " << content.title;
            }
        }
    }
}

// Where the scissors go, in the drawing, against the boxes of its lettering.
TEST(Rods, NoCutRunsThroughALabel) {
    int cuts = 0;
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        const PrintJob job = rodsJob(piece, resolved, *findPaper("A4"), {}, "2026-11-24", kMetrics);
        for (const Page& page : job.pages) {
            for (const Op& op : page.furniture.ops) {
                const auto* cut = std::get_if<Stroke>(&op);
                if (page.content == 0 || cut == nullptr || cut->role != LineRole::CutPlane) {
                    continue;
                }
                const double at = cut->points[0].x - page.printable.min.x + page.origin.x;
                for (const Op& drawn : job.contents[page.content].ops) {
                    if (const auto* text = std::get_if<TextOp>(&drawn)) {
                        const Rect box = boundsOf(*text, kMetrics);
                        EXPECT_FALSE(at > box.min.x && at < box.max.x)
                            << name << ": " << page.name << ": " << text->text;
                    }
                }
                ++cuts;
            }
        }
    }
    EXPECT_GT(cuts, 20);
}

TEST(Strips, NamesOnTheMapsLieOnNothing) {
    int maps = 0;
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        TileOptions options;
        options.leavesOutPlain = true;
        for (const PrintJob& job :
             {rodsJob(piece, resolved, *findPaper("A4"), options, "2026-11-24", kMetrics),
              storyJob(piece, resolved, *findPaper("A4"), options, "2026-11-24", kMetrics)}) {
            for (const Page& page : job.pages) {
                if (page.content == 0) {
                    EXPECT_EQ(testing::overlapsOn(page.furniture, kMetrics),
                              std::vector<std::string>{})
                        << name << ": " << page.name;
                    ++maps;
                }
            }
        }
    }
    EXPECT_GT(maps, 20);
}

TEST(Strips, APieceWithoutPartsHasNone) {
    EXPECT_TRUE(rodsJob({}, {}, *findPaper("A4"), {}, "", kMetrics).pages.empty());
    EXPECT_TRUE(storyJob({}, {}, *findPaper("A4"), {}, "", kMetrics).pages.empty());
}

}  // namespace
}  // namespace shoulderline
