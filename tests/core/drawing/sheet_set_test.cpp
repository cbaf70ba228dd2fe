#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/hatching.h"
#include "core/drawing/index_sheet.h"
#include "core/drawing/joint_sheets.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/paper.h"
#include "core/drawing/title_block.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

PrintJob setOf(const char* name, const char* paper) {
    const Piece piece = testing::sample(name);
    return setJob(piece, testing::resolved(piece), *findPaper(paper), "2026-11-24", kMetrics);
}

bool setSays(const Sheet& sheet, const std::string& text) {
    const std::vector<std::string> words = testing::wordsOn(sheet);
    return std::find(words.begin(), words.end(), text) != words.end();
}

TEST(SheetSet, IsNumberedThroughOnOnePaper) {
    for (const char* name : testing::kSamples) {
        const PrintJob job = setOf(name, "A4");
        const std::string count = std::to_string(job.pages.size());
        for (std::size_t i = 0; i < job.pages.size(); ++i) {
            EXPECT_TRUE(
                setSays(job.contents[job.pages[i].content], std::to_string(i + 1) + " of " + count))
                << name << ", sheet " << i + 1;
            EXPECT_NEAR(job.pages[i].size.x * job.pages[i].size.y, 297.0 * 210.0, 1e-6);
        }
    }
}

TEST(SheetSet, IndexNamesEverySheetWithItsNumber) {
    const PrintJob job = setOf("armchair", "A3");
    for (std::size_t i = 1; i < job.pages.size(); ++i) {
        EXPECT_TRUE(setSays(job.contents[0], job.pages[i].name)) << job.pages[i].name;
        EXPECT_TRUE(setSays(job.contents[0], std::to_string(i + 1)));
    }
}

// Two lines of an index that read alike send the maker to the wrong sheet.
TEST(SheetSet, NoTwoSheetsHaveOneTitle) {
    for (const char* name : testing::kSamples) {
        const PrintJob job = setOf(name, "A4");
        std::vector<std::string> titles;
        for (const Page& page : job.pages) {
            titles.push_back(page.name);
        }
        std::sort(titles.begin(), titles.end());
        EXPECT_EQ(std::adjacent_find(titles.begin(), titles.end()), titles.end()) << name;
    }
}

TEST(SheetSet, ASheetOfSettingsAloneIsCalledSo) {
    const JointsOnSheet settings{{"front rail"}, {}, {}, {}, {}, false, {}};
    const JointsOnSheet drawn{{"front rail"}, {}, {}, {}, {}, true, ", 1 of 2"};

    EXPECT_EQ(titleOf(settings), "set-ups for front rail");
    EXPECT_EQ(titleOf(drawn), "joints of front rail, 1 of 2");
}

// Whether a sheet is the first of that kind's: it may serve several kinds that are made alike,
// "front cleat and back cleat".
bool isFirstSheetOf(const PartKind& kind, std::string page) {
    if (const std::size_t of = page.find(" of "); of != std::string::npos) {
        if (page.find(", 1 of ") == std::string::npos) {
            return false;
        }
        page.resize(page.find(", 1 of "));
    }
    const std::string joined = " and " + page + " and ";
    return joined.find(" and " + kind.name + " and ") != std::string::npos;
}

TEST(SheetSet, HasASheetForEachKindOfPart) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("armchair"));
    const PrintJob job = setOf("armchair", "A4");
    for (const PartKind& kind : partKinds(resolved)) {
        EXPECT_EQ(std::count_if(job.pages.begin(),
                                job.pages.end(),
                                [&](const Page& page) { return isFirstSheetOf(kind, page.name); }),
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
    const std::vector<std::string> titles(600, "joints");

    const std::vector<Sheet> sheets = indexSheets({}, titles, {paper, 0.0, "", 0, 0}, kMetrics);

    EXPECT_EQ(static_cast<int>(sheets.size()), indexSheetCount(paper, titles, kMetrics));
    EXPECT_GT(sheets.size(), 1u);
    EXPECT_TRUE(setSays(sheets.back(), std::to_string(titles.size() + sheets.size())));
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
            const ResolvedJoint& joint = resolved.joints[i];
            const bool isCut = joint.hasTenon() || !joint.further.empty();
            EXPECT_EQ(times[i], isCut ? 1 : 0) << joint.name;
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

// Standard scales: ISO 5455 names 1:1, 1:2, 1:5, 1:10; a quarter is the shop's for pieces in
// inches.
TEST(JointSheets, AreAtStandardScalesAndSayThem) {
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        for (const Vec2 paper : {Vec2{297, 210}, Vec2{420, 297}}) {
            for (const Sheet& sheet :
                 jointSheets(piece, resolved, {paper, 0.0, "", 0, 0}, kMetrics)) {
                std::vector<double> said;
                for (const std::string& words : testing::wordsOn(sheet)) {
                    const std::size_t at = words.find("; 1 : ");
                    if (at != std::string::npos) {
                        said.push_back(std::stod(words.substr(at + 6)));
                    }
                }
                for (const DimensionOp& d : testing::dimensionsOf(sheet, "tenon length")) {
                    const double wood = d.value / (d.to.x - d.from.x);
                    EXPECT_TRUE(std::any_of(said.begin(),
                                            said.end(),
                                            [&](double s) { return std::abs(s - wood) < 1e-6; }))
                        << name << ": 1 : " << wood;
                    const std::vector<double> standard{1, 2, 4, 5, 8, 10, 16, 20};
                    EXPECT_TRUE(std::any_of(standard.begin(),
                                            standard.end(),
                                            [&](double s) { return std::abs(s - wood) < 1e-6; }))
                        << name << ": 1 : " << wood;
                }
            }
        }
    }
}

TEST(JointSheets, ShowEachJointApartTogetherAndInSection) {
    const Piece piece = testing::twoPostsAndARail();
    const Sheet sheet =
        jointSheets(piece, testing::resolved(piece), {{420, 297}, 0.0, "", 0, 0}, kMetrics)[0];
    for (const char* words : {"on the edge", "on the cheek", "A\u2013A", "mouth", "tenon"}) {
        EXPECT_TRUE(setSays(sheet, words)) << words;
    }
    // Three full-size pictures of 3 in stock go on A3 turned, the settings beside the mouth.
    EXPECT_TRUE(setSays(sheet, "make 2, the right drawn, the left mirrored; blind; 1 : 1"))
        << "both ends of the rail are alike";
}

// Two hatched rectangles side by side, one with a hole: the lines' lengths times their spacing give
// the area, by hand 20 x 10 + 10 x 10 - 4 x 6 = 276 square millimetres.
TEST(Hatching, CoversTheCutFaceAndNothingElse) {
    const CutFace face{{ringOf({{0, 0}, {20, 10}}), ringOf({{30, 0}, {40, 10}})},
                       {ringOf({{5, 2}, {9, 8}})}};
    for (const double degrees : {0.0, 45.0, 90.0}) {
        double area = 0.0;
        for (const Op& op : hatch(face, Angle::degrees(degrees), 0.05)) {
            const auto& line = std::get<Stroke>(op);
            area += norm(line.points[1] - line.points[0]) * 0.05;
            const Vec2 middle = (line.points[0] + line.points[1]) * 0.5;
            EXPECT_FALSE(middle.x > 5.001 && middle.x < 8.999 && middle.y > 2.001 &&
                         middle.y < 7.999);
        }
        EXPECT_NEAR(area, 276.0, 1.5) << degrees;
    }
}

}  // namespace
}  // namespace shoulderline
