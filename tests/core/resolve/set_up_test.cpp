#include "core/resolve/set_up.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

// Common practice: a leg that tapers is mortised, and a rail that is sawn to a curve tenoned, while
// the blank is square, since the fence needs a flat face that lies along the part.
namespace shoulderline {
namespace {

// The post's face side comes in evenly by 1/2 in over its whole length.
Piece onATaperedPost() {
    Piece piece = testing::twoPostsAndARail();
    for (Part& part : piece.parts) {
        if (part.role == Role::Post) {
            for (const Face face :
                 {Face::FaceEdge, Face::BackEdge, Face::FaceSide, Face::BackSide}) {
                part.shape[face] = {{Datum::Start, "", "1/2 in", Run::Line, "", {}},
                                    {Datum::Far, "", "0 in", Run::Line, "", {}}};
            }
        }
    }
    return piece;
}

SetUp mortiseOf(const ResolvedPiece& resolved) {
    const std::vector<SetUp> all = setUpsOf(resolved, 0);
    const auto it = std::find_if(all.begin(), all.end(), [](const shoulderline::SetUp& one) {
        return one.work == "mortise";
    });
    return it == all.end() ? SetUp{} : *it;
}

// Similar triangles: at h above the foot a side lies 1/2 in (1 - h / H) within the blank. The
// deepest place of the mouth is its lower end, from which the tool goes down to the same bottom.
TEST(SetUpBeforeTapering, IsDeeperByWhatTheTaperTakesOff) {
    const ResolvedPiece resolved = testing::resolved(onATaperedPost());
    ASSERT_TRUE(resolved.troubles.empty()) << resolved.troubles.front().message;
    const ResolvedJoint& joint = resolved.joints.front();
    const double height = resolved.parts[joint.mortised].shoulderLength.value.mm();
    const double taken = 12.7 * (1.0 - joint.mortise.fromStart.value.mm() / height);

    const shoulderline::SetUp mortise = mortiseOf(resolved);

    EXPECT_TRUE(mortise.beforeShaping);
    EXPECT_NEAR(mortise.depth.mm(), joint.mortise.depth.value.mm() + taken, 1e-4)
        << "the face is felt 1 µm within the mouth";
}

TEST(SetUpBeforeTapering, IsToldOnceForEachPartWithTheReason) {
    const Piece piece = onATaperedPost();
    const ResolvedPiece resolved = testing::resolved(piece);
    int told = 0;
    for (const std::string& text : setUpTexts(setUpsOf(resolved, 0), resolved, piece.style)) {
        told += text.find("while the blank is square, before it is shaped") != std::string::npos;
    }
    EXPECT_EQ(told, 1) << "the post is tapered, the rail is not";
}

TEST(SetUpBeforeTapering, IsNotToldOfStraightParts) {
    const Piece piece = testing::twoPostsAndARail();
    const ResolvedPiece resolved = testing::resolved(piece);
    for (const shoulderline::SetUp& one : setUpsOf(resolved, 0)) {
        EXPECT_FALSE(one.beforeShaping) << one.work;
    }
    for (const std::string& text : setUpTexts(setUpsOf(resolved, 0), resolved, piece.style)) {
        EXPECT_EQ(text.find("order"), std::string::npos) << text;
    }
}

// Common practice: a tilted table bores along the bit; the depth is set along it, also where the
// seat's outline is sawn afterwards.
TEST(SetUpOfATiltedBore, IsAsDeepAlongTheBitAsTheMortise) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("pilot_stool"));
    int seen = 0;
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = resolved.joints[i];
        if (resolved.parts[joint.mortised].of != "seat") {
            continue;
        }
        EXPECT_EQ(setUpsOf(resolved, i).front().depth, joint.mortise.depth.value);
        ++seen;
    }
    EXPECT_EQ(seen, 3);
}

