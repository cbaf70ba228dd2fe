#include <algorithm>
#include <cmath>
#include <string>

#include <gtest/gtest.h>

#include "core/drawing/mortise_rows.h"
#include "core/drawing/part_sections.h"
#include "core/drawing/part_sizes.h"
#include "core/drawing/sheets.h"
#include "core/measure/length_text.h"
#include "core/resolve/joint_angles.h"
#include "core/resolve/set_up.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

// Mortises and tenons that do not stand square, as the sheets of their parts tell them.
namespace shoulderline {
namespace {

using testing::kMetrics;
using testing::resolved;
using testing::sample;

const PartKind& kindNamed(const std::vector<PartKind>& kinds, const std::string& name) {
    return *std::find_if(
        kinds.begin(), kinds.end(), [&](const PartKind& kind) { return kind.name == name; });
}

std::string wordsOfPart(const std::string& piece, const std::string& name) {
    const Piece stated = sample(piece);
    const ResolvedPiece made = resolved(stated);
    const std::vector<PartKind> kinds = partKinds(made);
    std::string words;
    for (const Sheet& sheet : partSheets(
             stated, made, kindNamed(kinds, name), {{297.0, 210.0}, 0.0, "", 0, 0}, kMetrics)) {
        for (const std::string& word : testing::wordsOn(sheet)) {
            words += word + "\n";
        }
    }
    return words;
}

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

// The chisel's stop is set along it: square to the face the deepest corner of the slot lies 1 1/8
// in, the chisel goes 1 1/16 in.
TEST(DepthOfALeaningMortise, IsToldAsTheStopOfItsChiselIsSet) {
    const Piece piece = sample("side_chair");
    const ResolvedPiece made = resolved(piece);
    int leaning = 0;
    for (const ResolvedPart& part : made.parts) {
        for (const MortiseSolid& mortise : part.mortises) {
            if (!isDepthAlongIt(made, part, mortise)) {
                continue;
            }
            ++leaning;
            const std::string told =
                showLength(Length::mm(depthAlong(made, part, mortise)), piece.style) +
                " deep along";
            const auto setUps = setUpsOf(made, mortise.joint);
            EXPECT_TRUE(says(setUpText(setUps.front(), made, piece.style), told))
                << made.joints[mortise.joint].name;
            EXPECT_TRUE(says(wordsOfPart("side_chair", part.of), told + " it")) << part.of;
        }
        const SectionPlan plan(made, part, true);
        for (const PartSection& section : plan.sections()) {
            for (const SectionSize& size : sizesIn(section, piece, made, part)) {
                const bool isOfLeaning = std::any_of(
                    section.mortises.begin(), section.mortises.end(), [&](std::size_t m) {
                        return part.mortises[m].joint == size.size.subject.index &&
                               isDepthAlongIt(made, part, part.mortises[m]);
                    });
                EXPECT_FALSE(size.size.of == "mortise depth" && isOfLeaning) << part.name;
            }
        }
    }
    EXPECT_EQ(leaning, 10) << "of five on each hand";
}

// A slot that leans both ways in its post is cut by two angles: each has its direction.
TEST(LeaningMortise, SaysWhichWayItLeans) {
    const std::string words = wordsOfPart("raked_chair", "back post");

    EXPECT_TRUE(says(words, "leans 7.9\u00b0, 1 in 7.2, towards the ")) << words;
    EXPECT_TRUE(says(words, "and 4.7\u00b0, 1 in 12.2, away from the face side")) << words;
    EXPECT_FALSE(says(words, "from square to the face")) << words;
}

// The stretcher's tenon goes on in line with the leaning post: seen from the end it lies aslant,
// 3/32 in wider than it is.
TEST(SectionThroughASkewTenon, IsAsThickAsTheTenon) {
    const Piece piece = sample("raked_chair");
    const ResolvedPiece made = resolved(piece);
    const std::vector<PartKind> kinds = partKinds(made);
    const PartKind& kind = kindNamed(kinds, "side stretcher");
    int checked = 0;
    for (const Sheet& sheet :
         partSheets(piece, made, kind, {{297.0, 210.0}, 0.0, "", 0, 0}, kMetrics)) {
        for (const DimensionOp& thickness : testing::dimensionsOf(sheet, "tenon thickness")) {
            const double low = std::min(thickness.from.x, thickness.to.x);
            const double high = std::max(thickness.from.x, thickness.to.x);
            const double level = thickness.from.y - 2.0;  // in the hatched face
            for (const Op& op : sheet.ops) {
                const auto* stroke = std::get_if<Stroke>(&op);
                if (stroke == nullptr || stroke->role != LineRole::Construction) {
                    continue;
                }
                for (const Vec2& p : stroke->points) {
                    if (std::abs(p.x - (low + high) / 2.0) < 2.0 * (high - low) &&
                        std::abs(p.y - level) < 20.0) {
                        EXPECT_GT(p.x, low - 0.1);
                        EXPECT_LT(p.x, high + 0.1);
                        ++checked;
                    }
                }
            }
        }
    }
    EXPECT_GT(checked, 10);
}

// Bored before the edge is hollowed: the figure is from where the bit starts.
TEST(DepthUnderAShapedEdge, SaysThatItIsFromTheBlank) {
    EXPECT_TRUE(says(wordsOfPart("luggage_stand", "end rail"), "deep from the blank's back edge"));
    EXPECT_FALSE(says(wordsOfPart("luggage_stand", "lower end rail"), "deep from the blank"));
}

// Each call-out of the crest tells its depth from the blank, and names its slats.
TEST(DepthUnderAShapedEdge, IsAFigureBesideTheSlatsItIsFor) {
    const Piece piece = sample("side_chair");
    const ResolvedPiece made = resolved(piece);
    const std::string words = wordsOfPart("side_chair", "crest rail");
    int mortises = 0;
    for (const MortiseSolid& mortise : testing::partNamed(made, "crest rail").mortises) {
        if (mortise.face == Face::BackEdge) {
            const Length depth = Length::mm(mortise.box.size().y);
            EXPECT_TRUE(
                says(words, letterLength(depth, piece.style) + " deep from the blank's back edge"))
                << words;
            ++mortises;
        }
    }
    EXPECT_EQ(mortises, 3);
    EXPECT_TRUE(says(words, "back slat 1 and back slat 3\n")) << words;
    EXPECT_TRUE(says(words, "back slat 2\n")) << words;
}

// One trench has two walls to saw; it lies on one side of the part.
TEST(StepOfATrench, IsSawnAtBothWalls) {
    const Piece piece = sample("chart_cabinet");
    const ResolvedPiece made = resolved(piece);
    int trenches = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        for (const shoulderline::SetUp& one : setUpsOf(made, i)) {
            if (one.isTrench) {
                const std::string words = setUpText(one, made, piece.style);
                EXPECT_TRUE(says(words, "across the part, both walls of it, ")) << words;
                ++trenches;
            }
        }
    }
    EXPECT_GT(trenches, 0);
}

// Where that is, is drawn in the section; a mortise in straight wood has no such line.
TEST(DepthUnderAShapedEdge, HasItsLineInTheSection) {
    EXPECT_TRUE(says(wordsOfPart("luggage_stand", "end rail"), "blank's edge"));
    EXPECT_FALSE(says(wordsOfPart("luggage_stand", "lower end rail"), "blank's edge"));
}

TEST(TableOfPoints, GoesRoundByTheSquareCorners) {
    EXPECT_TRUE(
        says(wordsOfPart("luggage_stand", "end rail"), "then straight round by 2 square corners"));
}

// The seats for the spindles are sawn in the square blank, before its arch.
TEST(NotchOverAShapedEdge, SaysThatItsDepthIsFromTheBlank) {
    const std::string words = wordsOfPart("luggage_stand", "end rail");

    EXPECT_TRUE(says(words,
                     "level for end spindle\n2 \u00d7 notch across, \u224813/32 deep\n"
                     "deep from the blank's back edge\nbefore the blank is shaped"))
        << words;
}

// The middle rail's stub goes into the groove of the panels: no chisel is taken up for it.
TEST(MortiseOfAStub, IsMadeByItsGrooveAndNotByAChisel) {
    const std::string words = wordsOfPart("chart_cabinet", "back stile");

    EXPECT_TRUE(says(words, "back frame rail, middle\nA\u2013A, blind, its groove makes it"))
        << words;
    EXPECT_TRUE(says(words, "for upper panel and lower panel")) << words;
}

// What is dimensioned is sawn first, square; the mitre takes a little of it off at its point too.
TEST(MitredTenon, SaysThatItsLengthIsThatBeforeTheMitre) {
    EXPECT_TRUE(says(wordsOfPart("luggage_stand", "end rail"), "1 3/4 long before the mitre"));
}

TEST(MortiseSquareToItsFace, NamesTheFace) {
    int seen = 0;
    for (const char* name : {"raked_chair", "bed_frame"}) {
        const ResolvedPiece made = resolved(sample(name));
        for (const ResolvedJoint& joint : made.joints) {
            for (const std::string& line : jointSettings(made, joint)) {
                EXPECT_FALSE(says(line, "square to the face") && !says(line, "square to the face "))
                    << line;
                EXPECT_FALSE(says(line, "before its face is shaped")) << line;
                seen += says(line, " is shaped") || says(line, "mortise: square to the ") ? 1 : 0;
            }
        }
    }
    EXPECT_GT(seen, 2);
}

}  // namespace
}  // namespace shoulderline
