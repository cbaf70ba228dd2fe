#include "core/resolve/set_up.h"

#include <algorithm>
#include <cmath>
#include <set>

#include <gtest/gtest.h>

#include "core/resolve/frames.h"
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
            EXPECT_EQ(text.find("from the left"), std::string::npos) << text;
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

// One that lies across the part: the chisel, set once against the fence, makes no more of it than
// its own width.
TEST(SetUpOfAMortiseAcrossThePart, TellsBothItsSides) {
    const Piece piece = testing::sample("luggage_stand");
    const ResolvedPiece resolved = testing::resolved(piece);
    int seen = 0;
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        for (const MortiseSolid& mortise : resolved.parts[resolved.joints[i].mortised].mortises) {
            const int into = inwardOf(mortise.face).axis;
            if (mortise.joint != i || mortise.isHaunch || mortise.exact || into == 0) {
                continue;
            }
            const int across = 3 - into;
            const double wide = mortise.box.size()[across];
            if (wide < 1.5 * resolved.joints[i].mortise.width.value.mm()) {
                continue;
            }
            const std::vector<shoulderline::SetUp> all = setUpsOf(resolved, i);
            EXPECT_TRUE(std::any_of(all.begin(), all.end(), [&](const shoulderline::SetUp& one) {
                return std::abs((one.reach - one.fence).mm() - wide) < 1e-6;
            })) << resolved.joints[i].name;
            ++seen;
        }
    }
    EXPECT_GT(seen, 0);
}

// The raked chair's back post runs back by 3 in from 17 1/4 in above the floor to its top at 36 in:
// tan = 3 / 18.75. The crest rail's mortise is 1 7/8 by 5/16 along it.
TEST(SetUpOfATurnedMouth, TellsItsMiddleItsLengthAndItsTurn) {
    const Piece piece = testing::sample("raked_chair");
    const ResolvedPiece resolved = testing::resolved(piece);
    int seen = 0;
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = resolved.joints[i];
        if (resolved.parts[joint.tenoned].name != "crest rail") {
            continue;
        }
        const std::vector<shoulderline::SetUp> all = setUpsOf(resolved, i);
        const auto mortise = std::find_if(
            all.begin(), all.end(), [](const auto& one) { return one.work == "mortise"; });
        ASSERT_NE(mortise, all.end());
        EXPECT_NEAR(std::abs(std::tan(mortise->turn.radians())), 3.0 / 18.75, 1e-9);
        EXPECT_NEAR(mortise->mouth.inches(), 1.875, 1e-9);
        const MortiseSolid* solid = nullptr;
        for (const MortiseSolid& one : resolved.parts[joint.mortised].mortises) {
            solid = one.joint == i ? &one : solid;
        }
        ASSERT_NE(solid, nullptr);
        const Vec3 middle = mouthOf(*solid).centre();
        EXPECT_NEAR(mortise->from.mm(), middle.x, 1e-6);
        EXPECT_NEAR(mortise->fence.mm(), middle.y, 1e-6);
        const std::string text = setUpText(*mortise, resolved, piece.style);
        EXPECT_NE(text.find("1 7/8 long, turned 9.1°, 1 in 6.3"), std::string::npos) << text;
        ++seen;
    }
    EXPECT_EQ(seen, 2);
}

TEST(SetUpOfASlopingHaunch, SaysThatItSlopesToNothing) {
    const Piece piece = testing::sample("luggage_stand");
    const ResolvedPiece resolved = testing::resolved(piece);
    int seen = 0;
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        for (const shoulderline::SetUp& one : setUpsOf(resolved, i)) {
            if (one.work == "mortise for the haunch" &&
                resolved.joints[i].has(JointFeature::SlopingHaunch)) {
                EXPECT_NE(setUpText(one, resolved, piece.style).find("sloping to nothing"),
                          std::string::npos);
                ++seen;
            }
        }
    }
    EXPECT_GT(seen, 0);
}

// The bench's bearers and middle rail are halved into one another from above and from below.
TEST(SetUpOfACrossLap, TellsTheEdgeThatItIsSawnInto) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("bench"));
    std::set<std::string> works;
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        if (resolved.joints[i].kind == JointKind::CrossLap) {
            for (const shoulderline::SetUp& one : setUpsOf(resolved, i)) {
                if (one.isTrench) {
                    works.insert(one.work);
                }
            }
        }
    }
    EXPECT_EQ(works,
              (std::set<std::string>{"cross lap in the back edge", "cross lap in the face edge"}));
}

}  // namespace
}  // namespace shoulderline
