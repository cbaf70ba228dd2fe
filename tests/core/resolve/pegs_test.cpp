#include "core/resolve/pegs.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/resolve/part_set_up.h"
#include "core/resolve/small_parts.h"
#include "core/storage/piece_text.h"
#include "tests/support/peg_mortises.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kInch;
using testing::partNamed;
using testing::pegMortise;
using testing::pegThroughTheTenon;
using testing::resolved;
using testing::statedPart;
using testing::twoPostsAndARail;

// The rail is 7/8 in thick, 3 in wide and 20 in long.
Piece railPegged(const std::vector<CutStatement>& cuts) {
    Piece piece = twoPostsAndARail();
    statedPart(piece, "rail").cuts = cuts;
    return piece;
}

const ResolvedCut& onlyCut(const ResolvedPiece& made) {
    EXPECT_TRUE(made.troubles.empty());
    return partNamed(made, "rail").cuts.at(0);
}

TEST(PegMortise, TakesItsSquareTimesItsDepth) {
    const double whole = volumeAsMade(partNamed(resolved(railPegged({})), "rail"));
    const ResolvedPiece made =
        resolved(railPegged({pegMortise("10 in", "1 in", "3/8 in", "1/2 in")}));

    EXPECT_NEAR((whole - volumeAsMade(partNamed(made, "rail"))) / std::pow(kInch, 3),
                3.0 / 8 * 3 / 8 / 2,
                1e-9);
}

TEST(PegMortise, IsPlacedByItsMiddleFromWhicheverEnd) {
    CutStatement far = pegMortise("2 in", "1 in", "3/8 in", "1/2 in");
    far.alongFrom = Datum::Far;
    const ResolvedPiece made = resolved(railPegged({far}));
    const Vec3 middle = onlyCut(made).box.centre();

    EXPECT_NEAR(middle.x / kInch, 18.0, 1e-9);
    EXPECT_NEAR(middle.y / kInch, 1.0, 1e-9);
    EXPECT_NEAR(middle.z / kInch, 0.25, 1e-9);
}

TEST(PegMortise, GoesThroughWhereNoDepthIsStated) {
    const ResolvedPiece made = resolved(railPegged({pegMortise("10 in", "1 in", "3/8 in", "")}));

    EXPECT_TRUE(onlyCut(made).isThrough);
    EXPECT_NEAR(onlyCut(made).peg->depth.inches(), 7.0 / 8, 1e-9);
}

TEST(PegMortise, ItsPegStandsOutOfTheFaceItEnters) {
    CutStatement cut = pegMortise("10 in", "1 in", "3/8 in", "1/2 in");
    cut.face = Face::BackSide;
    cut.proud = "1/16 in";
    const ResolvedPiece made = resolved(railPegged({cut}));
    const Box peg = pegIn(onlyCut(made));

    EXPECT_NEAR(peg.min.z / kInch, 7.0 / 8 - 1.0 / 2, 1e-9);
    EXPECT_NEAR(peg.max.z / kInch, 7.0 / 8 + 1.0 / 16, 1e-9);
}

TEST(PegMortise, ItsPegsAreInThePartsListAsLongAsTheyAreDeepAndProud) {
    CutStatement cut = pegMortise("10 in", "1 in", "3/8 in", "1/2 in");
    cut.proud = "1/16 in";
    CutStatement second = cut;
    second.along = "5 in";
    CutStatement flush = cut;
    flush.along = "15 in";
    flush.proud.clear();
    const Piece piece = railPegged({cut, second, flush});
    std::vector<SmallPart> pegs;
    for (const SmallPart& small : smallPartsOf(piece, resolved(piece))) {
        if (small.kind == SmallPartKind::SquarePeg) {
            pegs.push_back(small);
        }
    }

    ASSERT_EQ(pegs.size(), 2U);
    EXPECT_EQ(pegs[0].quantity, 2);
    EXPECT_EQ(pegs[0].name(), "square peg, rail");
    EXPECT_NEAR(pegs[0].length.inches(), 9.0 / 16, 1e-9);
    EXPECT_NEAR(pegs[0].width.inches(), 3.0 / 8, 1e-9);
    EXPECT_FALSE(pegs[0].isRound());
    EXPECT_EQ(pegs[1].quantity, 1);
    EXPECT_NEAR(pegs[1].length.inches(), 1.0 / 2, 1e-9);
}

