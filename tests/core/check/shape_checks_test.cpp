#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::findings;
using testing::ofRule;
using testing::statedPart;

TEST(Shaped, ARailThatMeetsATaperIsToldThatTheWoodIsGoneThere) {
    Piece piece = testing::twoPostsAndARail();
    Part& post = statedPart(piece, "post");
    EXPECT_TRUE(ofRule(findings(piece), RuleId::MouthOnFace).empty());
    for (const Face face : {Face::FaceEdge, Face::BackEdge, Face::FaceSide, Face::BackSide}) {
        post.shape[face] = {{Datum::Start, "", "", Run::Line, "", {}},
                            {Datum::Far, "", "3/8 in", Run::Line, "", {}}};
    }

    const std::vector<Finding> told = ofRule(findings(piece), RuleId::MouthOnFace);
    ASSERT_FALSE(told.empty());
    EXPECT_EQ(told.front().severity, Severity::MustMend);
}

TEST(Shaped, ATenonPastAnArchedEdgeIsTold) {
    Piece piece = testing::twoPostsAndARail();
    statedPart(piece, "rail").shape[Face::FaceEdge] = {
        {Datum::Start, "", "1 in", Run::Arc, "1 in", {}},
        {Datum::Far, "", "1 in", Run::Line, "", {}}};
    EXPECT_EQ(ofRule(findings(piece), RuleId::ShoulderLeast).size(), 1u);

    JointStatement joint;
    joint.tenoned = "rail";
    joint.mortised = "post";
    joint.sizes[SizeName::ShoulderFaceEdge] = {SizeState::Stated, "1 1/8 in"};
    joint.sizes[SizeName::TenonWidth] = {SizeState::Stated, "1 1/2 in"};
    piece.joints = {joint};
    EXPECT_TRUE(ofRule(findings(piece), RuleId::ShoulderLeast).empty());
}

TEST(Grooves, OneThatOpensAMortiseAsksForAFillerPiece) {
    Piece piece = testing::twoPostsAndARail();
    CutStatement groove;
    groove.kind = CutKind::Groove;
    groove.face = Face::BackSide;
    groove.across = "3/8 in";
    groove.width = "1/4 in";
    groove.depth = "3/8 in";
    statedPart(piece, "post").cuts = {groove};
    for (CutStatement& cut : statedPart(piece, "post").cuts) {
        cut.face =
            testing::jointNamed(testing::resolved(piece), "rail into post, right").mortise.face;
    }
    const std::vector<Finding> told = ofRule(findings(piece), RuleId::MortiseGapLeast);

    ASSERT_FALSE(told.empty());
    EXPECT_NE(told.front().message.find("filler piece"), std::string::npos);
}

}  // namespace
}  // namespace shoulderline
