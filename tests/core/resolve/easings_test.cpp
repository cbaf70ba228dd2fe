#include <cmath>

#include <gtest/gtest.h>

#include "tests/core/resolve/stated_easing.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::easing;
using testing::partNamed;
using testing::resolved;
using testing::statedPart;
using testing::twoPostsAndARail;

using testing::kInch;

Piece railWith(std::vector<EasingStatement> easings) {
    Piece piece = twoPostsAndARail();
    statedPart(piece, "rail").easings = std::move(easings);
    return piece;
}

// What the easings take off the rail, cubic inches.
double taken(const std::vector<EasingStatement>& easings) {
    const ResolvedPiece made = resolved(railWith(easings));
    EXPECT_TRUE(made.troubles.empty()) << made.troubles.front().message;
    const double whole = volumeAsMade(partNamed(resolved(railWith({})), "rail"));
    return (whole - volumeAsMade(partNamed(made, "rail"))) / std::pow(kInch, 3);
}

// The rail is 20 in from shoulder to shoulder.
TEST(Easings, AChamferedArrisLosesATriangleAlongItsWholeLength) {
    EXPECT_NEAR(
        taken({easing(EasingKind::Chamfer, Arris::FaceSideFaceEdge, "1/4 in")}), 20.0 / 32, 1e-6);
}

TEST(Easings, AllAlongMeansFourArrises) {
    EXPECT_NEAR(
        taken({easing(EasingKind::Chamfer, Arris::AllAlong, "1/8 in")}), 4 * 20.0 / 128, 1e-6);
}

// A quarter of a circle of 1/4 in about the arris, within the facets of its hollow.
TEST(Easings, ACovedArrisLosesAQuarterOfACircle) {
    const double exact = M_PI / 4 / 16 * 20.0;
    const double one = taken({easing(EasingKind::Cove, Arris::BackSideFaceEdge, "1/4 in")});

    EXPECT_LT(one, exact);
    EXPECT_GT(one, 0.98 * exact);
}

TEST(Easings, AStoppedChamferIsMeasuredFromBothEnds) {
    EasingStatement stopped = easing(EasingKind::Chamfer, Arris::BackSideBackEdge, "1/4 in");
    stopped.fromStart = "2 in";
    stopped.fromFar = "3 in";
    stopped.runOut = "3/4 in";
    const ResolvedPiece made = resolved(railWith({stopped}));
    const ResolvedEasing& one = partNamed(made, "rail").easings.at(0);

    EXPECT_NEAR(one.from->inches(), 2.0, 1e-9);
    EXPECT_NEAR(one.to->inches(), 17.0, 1e-9);
    EXPECT_NEAR(taken({stopped}), (15 - 1.5 + 2 * 0.75 / 3) / 32, 1e-6);
}

TEST(Easings, ARunOutIsAsLongAsTheSizeWhereNoneIsStated) {
    EasingStatement stopped = easing(EasingKind::Chamfer, Arris::FaceSideFaceEdge, "1/4 in");
    stopped.fromStart = "2 in";

    EXPECT_EQ(partNamed(resolved(railWith({stopped})), "rail").easings.at(0).runOut,
              Length::inches(0.25));
}

TEST(Easings, AnEndCutToAPyramidKeepsThePostsHeight) {
    Piece piece = twoPostsAndARail();
    statedPart(piece, "post").easings = {easing(EasingKind::Pyramid, Arris::FarEnd, "1/2 in")};
    const ResolvedPiece made = resolved(piece);
    const ResolvedPart& post = partNamed(made, "post, left");

    EXPECT_TRUE(made.troubles.empty());
    EXPECT_NEAR(post.wood().whole().bounds().max.x, post.shoulderLength.value.mm(), 1e-9);
}

TEST(Easings, BothOfAPairAreEasedAlike) {
    Piece piece = twoPostsAndARail();
    statedPart(piece, "post").easings = {
        easing(EasingKind::RoundOver, Arris::FaceSideFaceEdge, "3/16 in")};
    const ResolvedPiece made = resolved(piece);

    EXPECT_EQ(partNamed(made, "post, left").easings, partNamed(made, "post, right").easings);
    EXPECT_NEAR(volumeAsMade(partNamed(made, "post, left")),
                volumeAsMade(partNamed(made, "post, right")),
                1e-6);
}

