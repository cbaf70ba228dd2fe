#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::findings;
using testing::ofRule;
using testing::statedPart;

ShapedEdge taperBy(const char* in) {
    return {{Datum::Start, "", "", Run::Line, "", {}}, {Datum::Far, "", in, Run::Line, "", {}}};
}

TEST(Shaped, AMouthBesideWhichThePostIsShapedAwayMustBeMended) {
    Piece piece = testing::twoPostsAndARail();
    Part& post = statedPart(piece, "post");
    EXPECT_TRUE(ofRule(findings(piece), RuleId::MouthOnFace).empty());
    for (const Face face : {Face::FaceEdge, Face::BackEdge, Face::FaceSide, Face::BackSide}) {
        post.shape[face] = taperBy("7/8 in");
    }

    const std::vector<Finding> told = ofRule(findings(piece), RuleId::MouthOnFace);
    ASSERT_FALSE(told.empty());
    EXPECT_EQ(told.front().severity, Severity::MustMend);
}

// Common practice: a plug has wood all round it. The cleat is 3/4 in wide.
TEST(Holes, APlugAsWideAsItsPartBreaksOutAndMustBeMended) {
    Piece piece = testing::sample("armchair");
    EXPECT_TRUE(ofRule(findings(piece), RuleId::MouthOnFace).empty());
    for (JointStatement& joint : piece.joints) {
        if (joint.tenoned == "front cleat" && joint.mortised == "front rail") {
            joint.features.insert(JointFeature::Plugged);
            joint.sizes[SizeName::PlugDiameter] = {SizeState::Stated, "1 in"};
        }
    }

    const std::vector<Finding> told = ofRule(findings(piece), RuleId::MouthOnFace);
    ASSERT_FALSE(told.empty());
    EXPECT_EQ(told.front().severity, Severity::MustMend);
    EXPECT_NEAR(told.front().value, 25.4 * (1.0 - 0.75) / 2, 1e-9);
}

// A mortise is sunk from the face that is there: by similar triangles the deepest of a face that
// tapers by 3/8 in over the post lies (place over length) times 3/8 in below the blank's.
TEST(Shaped, AMortiseInATaperedFaceIsMeasuredFromTheFaceAsItIs) {
    Piece piece = testing::twoPostsAndARail();
    const ResolvedPiece plain = testing::resolved(piece);
    const ResolvedJoint& before = testing::jointNamed(plain, "rail into post, right");
    statedPart(piece, "post").shape[before.mortise.face] = taperBy("3/8 in");

    const ResolvedPiece tapered = testing::resolved(piece);
    const ResolvedJoint& joint = testing::jointNamed(tapered, "rail into post, right");
    const ResolvedPart& post = tapered.parts[joint.mortised];
    const double top =
        (post.shoulderLength.value - joint.mortise.fromFar) / post.shoulderLength.value;
    EXPECT_NEAR(joint.mortise.below.inches(), top * 0.375, 1e-3);
    EXPECT_NEAR((before.mortise.there - joint.mortise.there).inches(), top * 0.375, 1e-3);
    EXPECT_NEAR(joint.mortise.depth.value.inches(),
                (joint.tenon.length.value - joint.mortise.pastShoulder).inches() + 1.0 / 16,
                1e-9);
    // The rail's shoulder follows the taper, and so lies on the face.
    EXPECT_TRUE(ofRule(findings(piece), RuleId::ShoulderMeetsFace).empty());
    EXPECT_TRUE(ofRule(findings(piece), RuleId::MouthOnFace).empty());
}

// A board that lies through the rail runs into it until it is slotted as wide as the rail is thick.
TEST(Shaped, ABoardNotchedAroundWhatItMeetsIsClearOfIt) {
    Piece piece = testing::twoPostsAndARail();
    Part board;
    board.name = "board";
    board.role = Role::Panel;
    board.stock = "rail stock";
    board.width = "6 in";
    Free free;
    free.x = "-5 in";
    free.y = "-2 in";
    free.z = "16 1/2 in";
    free.length = "10 in";
    board.relation = free;
    piece.parts.push_back(board);
    ASSERT_FALSE(ofRule(findings(piece), RuleId::PartsClear).empty());

    CutStatement notch;
    notch.kind = CutKind::Notch;
    notch.face = Face::FaceSide;
    notch.across = "2 in";
    notch.width = "7/8 in";
    piece.parts.back().cuts = {notch};
    EXPECT_TRUE(ofRule(findings(piece), RuleId::PartsClear).empty());
    piece.parts.back().cuts.front().width = "3/4 in";
    EXPECT_FALSE(ofRule(findings(piece), RuleId::PartsClear).empty()) << "an eighth too narrow";
}

TEST(Shaped, AMortiseInARabbetIsMeasuredFromItsFloor) {
    Piece piece = testing::twoPostsAndARail();
    const ResolvedPiece plain = testing::resolved(piece);
    const Mortise& before = testing::jointNamed(plain, "rail into post, right").mortise;
    CutStatement rabbet;
    rabbet.kind = CutKind::Rabbet;
    rabbet.face = before.face;
    rabbet.depth = "1/4 in";
    statedPart(piece, "post").cuts = {rabbet};

    const ResolvedPiece cut = testing::resolved(piece);
    const Mortise& mortise = testing::jointNamed(cut, "rail into post, right").mortise;
    EXPECT_NEAR(mortise.below.inches(), 0.25, 1e-9);
    EXPECT_NEAR((before.there - mortise.there).inches(), 0.25, 1e-9);
}

