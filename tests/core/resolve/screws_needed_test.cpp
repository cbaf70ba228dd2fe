#include "core/resolve/screws_needed.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "core/resolve/sizes_json.h"
#include "core/resolve/sizes_text.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::resolved;
using testing::sample;

const NeededScrews* screwsThrough(const std::vector<NeededScrews>& all, const std::string& part) {
    const auto it = std::find_if(
        all.begin(), all.end(), [&](const NeededScrews& one) { return one.through == part; });
    return it == all.end() ? nullptr : &*it;
}

// Shank of a No. 10: 0.190 in, which a 3/16 in clearance hole takes (table of American wood
// screws); the cleat is 3/4 in, the rail behind it 7/8 in.
TEST(ScrewsNeeded, ACleatIsHeldByAsManyAsItHasHolesEndingInTheRail) {
    const ResolvedPiece made = resolved(sample("armchair"));
    const std::vector<NeededScrews> all = screwsNeeded(made, true);
    const NeededScrews* screws = screwsThrough(all, "front cleat");

    ASSERT_NE(screws, nullptr);
    const ResolvedPart& cleat = testing::partNamed(made, "front cleat");
    const auto holes = std::count_if(cleat.cuts.begin(), cleat.cuts.end(), [](const auto& cut) {
        return cut.kind == CutKind::Bore;
    });
    EXPECT_EQ(screws->quantity, holes);
    EXPECT_EQ(screws->into, "front rail");
    EXPECT_EQ(screws->screw.gauge, 10);
    EXPECT_LT(screws->screw.length.inches(), 3.0 / 4 + 7.0 / 8) << "it does not come out";
    EXPECT_GT(screws->screw.length.inches(), 3.0 / 4 + 3.0 / 8) << "it holds";
    EXPECT_EQ(screwText(screws->screw, screws->diameter, LengthStyle::fractions(16)),
              "No. 10 \u00d7 1 1/2");
}

// The table's top is held through holes that its rails have by themselves: three in each end rail.
TEST(ScrewsNeeded, OnesThroughHolesOfAPartsOwnGoIntoWhatLiesBehind) {
    const Piece piece = sample("table");
    const ResolvedPiece made = resolved(piece);
    const std::vector<NeededScrews> all = screwsNeeded(made, false);
    const NeededScrews* screws = screwsThrough(all, "end rail");

    ASSERT_NE(screws, nullptr);
    EXPECT_EQ(screws->into, "top");
    EXPECT_EQ(screws->quantity, 6);
    EXPECT_TRUE(screws->joints.empty());
    const double top = testing::partNamed(made, "top").thickness.value.mm();
    EXPECT_GT(screws->screw.length.mm(), 30.0) << "past the wood under its head";
    EXPECT_LT(screws->screw.length.mm(), 30.0 + top) << "it does not come out of the top";
}

// By gauge in inches, by the diameter of the hole in millimetres.
TEST(ScrewsNeeded, TheSizesOfAPieceListThem) {
    const Piece chair = sample("armchair");
    const Piece table = sample("table");

    EXPECT_NE(sizesText(chair, resolved(chair))
                  .find("\nScrews\n  screw No. 6: 4 of 1 1/4\u00a0in, through back arm "
                        "bracket into back "
                        "post\n  screw No. 10: 4 of 1 1/2\u00a0in, through front cleat into "
                        "front rail\n"),
              std::string::npos)
        << sizesText(chair, resolved(chair));
    EXPECT_NE(sizesText(table, resolved(table))
                  .find("  screw: 6 of 45\u00a0mm x \u23005\u00a0mm, through end rail into top\n"),
              std::string::npos);
}

TEST(ScrewsNeeded, TheSizesOfAPieceWithoutAnySayNothingOfThem) {
    const Piece piece = testing::twoPostsAndARail();

    EXPECT_EQ(sizesText(piece, resolved(piece)).find("crew"), std::string::npos);
    EXPECT_NE(sizesJson(piece, resolved(piece)).find("\"screws\": []"), std::string::npos);
}

TEST(ScrewsNeeded, AFrameOfMortisesAndTenonsTakesNone) {
    EXPECT_TRUE(screwsNeeded(resolved(testing::twoPostsAndARail()), true).empty());
}

}  // namespace
}  // namespace shoulderline
