#include "core/drawing/tenon_pegs.h"

#include <algorithm>
#include <string>

#include <gtest/gtest.h>

#include "core/drawing/joint_members.h"
#include "core/drawing/joint_section.h"
#include "core/drawing/sheets.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

// A square peg goes through the tenon that it pins; its hole is cut with the joint together.
namespace shoulderline {
namespace {

using testing::kMetrics;
using testing::resolved;
using testing::sample;

std::size_t peggedJointOf(const ResolvedPiece& bench) {
    for (std::size_t i = 0; i < bench.joints.size(); ++i) {
        if (bench.parts[bench.joints[i].tenoned].of == "front rail") {
            return i;
        }
    }
    return bench.joints.size();
}

TEST(PegThroughATenon, IsInTheSectionOfItsJoint) {
    const ResolvedPiece bench = resolved(sample("bench"));
    const SectionedJoint section = sectionOf(membersOf(bench, peggedJointOf(bench)), 1.0);

    ASSERT_EQ(section.ownHollows.size(), 2u);
    ASSERT_EQ(section.smalls.size(), 2u);
    for (const Ring& hole : section.ownHollows) {
        Rect bounds{hole.front(), hole.front()};
        for (const Vec2& p : hole) {
            bounds.include(p);
        }
        EXPECT_NEAR(bounds.size().x, 6.35, 1e-6) << "the peg's 1/4 in";
        EXPECT_NEAR(bounds.size().y, 6.35, 1e-6);
        EXPECT_GT(bounds.min.x, 0.0) << "past the shoulder";
    }
}

TEST(PegThroughATenon, IsOnTheSheetOfItsRailWithTheWordThatItIsCutTogether) {
    const Piece piece = sample("bench");
    const ResolvedPiece bench = resolved(piece);
    const std::vector<PartKind> kinds = partKinds(bench);
    const auto rail = std::find_if(
        kinds.begin(), kinds.end(), [](const PartKind& kind) { return kind.name == "front rail"; });
    ASSERT_NE(rail, kinds.end());
    std::string words;
    for (const Sheet& sheet :
         partSheets(piece, bench, *rail, {{297.0, 210.0}, 0.0, "", 0, 0}, kMetrics)) {
        for (const std::string& word : testing::wordsOn(sheet)) {
            words += word + "\n";
        }
    }
    EXPECT_NE(words.find("each end: 2 peg mortises 1/4 square through the tenon,\n"
                         "with the joint together"),
              std::string::npos)
        << words;

    const std::size_t part = rail->parts.front();
    const PartView view = partView(bench.parts[part], Face::FaceSide);
    int squares = 0;
    for (const Op& op : tenonPegLines(bench, part, view, 1.0)) {
        const auto* stroke = std::get_if<Stroke>(&op);
        squares += stroke != nullptr && stroke->role == LineRole::Visible ? 1 : 0;
    }
    EXPECT_EQ(squares, 4) << "two on each tenon";
}

TEST(PegThroughATenon, IsNotToldWhereNoPegIs) {
    const Piece piece = sample("table");
    const ResolvedPiece table = resolved(piece);
    for (std::size_t i = 0; i < table.joints.size(); ++i) {
        EXPECT_FALSE(tenonPegsText(piece, table, i));
    }
}

}  // namespace
}  // namespace shoulderline
