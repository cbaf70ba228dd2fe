#include "core/drawing/assembly_sheet.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/paper.h"
#include "core/drawing/piece_view.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

struct Armchair {
    Piece piece = testing::sample("armchair");
    ResolvedPiece resolved = testing::resolved(piece);
    std::vector<GlueUp> glueUps = glueUpsOf(piece, resolved);

    [[nodiscard]] const GlueUp& named(const std::string& name) const {
        return *std::find_if(glueUps.begin(), glueUps.end(), [&](const GlueUp& one) {
            return piece.assemblies[one.assembly].name == name;
        });
    }
    [[nodiscard]] Sheet sheetOf(const std::string& name) const {
        return assemblySheet(
            piece, resolved, named(name), {{420, 297}, 0.0, "2026-11-24", 1, 2}, kMetrics);
    }
};

bool says(const Sheet& sheet, const std::string& text) {
    const std::vector<std::string> words = testing::wordsOn(sheet);
    return std::find(words.begin(), words.end(), text) != words.end();
}

TEST(GlueUps, TheSidesOfAChairAreTwoFramesOfWhichOneIsDrawn) {
    const Armchair chair;
    const GlueUp& sides = chair.named("side frames");

    EXPECT_TRUE(sides.hasMirrorTwin);
    for (const std::size_t part : sides.parts) {
        EXPECT_EQ(chair.resolved.parts[part].hand, Hand::Right);
        EXPECT_EQ(chair.resolved.parts[part].assembly, "side frames");
    }
    EXPECT_FALSE(chair.named("leaning back").hasMirrorTwin);
}

TEST(GlueUps, EachJointIsGluedWithinOneOrTiesItToTheRest) {
    const Armchair chair;
    for (const GlueUp& one : chair.glueUps) {
        const auto isIn = [&](std::size_t part) {
            return std::binary_search(one.parts.begin(), one.parts.end(), part);
        };
        for (std::size_t i = 0; i < chair.resolved.joints.size(); ++i) {
            const ResolvedJoint& joint = chair.resolved.joints[i];
            const int ends = (isIn(joint.tenoned) ? 1 : 0) + (isIn(joint.mortised) ? 1 : 0);
            EXPECT_EQ(std::count(one.joints.begin(), one.joints.end(), i), ends == 2 ? 1 : 0);
            EXPECT_EQ(std::count(one.later.begin(), one.later.end(), i), ends == 1 ? 1 : 0);
        }
    }
}

TEST(AssemblySheet, ShowsItsOwnPartsAloneByTheNumbersOfTheList) {
    const Armchair chair;
    const Sheet sheet = chair.sheetOf("leaning back");
    const GlueUp& back = chair.named("leaning back");
    for (const Op& op : sheet.ops) {
        const auto* group = std::get_if<BeginGroup>(&op);
        if (group != nullptr && group->subject.kind == SubjectKind::Part) {
            EXPECT_EQ(chair.resolved.parts[group->subject.index].assembly, "leaning back")
                << group->name;
        }
    }
    const std::vector<PartKind> kinds = partKinds(chair.resolved);
    for (std::size_t k = 0; k < kinds.size(); ++k) {
        const bool isIn =
            std::binary_search(back.parts.begin(), back.parts.end(), kinds[k].parts.front());
        EXPECT_EQ(says(sheet, "\u00d7 " + kinds[k].name), isIn) << kinds[k].name;
        EXPECT_TRUE(!isIn || says(sheet, std::to_string(k + 1)));
    }
}

// Upright, a back is as deep as its stiles are thick, or its slats bow; leaning it would be 200 mm.
TEST(AssemblySheet, ABackThatSwingsStandsUpright) {
    const Armchair chair;
    const std::vector<DimensionOp> depth =
        testing::dimensionsOf(chair.sheetOf("leaning back"), "depth over all");
    ASSERT_EQ(depth.size(), 1U);
    EXPECT_LT(depth.front().value, 80.0);
    const std::vector<DimensionOp> height =
        testing::dimensionsOf(chair.sheetOf("leaning back"), "height over all");
    ASSERT_EQ(height.size(), 1U);
    EXPECT_NEAR(height.front().value,
                testing::partNamed(chair.resolved, "back stile, right").length().mm(),
                1e-6);
}

// The back hangs by two holes; whoever glues it up must see at which end of the stiles they are.
TEST(AssemblySheet, ABackThatSwingsShowsItsPivotHoles) {
    const Armchair chair;
    const ResolvedSwing& swing = chair.resolved.swings.front();
    const auto hole = std::find_if(swing.holes.begin(), swing.holes.end(), [&](const SwingHole& h) {
        return chair.resolved.parts[h.part].of == "back stile" && !h.station;
    });
    ASSERT_NE(hole, swing.holes.end());
    const ResolvedPart& stile = chair.resolved.parts[hole->part];

    ResolvedPiece alone = chair.resolved;
    alone.parts = {stile};
    alone.joints.clear();
    alone.swings.clear();
    alone.parts[0].frame = swing.swungTo(stile.frame, Angle());
    const Elevation with = elevationOf(alone, View::side(), {true, false});
    const Elevation without = elevationOf(alone, View::side());

    const Vec2 pivot = View::side().project(swing.pivot);
    const auto onRim = [&](const Elevation& elevation) {
        double length = 0.0;
        for (const ElevationLine& line : elevation.lines) {
            const double off = norm((line.a + line.b) * 0.5 - pivot);
            length += std::abs(off - hole->diameter.mm() / 2.0) < 0.1 ? norm(line.b - line.a) : 0.0;
        }
        return length;
    };
    EXPECT_NEAR(onRim(with), 3.14159 * hole->diameter.mm(), 0.05 * hole->diameter.mm());
    EXPECT_EQ(onRim(without), 0.0);
}

TEST(AssemblySheet, LetteringLiesOnNothingAndNothingLeavesThePaper) {
    const Armchair chair;
    for (const char* paper : {"A4", "Letter", "A3"}) {
        const PrintJob job = assembliesJob(
            chair.piece, chair.resolved, *findPaper(paper), 0.0, "2026-11-24", kMetrics);
        ASSERT_EQ(job.pages.size(), 2U);
        EXPECT_FALSE(runsOffPaper(job, kMetrics)) << paper;
        for (const Sheet& sheet : job.contents) {
            EXPECT_EQ(testing::overlapsOn(sheet, kMetrics), std::vector<std::string>{})
                << paper << ", " << sheet.title;
        }
    }
}

TEST(AssemblySheet, APieceThatStatesNoAssemblyHasNone) {
    const Piece piece = testing::sample("table");

    EXPECT_TRUE(glueUpsOf(piece, testing::resolved(piece)).empty());
}

// The front bracket only rests on its post and under the arm, and is glued to both.
TEST(GlueUpNotes, NameWhatIsGluedWithoutAJoint) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece resolved = testing::resolved(piece);
    const std::vector<GlueUp> all = glueUpsOf(piece, resolved);
    std::string words;
    for (const std::string& note : glueUpNotes(piece, resolved, all.front())) {
        words += note + "\n";
    }

    EXPECT_NE(words.find("front arm bracket glued to front post"), std::string::npos) << words;
    EXPECT_NE(words.find("front arm bracket glued to arm"), std::string::npos) << words;
}

}  // namespace
}  // namespace shoulderline
