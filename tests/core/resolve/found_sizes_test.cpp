#include "core/resolve/found_sizes.h"

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::partNamed;
using testing::resolved;
using testing::statedPart;
using testing::twoPostsAndARail;

// The rail was planed to 3/4 in and ripped to 2 7/8 in: its tenon is a third of what is there, and
// shoulders and tenon together are as thick and wide as the rail is now.
TEST(FoundSizes, ARailsSizesAsFoundTakeThePlaceOfThoseStatedAndItsJointsFollow) {
    Piece piece = twoPostsAndARail();
    statedPart(piece, "rail").foundThickness = "3/4 in";
    statedPart(piece, "rail").foundWidth = "2 7/8 in";

    const ResolvedPiece made = resolved(piece);
    const ResolvedPart rail = partNamed(made, "rail");
    EXPECT_NEAR(rail.thickness.value.inches(), 0.75, 1e-12);
    EXPECT_NEAR(rail.width.value.inches(), 2.875, 1e-12);
    EXPECT_EQ(rail.thickness.state, SizeState::AsFound);
    EXPECT_NEAR(rail.thickness.reasons.front().a.inches(), 0.875, 1e-12) << "what was stated";
    for (std::size_t j = 0; j < made.joints.size(); ++j) {
        const Tenon& tenon = made.joints[j].tenon;
        const Shoulders& s = tenon.shoulders;
        EXPECT_NEAR(tenon.thickness.value.inches(), 0.25, 1e-12);
        EXPECT_NEAR(
            (s.faceSide.value + tenon.thickness.value + s.backSide.value).inches(), 0.75, 1e-12);
        EXPECT_NEAR(
            (s.faceEdge.value + tenon.width.value + s.backEdge.value).inches(), 2.875, 1e-12);
        const std::vector<FoundSize> behind = foundBehind(made, j);
        ASSERT_EQ(behind.size(), 2U);
        EXPECT_EQ(behind[0].of, "rail");
        EXPECT_NEAR(behind[1].before->inches(), 0.875, 1e-12);
    }
    EXPECT_TRUE(foundBehind(resolved(twoPostsAndARail()), 0).empty());
}

}  // namespace
}  // namespace shoulderline