std::string troubleOf(const EasingStatement& stated) {
    const ResolvedPiece made = resolved(railWith({stated}));
    EXPECT_EQ(made.troubles.size(), 1U);
    EXPECT_TRUE(partNamed(made, "rail").easings.empty()) << "it is left out";
    return made.troubles.empty() ? std::string() : made.troubles.front().message;
}

// The rail is 7/8 in thick: what reaches across it leaves no face.
TEST(Easings, OneLargerThanTheWoodIsToldWithTheLargestThatCanBeMade) {
    EXPECT_NE(
        troubleOf(easing(EasingKind::Chamfer, Arris::FaceSideFaceEdge, "1 in")).find("up to 13/16"),
        std::string::npos);
    EXPECT_NE(troubleOf(easing(EasingKind::RoundOver, Arris::AllAlong, "1/2 in")).find("up to 3/8"),
              std::string::npos);
    EXPECT_NE(troubleOf(easing(EasingKind::Cove, Arris::AllAlong, "1/2 in")).find("up to 3/8"),
              std::string::npos);
}

TEST(Easings, StopsThatLeaveNothingAreToldWithTheMostTheyMayTake) {
    EasingStatement stopped = easing(EasingKind::Chamfer, Arris::FaceSideFaceEdge, "1/4 in");
    stopped.fromStart = "12 in";
    stopped.fromFar = "9 in";

    EXPECT_NE(troubleOf(stopped).find("up to 19 1/2"), std::string::npos);
}

TEST(Easings, WhatOnlyAnEndOrOnlyAnArrisCanHaveIsTold) {
    EXPECT_NE(troubleOf(easing(EasingKind::Pyramid, Arris::AllAlong, "1/4 in")).find("only an end"),
              std::string::npos);
    EasingStatement stopped = easing(EasingKind::Chamfer, Arris::AroundFaceSide, "1/4 in");
    stopped.fromStart = "1 in";
    EXPECT_NE(troubleOf(stopped).find("along the part"), std::string::npos);
}

TEST(Easings, ARoundPartHasNoArrisAlongItButMayHaveItsEndsEased) {
    Piece piece = twoPostsAndARail();
    Part& post = statedPart(piece, "post");
    post.section = SectionForm::Round;
    post.easings = {easing(EasingKind::Chamfer, Arris::AllAlong, "1/8 in"),
                    easing(EasingKind::Chamfer, Arris::FarEnd, "1/8 in")};
    const ResolvedPiece made = resolved(piece);

    EXPECT_EQ(partNamed(made, "post, left").easings.size(), 1U);
    EXPECT_TRUE(std::any_of(made.troubles.begin(), made.troubles.end(), [](const Trouble& t) {
        return t.message.find("no such arris") != std::string::npos;
    }));
}

// By similar triangles: at t from the arris a chamfer of c at 45 degrees lies c - t below the
// blank's face. The far face, chamfered too, leaves as much less wood behind the mouth.
TEST(Easings, AMortiseThatEntersAChamferIsSunkFromTheFaceAsItIs) {
    Piece piece = twoPostsAndARail();
    const ResolvedPiece plain = resolved(piece);
    const ResolvedJoint& before = testing::jointNamed(plain, "rail into post, right");
    const double t = before.mortise.fromFace.value.inches();
    statedPart(piece, "post").easings = {easing(EasingKind::Chamfer, Arris::AllAlong, "3/8 in")};

    const ResolvedPiece made = resolved(piece);
    ASSERT_TRUE(made.troubles.empty()) << made.troubles.front().message;
    const ResolvedJoint& joint = testing::jointNamed(made, "rail into post, right");

    ASSERT_LT(t, 0.375);
    EXPECT_NEAR(joint.mortise.below.inches(), 0.375 - t, 1e-3);
    EXPECT_NEAR((before.mortise.there - joint.mortise.there).inches(), 2 * (0.375 - t), 2e-3);
}

}  // namespace
}  // namespace shoulderline
