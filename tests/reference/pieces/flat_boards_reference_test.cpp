#include <gtest/gtest.h>

#include "tests/reference/pieces/seat_frame.h"
#include "tests/reference/solid_geometry/occt_solids.h"
#include "tests/support/pieces.h"

// Boards laid flat between legs that lean, against Open CASCADE Technology 7.6.
namespace shoulderline {
namespace {

using reference::kStances;
using reference::railBetween;
using reference::seatFrame;
using reference::Solid;
using reference::SolidPlan;
using reference::Stance;

// A board laid flat between the back legs and one between the front legs, its thickness along them.
Piece withFlatBoards(const Stance& stance, bool leans) {
    Piece piece = seatFrame(stance);
    piece.joints.clear();
    piece.stocks.push_back({"board stock", "White ash", Cut::Flat, "7/8 in", "", "", "", ""});
    for (const char* leg : {"front leg", "back leg"}) {
        Part board = railBetween(leg + std::string(" board"),
                                 leg + std::string(", left"),
                                 leg + std::string(", right"),
                                 Side::Top,
                                 "");
        board.stock = "board stock";
        board.width = "1 1/4 in";
        Spans& spans = std::get<Spans>(board.relation);
        spans.level.reset();
        spans.set = {Side::Top, "12 in"};
        spans.flat = true;
        spans.leans = leans;
        piece.parts.push_back(board);
    }
    Part side = railBetween("side board", "front leg", "back leg", Side::Top, "");
    side.stock = "board stock";
    side.width = "1 1/4 in";
    side.pair = true;
    Spans& spans = std::get<Spans>(side.relation);
    spans.level.reset();
    spans.set = {Side::Top, "9 in"};
    spans.flat = true;
    spans.leans = leans;
    piece.parts.push_back(side);
    return piece;
}

class FlatBoards : public ::testing::TestWithParam<Stance> {};
INSTANTIATE_TEST_SUITE_P(OpenCascade, FlatBoards, ::testing::ValuesIn(kStances));

TEST_P(FlatBoards, EndOnTheFacesOfTheirLegsAndHaveTheVolumesOfTheKernel) {
    for (const bool leans : {false, true}) {
        const ResolvedPiece piece = testing::resolved(withFlatBoards(GetParam(), leans));
        ASSERT_TRUE(piece.troubles.empty()) << piece.troubles.front().message;
        int boards = 0;
        for (const ResolvedPart& board : piece.parts) {
            if (board.stock != "board stock") {
                continue;
            }
            ++boards;
            Box longer = board.bodyBox();
            longer.min.x -= 10.0;
            longer.max.x += 10.0;
            Solid left(SolidPlan{longer, board.frame, {}, {}});
            for (const ResolvedPart& post : piece.parts) {
                if (post.role == Role::Post) {
                    left = reference::cut(left, Solid(SolidPlan{post.body, post.frame, {}, {}}));
                }
            }
            EXPECT_NEAR(board.body.volume().value(), left.volume(), 1e-6 * left.volume())
                << board.name;
            SolidPlan made{board.body, board.frame, {}, {}};
            for (const TenonSolid& tenon : board.tenons) {
                made.added.push_back(tenon.solid());
            }
            EXPECT_EQ(board.tenons.size(), 2u) << board.name;
            const double theirs = Solid(made).volume();
            EXPECT_NEAR(volumeAsMade(board), theirs, 1e-6 * theirs) << board.name;
        }
        EXPECT_EQ(boards, 4);
    }
}

// Level across unless it leans: then its face is square to the leg's line as far as its own line
// lets it, so that seen along the board the angle between its face and the leg is a right one.
TEST_P(FlatBoards, LieLevelOrLeanWithTheirLegs) {
    for (const bool leans : {false, true}) {
        const ResolvedPiece piece = testing::resolved(withFlatBoards(GetParam(), leans));
        const ResolvedPart& board = testing::partNamed(piece, "front leg board");
        const ResolvedPart& left = testing::partNamed(piece, "front leg, left");
        const ResolvedPart& right = testing::partNamed(piece, "front leg, right");
        if (leans) {
            EXPECT_NEAR(dot(board.frame.y, left.frame.x + right.frame.x), 0.0, 1e-9);
        } else {
            EXPECT_NEAR(board.frame.y.z, 0.0, 1e-9) << "its width lies level";
        }
        // Its upper face is 12 in under the tops of the legs, 20 in up.
        const Box bounds = boundsInSpace(board);
        const double middle = (bounds.min.z + bounds.max.z) / 2;
        EXPECT_NEAR(middle, (20.0 - 12.0) * 25.4 - 7.0 / 16 * 25.4, leans ? 0.5 : 1e-6);
    }
}

}  // namespace
}  // namespace shoulderline
