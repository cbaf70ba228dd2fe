#include <algorithm>

#include <gtest/gtest.h>

#include "core/drawing/index_sheet.h"
#include "core/drawing/joint_sheets.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/paper.h"
#include "core/drawing/title_block.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

const LetteringMetrics kMetrics;

PrintJob setOf(const char* name, const char* paper) {
    const Piece piece = testing::sample(name);
    return setJob(piece, testing::resolved(piece), *findPaper(paper), "2026-11-24", kMetrics);
}

bool says(const Sheet& sheet, const std::string& text) {
    const std::vector<std::string> words = testing::wordsOn(sheet);
    return std::find(words.begin(), words.end(), text) != words.end();
}

TEST(SheetSet, IsNumberedThroughOnOnePaper) {
    for (const char* name : testing::kSamples) {
        const PrintJob job = setOf(name, "A4");
        const std::string count = std::to_string(job.pages.size());
        for (std::size_t i = 0; i < job.pages.size(); ++i) {
            EXPECT_TRUE(
                says(job.contents[job.pages[i].content], std::to_string(i + 1) + " of " + count))
                << name << ", sheet " << i + 1;
            EXPECT_NEAR(job.pages[i].size.x * job.pages[i].size.y, 297.0 * 210.0, 1e-6);
        }
    }
}

TEST(SheetSet, IndexNamesEverySheetWithItsNumber) {
    const PrintJob job = setOf("armchair", "A3");
    for (std::size_t i = 1; i < job.pages.size(); ++i) {
        EXPECT_TRUE(says(job.contents[0], job.pages[i].name)) << job.pages[i].name;
        EXPECT_TRUE(says(job.contents[0], std::to_string(i + 1)));
    }
}

TEST(SheetSet, HasASheetForEachKindOfPart) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("armchair"));
    const PrintJob job = setOf("armchair", "A4");
    for (const PartKind& kind : partKinds(resolved)) {
        EXPECT_EQ(std::count_if(job.pages.begin(),
                                job.pages.end(),
                                [&](const Page& page) { return page.name == kind.name; }),
                  1)
            << kind.name;
    }
}

TEST(SheetSet, LetteringLiesOnNothingAndNothingLeavesThePaper) {
    for (const char* name : testing::kSamples) {
        for (const char* paper : {"A4", "Letter", "A3", "A1"}) {
            const PrintJob job = setOf(name, paper);
            for (const Page& page : job.pages) {
                const Sheet& sheet = job.contents[page.content];
                EXPECT_EQ(testing::overlapsOn(sheet, kMetrics), std::vector<std::string>{})
                    << name << " on " << paper << ": " << page.name;
                const Rect inner = innerFrame(sheet.size);
                for (const Op& op : sheet.ops) {
                    if (const auto* text = std::get_if<TextOp>(&op)) {
                        EXPECT_TRUE(text->at.x > inner.min.x && text->at.x < inner.max.x &&
                                    text->at.y > inner.min.y && text->at.y < inner.max.y)
                            << name << " on " << paper << ", " << page.name << ": " << text->text;
                    }
                }
            }
        }
    }
}

TEST(SheetSet, IndexGoesOnToFurtherSheets) {
    const Vec2 paper{297, 210};
    const std::vector<std::string> titles(200, "joints");

    const std::vector<Sheet> sheets = indexSheets({}, titles, {paper, 0.0, "", 0, 0}, kMetrics);

    EXPECT_EQ(static_cast<int>(sheets.size()), indexSheetCount(paper, 200));
    EXPECT_GT(sheets.size(), 1u);
    EXPECT_TRUE(says(sheets.back(), std::to_string(200 + sheets.size())));
}

TEST(JointGroups, HoldEveryJointThatIsCutOnce) {
    for (const char* name : testing::kSamples) {
        const ResolvedPiece resolved = testing::resolved(testing::sample(name));
        std::vector<int> times(resolved.joints.size(), 0);
        for (const JointGroup& group : jointGroups(resolved)) {
            for (const std::size_t joint : group.joints) {
                ++times[joint];
            }
        }
        for (std::size_t i = 0; i < times.size(); ++i) {
            EXPECT_EQ(times[i], resolved.joints[i].kind == JointKind::Rests ? 0 : 1);
        }
    }
}

// A rail alike at both ends has one joint to draw; a tenon made thinner at one end gives two.
TEST(JointGroups, PartWhereASizeDiffers) {
    ResolvedPiece resolved = testing::resolved(testing::twoPostsAndARail());
    ASSERT_EQ(resolved.joints.size(), 2u);
    EXPECT_EQ(jointGroups(resolved).size(), 1u);

    resolved.joints[1].tenon.thickness.value = Length::mm(5.0);

    EXPECT_EQ(jointGroups(resolved).size(), 2u);
}

TEST(JointSheets, ReducedDrawingsSayTheirScale) {
    const Piece piece = testing::twoPostsAndARail();
    const ResolvedPiece resolved = testing::resolved(piece);
    const Sheet plain = jointDrawing(piece, resolved, 0, kMetrics);
    const Sheet reduced = jointSheets(piece, resolved, {{420, 297}, 0.0, "", 0, 0}, kMetrics)[0];
    const DimensionOp before = testing::dimensionsOf(plain, "tenon length")[0];
    const DimensionOp after = testing::dimensionsOf(reduced, "tenon length")[0];
    const double scale = (after.to.x - after.from.x) / after.value;

    EXPECT_LT(scale, (before.to.x - before.from.x) / before.value);
    bool isSaid = false;
    for (const std::string& words : testing::wordsOn(reduced)) {
        const std::size_t at = words.find("cheek, 1 : ");
        if (at != std::string::npos) {
            EXPECT_NEAR(std::stod(words.substr(at + 11)), 1.0 / scale, 0.006);
            isSaid = true;
        }
    }
    EXPECT_TRUE(isSaid);
}

}  // namespace
}  // namespace shoulderline