// Common practice: what is bored into an end is gauged from the faces beside it.
TEST(SetUpInAnEnd, IsMeasuredFromAFaceAndNotAlongThePart) {
    const Piece piece = testing::sample("chart_cabinet");
    const ResolvedPiece resolved = testing::resolved(piece);
    int seen = 0;
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = resolved.joints[i];
        if (joint.kind != JointKind::Dowelled) {
            continue;
        }
        const ResolvedPart& rail = resolved.parts[joint.tenoned];
        for (const shoulderline::SetUp& one : setUpsOf(resolved, i)) {
            if (one.part != joint.tenoned) {
                continue;
            }
            const std::string text = setUpText(one, resolved, piece.style);
            EXPECT_EQ(one.along, Face::FaceEdge);
            EXPECT_LT(one.from, rail.width.value);
            EXPECT_NE(text.find(" from the face edge"), std::string::npos) << text;
            EXPECT_EQ(text.find("from the start"), std::string::npos) << text;
            ++seen;
        }
    }
    EXPECT_GT(seen, 0);
}

// Common practice: a housing is ploughed across the board against a batten, which is set from the
// board's end.
TEST(SetUpOfAHousing, IsFencedFromTheEndOfTheBoard) {
    const Piece piece = testing::sample("chart_cabinet");
    const ResolvedPiece resolved = testing::resolved(piece);
    int through = 0;
    int stopped = 0;
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = resolved.joints[i];
        if (joint.kind != JointKind::Housed) {
            continue;
        }
        const shoulderline::SetUp one = setUpsOf(resolved, i).front();
        EXPECT_EQ(one.reference, Face::StartEnd);
        EXPECT_EQ(one.fence, joint.mortise.fromStart.value);
        EXPECT_EQ(one.cutter, joint.mortise.width.value);
        const std::string text = setUpText(one, resolved, piece.style);
        if (const Size* short_ = joint.size(SizeName::StoppedBy)) {
            EXPECT_NE(text.find("from the face edge"), std::string::npos) << text;
            EXPECT_NEAR((one.to - one.from).mm(),
                        (resolved.parts[joint.mortised].width.value - short_->value).mm(),
                        1e-9);
            ++stopped;
        } else {
            EXPECT_EQ(one.from, one.to) << text;
            ++through;
        }
    }
    EXPECT_GT(through, 0);
    EXPECT_GT(stopped, 0);
}

// A round rail turned thinner to both ends: at its end it measures less than its blank, and so its
// shoulder does.
TEST(SetUpOfARoundTenon, HasTheShoulderThatTheTaperLeaves) {
    Piece piece = testing::twoPostsAndARail();
    for (Part& part : piece.parts) {
        if (part.role == Role::Rail) {
            part.section = SectionForm::Round;
            part.width = "1 1/4 in";
            part.thickness = "1 1/4 in";
            for (const Face face :
                 {Face::FaceEdge, Face::BackEdge, Face::FaceSide, Face::BackSide}) {
                part.shape[face] = {{Datum::Start, "", "1/8 in", Run::Line, "", {}},
                                    {Datum::Middle, "", "0 in", Run::Line, "", {}},
                                    {Datum::Far, "", "1/8 in", Run::Line, "", {}}};
            }
        }
    }
    JointStatement joint;
    joint.tenoned = "rail";
    joint.mortised = "post";
    joint.kind = JointKind::Round;
    joint.sizes[SizeName::Diameter] = {SizeState::Stated, "5/8 in"};
    piece.joints = {joint};
    const ResolvedPiece resolved = testing::resolved(piece);
    ASSERT_TRUE(resolved.troubles.empty()) << resolved.troubles.front().message;
    const ResolvedJoint& made = resolved.joints.front();

    int seen = 0;
    for (const shoulderline::SetUp& one : setUpsOf(resolved, 0)) {
        if (one.work == "shoulder of the round tenon") {
            EXPECT_NEAR(one.depth.mm(), (25.4 - made.tenon.thickness.value.mm()) / 2, 1e-6);
            ++seen;
        }
    }
    EXPECT_EQ(seen, 1);
}

}  // namespace
}  // namespace shoulderline