std::string troubleWith(const CutStatement& cut) {
    const ResolvedPiece made = resolved(railPegged({cut}));
    EXPECT_TRUE(partNamed(made, "rail").cuts.empty()) << "it is left out";
    EXPECT_EQ(made.troubles.size(), 1U);
    return made.troubles.empty() ? std::string() : made.troubles.front().message;
}

TEST(PegMortise, OneThatCannotBeCutIsToldAndLeftOut) {
    EXPECT_NE(troubleWith(pegMortise("10 in", "1 in", "", "1/2 in")).find("side"),
              std::string::npos);
    EXPECT_NE(troubleWith(pegMortise("30 in", "1 in", "3/8 in", "1/2 in")).find("outside the wood"),
              std::string::npos);
    CutStatement sunk = pegMortise("10 in", "1 in", "3/8 in", "1/2 in");
    sunk.proud = "-(1/16 in)";
    EXPECT_NE(troubleWith(sunk).find("below the face"), std::string::npos);
}

TEST(PegMortise, PinsTheTenonThatItCrossesWithinItsLength) {
    const Piece piece = pegThroughTheTenon();
    const ResolvedPiece made = resolved(piece);
    const ResolvedPart& post = partNamed(made, "post, left");

    ASSERT_EQ(post.cuts.size(), 1U);
    ASSERT_EQ(pinnedBy(post, post.cuts.front()).size(), 1U);
    const ResolvedJoint& joint = made.joints[pinnedBy(post, post.cuts.front()).front()];
    EXPECT_EQ(made.parts[joint.tenoned].of, "rail");
    EXPECT_EQ(made.parts[joint.mortised].name, "post, left");
}

TEST(PegMortise, BesideTheTenonItPinsNothing) {
    Piece piece = pegThroughTheTenon();
    statedPart(piece, "post").cuts.front().along = "1 in";
    const ResolvedPiece made = resolved(piece);
    const ResolvedPart& post = partNamed(made, "post, left");

    EXPECT_TRUE(pinnedBy(post, post.cuts.front()).empty());
}

TEST(PegMortise, ItsSetUpNamesTheSquareAndTheTenon) {
    const Piece piece = pegThroughTheTenon();
    const ResolvedPiece made = resolved(piece);
    const std::vector<PartSetUp> setUps = partSetUpsOf(partNamed(made, "post, left"), piece.style);

    ASSERT_EQ(setUps.size(), 1U);
    EXPECT_EQ(setUps.front().tool, RuleId::SetUpMortiser);
    EXPECT_EQ(setUps.front().setting.rfind("1/4 square; centre ", 0), 0U);
    EXPECT_NE(setUps.front().setting.find("through the tenon too, with the joint together"),
              std::string::npos);
}

// Hollow chisels begin at 1/4 in.
TEST(PegMortise, ASmallOneIsCutWithAChisel) {
    const Piece piece = railPegged({pegMortise("10 in", "1 in", "3/16 in", "1/2 in")});

    EXPECT_EQ(partSetUpsOf(partNamed(resolved(piece), "rail"), piece.style).front().tool,
              RuleId::SetUpChisel);
}

TEST(PegMortise, ReadsBackFromWhatWasWritten) {
    CutStatement cut = pegMortise("10 in", "1 in", "3/8 in", "1/2 in");
    cut.proud = "1/16 in";
    const Piece piece = railPegged({cut});

    EXPECT_EQ(readPiece(writePiece(piece)).value(), piece);
}

}  // namespace
}  // namespace shoulderline