// The far side counts as it is, too: a taper across from the mouth leaves less behind it.
TEST(Shaped, AMortiseAcrossFromATaperLeavesItsFloorThere) {
    Piece piece = testing::twoPostsAndARail();
    const ResolvedPiece plain = testing::resolved(piece);
    const Mortise& before = testing::jointNamed(plain, "rail into post, right").mortise;
    const Face far = before.face == Face::FaceSide   ? Face::BackSide
                     : before.face == Face::BackSide ? Face::FaceSide
                     : before.face == Face::FaceEdge ? Face::BackEdge
                                                     : Face::FaceEdge;
    statedPart(piece, "post").shape[far] = taperBy("1 in");

    const ResolvedPiece tapered = testing::resolved(piece);
    const Mortise& mortise = testing::jointNamed(tapered, "rail into post, right").mortise;
    EXPECT_NEAR(mortise.below.mm(), 0.0, 1e-6);
    EXPECT_LT(mortise.there.inches(), before.there.inches() - 0.5);
    EXPECT_LT(mortise.depth.value, mortise.there);
}

// Common practice: a tapered or curved part is marked out and mortised while its blank is straight.
TEST(Shaped, AMortiseBesideATaperedReferenceIsMarkedFromTheBlank) {
    Piece piece = testing::twoPostsAndARail();
    const ResolvedPiece plain = testing::resolved(piece);
    const Mortise& before = testing::jointNamed(plain, "rail into post, right").mortise;
    statedPart(piece, "post").shape[before.reference] = taperBy("1/4 in");

    const ResolvedPiece tapered = testing::resolved(piece);
    const Mortise& mortise = testing::jointNamed(tapered, "rail into post, right").mortise;

    EXPECT_NEAR(mortise.fromFace.value.inches(), before.fromFace.value.inches(), 1e-9);
}

TEST(Shaped, AMortiseBesideARabbetInItsReferenceIsMeasuredFromTheRabbet) {
    Piece piece = testing::twoPostsAndARail();
    JointStatement joint;
    joint.tenoned = "rail";
    joint.mortised = "post";
    joint.sizes[SizeName::ShoulderFaceSide] = {SizeState::Stated, "1/2 in"};
    piece.joints = {joint};
    const ResolvedPiece plain = testing::resolved(piece);
    const Mortise& before = testing::jointNamed(plain, "rail into post, right").mortise;
    CutStatement rabbet;
    rabbet.kind = CutKind::Rabbet;
    rabbet.face = before.reference;
    rabbet.depth = "1/8 in";
    statedPart(piece, "post").cuts = {rabbet};

    const ResolvedPiece cut = testing::resolved(piece);
    const Mortise& mortise = testing::jointNamed(cut, "rail into post, right").mortise;

    EXPECT_NEAR(mortise.referenceIn.inches(), 0.125, 1e-9);
    EXPECT_NEAR((before.fromFace.value - mortise.fromFace.value).inches(), 0.125, 1e-9);
}

// A post planed to eight sides is chamfered at all four edges: a mouth wider than the flat left on
// the face has its lips on the chamfers, and is measured from the lower of them. The flat of a
// regular octagon of breadth b is b (sqrt 2 - 1) wide, and the chamfer falls as far as it runs.
TEST(Shaped, AMouthWiderThanTheFlatBetweenChamfersIsMeasuredFromTheChamfer) {
    Piece piece = testing::twoPostsAndARail();
    statedPart(piece, "post").section = SectionForm::Octagonal;
    JointStatement joint;
    joint.tenoned = "rail";
    joint.mortised = "post";
    joint.sizes[SizeName::TenonThickness] = {SizeState::Stated, "1/2 in"};
    piece.joints = {joint};
    Spans& spans = std::get<Spans>(statedPart(piece, "rail").relation);
    for (const double off : {0.0, 0.4}) {
        spans.set = {Side::Centre, std::to_string(off) + " in"};
        const ResolvedPiece made = testing::resolved(piece);
        const Mortise& mortise = testing::jointNamed(made, "rail into post, right").mortise;
        const double halfFlat = 2.0 * (std::sqrt(2.0) - 1) / 2;
        const double lip = off + 0.25;
        EXPECT_NEAR(mortise.below.inches(), std::max(0.0, lip - halfFlat), 1e-3) << off;
        // The far side of an octagon is the same flat: what lies behind the lip is less by as much.
        EXPECT_NEAR(mortise.there.inches(), 2.0 - 2 * mortise.below.inches(), 2e-3) << off;
    }
}

TEST(Shaped, ATenonPastAnArchedEdgeIsTold) {
    Piece piece = testing::twoPostsAndARail();
    statedPart(piece, "rail").shape[Face::FaceEdge] = {
        {Datum::Start, "", "1 in", Run::Arc, "1 in", {}},
        {Datum::Far, "", "1 in", Run::Line, "", {}}};
    EXPECT_TRUE(ofRule(findings(piece), RuleId::ShoulderLeast).empty()) << "by rule it keeps clear";

    JointStatement joint;
    joint.tenoned = "rail";
    joint.mortised = "post";
    joint.sizes[SizeName::ShoulderFaceEdge] = {SizeState::Stated, "3/4 in"};
    piece.joints = {joint};
    EXPECT_EQ(ofRule(findings(piece), RuleId::ShoulderLeast).size(), 1u);

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
