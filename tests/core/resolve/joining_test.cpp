#include <algorithm>

#include <gtest/gtest.h>

#include "core/resolve/ripple.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::jointNamed;
using testing::partNamed;
using testing::resolved;
using testing::statedPart;
using testing::twoPostsAndARail;

double inches(const Size& size) {
    return size.value.inches();
}

// Worked by hand: rail 7/8 x 3, flush in front, top at 18 in; post 2 in square. Tenon 5/16 thick
// (one third is 7/24), 1 7/8 wide (six times 5/16), 1 5/16 long (two thirds of 2 in is 1 1/3, down
// to the sixteenth). Its mouth begins (7/8 - 5/16) / 2 = 9/32 behind the front, and (3 - 1 7/8) / 2
// = 9/16 above the lower edge of the rail at 15 in.
TEST(Joining, RailIntoPostIsSetOutAsByHand) {
    const ResolvedPiece piece = resolved(twoPostsAndARail());
    const ResolvedJoint& joint = jointNamed(piece, "rail into post, right");

    EXPECT_EQ(joint.kind, JointKind::Blind);
    EXPECT_NEAR(inches(joint.tenon.thickness), 5.0 / 16, 1e-9);
    EXPECT_NEAR(inches(joint.tenon.width), 1.875, 1e-9);
    EXPECT_NEAR(inches(joint.tenon.length), 1.3125, 1e-9);
    EXPECT_EQ(joint.mortise.face, Face::BackSide) << "the inner face of a post marked on its outer";
    EXPECT_EQ(joint.mortise.reference, Face::FaceEdge);
    EXPECT_NEAR(inches(joint.mortise.fromFace), 9.0 / 32, 1e-9);
    EXPECT_NEAR(inches(joint.mortise.fromStart), 15.5625, 1e-9);
    EXPECT_NEAR(joint.mortise.fromFar.inches(), 24 - 15.5625 - 1.875, 1e-9);
    EXPECT_NEAR(inches(joint.mortise.depth), 1.375, 1e-9);
}

TEST(Joining, LengthOverTenonsIsShoulderLengthAndBothTenons) {
    const ResolvedPiece piece = resolved(twoPostsAndARail());
    const ResolvedPart& rail = partNamed(piece, "rail");

    EXPECT_NEAR(rail.length().inches(), 20 + 2 * 1.3125, 1e-9);
    EXPECT_EQ(rail.tenons.size(), 2u);
    EXPECT_EQ(partNamed(piece, "post, left").mortises.size(), 1u);
}

TEST(Joining, TenonFillsItsMortiseButForTheDepthLeftForGlue) {
    for (const char* name : testing::kSamples) {
        const ResolvedPiece piece = resolved(testing::sample(name));
        for (const ResolvedPart& part : piece.parts) {
            for (const MortiseSolid& mortise : part.mortises) {
                const ResolvedJoint& joint = piece.joints[mortise.joint];
                const bool isPlain = joint.kind == JointKind::Blind ||
                                     joint.kind == JointKind::Through ||
                                     joint.kind == JointKind::Stub;
                if (!isPlain || mortise.exact || mortise.isHaunch) {
                    continue;  // a flare, a slope, a haunch and a housing take more
                }
                const double clearance =
                    mortise.isThrough ? -joint.tenon.projection.value.mm()
                                      : (joint.mortise.depth.value - joint.tenon.length.value).mm();
                if (joint.mortise.below - joint.mortise.pastShoulder > kLengthTolerance) {
                    continue;  // on a shaped face it begins where the wood does
                }
                const double mouth =
                    joint.mortise.width.value.mm() * joint.mortise.length.value.mm();
                EXPECT_NEAR(mortise.box.volume() - mortise.tenon.volume(), clearance * mouth, 1e-6)
                    << joint.name;
            }
        }
    }
}

TEST(Joining, PairsAreJoinedAlike) {
    const ResolvedPiece piece = resolved(testing::sample("armchair"));
    const ResolvedJoint& right =
        jointNamed(piece, "side rail, upper, right into front post, right");
    const ResolvedJoint& left = jointNamed(piece, "side rail, upper, left into front post, left");

    EXPECT_EQ(right.tenon, left.tenon);
    EXPECT_EQ(right.mortise, left.mortise);
}

TEST(Joining, ThickerRailStockMovesEveryJointOfTheRails) {
    Piece piece = testing::sample("armchair");
    const ResolvedPiece before = resolved(piece);
    testing::statedMeasure(piece, "rail thickness").expression = "1 1/8 in";
    const ResolvedPiece after = resolved(piece);

    EXPECT_NEAR(
        inches(
            jointNamed(before, "side rail, upper, right into front post, right").tenon.thickness),
        0.3125,
        1e-9);
    EXPECT_NEAR(
        inches(jointNamed(after, "side rail, upper, right into front post, right").tenon.thickness),
        0.375,
        1e-9);
    EXPECT_NEAR(
        inches(
            jointNamed(after, "side rail, upper, right into front post, right").mortise.fromFace),
        0.625,
        1e-9);
    const std::vector<Moved> moved = ripple(before, after);
    EXPECT_GT(moved.size(), 20u);
    EXPECT_TRUE(ripple(before, before).empty());
    const auto it = std::find_if(moved.begin(), moved.end(), [](const Moved& m) {
        return m.subject == "side rail, upper into front post" && m.size == "tenon thickness";
    });
    ASSERT_NE(it, moved.end());
    EXPECT_NEAR(it->before->inches(), 0.3125, 1e-9);
    EXPECT_NEAR(it->after->inches(), 0.375, 1e-9);
}

TEST(Joining, StatedKindMakesAThroughTenon) {
    Piece piece = twoPostsAndARail();
    JointStatement statement;
    statement.tenoned = "rail";
    statement.mortised = "post";
    statement.kind = JointKind::Through;
    piece.joints.push_back(statement);

    const ResolvedPiece now = resolved(piece);

    EXPECT_NEAR(inches(jointNamed(now, "rail into post, left").tenon.length), 2.1875, 1e-9);
    EXPECT_TRUE(partNamed(now, "post, left").mortises.front().isThrough);
}

TEST(Joining, AStatedMouthKeepsTheTenonsMiddle) {
    Piece piece = twoPostsAndARail();
    JointStatement statement;
    statement.tenoned = "rail";
    statement.mortised = "post";
    statement.sizes[SizeName::MortiseWidth] = {SizeState::AsFound, "3/8 in"};
    statement.sizes[SizeName::MortiseLength] = {SizeState::Stated, "2 in"};
    piece.joints.push_back(statement);

    const ResolvedPiece now = resolved(piece);
    const MortiseSolid& mortise = partNamed(now, "post, right").mortises.front();

    const Vec3 middles =
        (mortise.box.min + mortise.box.max) * 0.5 - (mortise.tenon.min + mortise.tenon.max) * 0.5;
    EXPECT_NEAR(middles.x, 0, 1e-9);
    EXPECT_NEAR(middles.y, 0, 1e-9);
    EXPECT_NEAR(mortise.box.size().x / 25.4, 2.0, 1e-9);
    EXPECT_NEAR(mortise.box.size().y / 25.4, 0.375, 1e-9);
    EXPECT_NEAR(inches(jointNamed(now, "rail into post, right").mortise.fromFace), 0.25, 1e-9)
        << "9/32 less 1/32";
}

TEST(Joining, ShouldersThatContradictTheTenonAreATroubleAtTheJoint) {
    Piece piece = twoPostsAndARail();
    JointStatement statement;
    statement.tenoned = "rail";
    statement.mortised = "post";
    statement.sizes[SizeName::ShoulderFaceSide] = {SizeState::Stated, "1/2 in"};
    statement.sizes[SizeName::ShoulderBackSide] = {SizeState::Stated, "1/2 in"};
    piece.joints.push_back(statement);

    const ResolvedPiece now = resolved(piece);

    ASSERT_FALSE(now.troubles.empty());
    EXPECT_NE(now.troubles.front().message.find("leave no tenon"), std::string::npos);
    EXPECT_NE(now.troubles.front().place.find("rail into post"), std::string::npos);
}

TEST(Joining, HouseRuleChangesWhatTheRulesGive) {
    Piece piece = twoPostsAndARail();
    piece.houseRules.push_back({"mortise.depth.extra", "1/8 in", "hollow chisel", ""});
    piece.houseRules.push_back({"tenon.thickness.share", "1/2", "", ""});

    const ResolvedJoint joint = jointNamed(resolved(piece), "rail into post, left");

    EXPECT_NEAR((joint.mortise.depth.value - joint.tenon.length.value).inches(), 0.125, 1e-9);
    EXPECT_NEAR(inches(joint.tenon.thickness), 0.375, 1e-9)
        << "half of 7/8 is 7/16; 3/8 and 1/2 are equally near, the narrower is taken";
}

TEST(Joining, TheMakersOwnRackDecides) {
    Piece piece = twoPostsAndARail();
    piece.rack = {"1/4 in", "1/2 in"};

    EXPECT_NEAR(
        inches(jointNamed(resolved(piece), "rail into post, left").tenon.thickness), 0.25, 1e-9);
}

TEST(Joining, MetricPieceUsesMetricChiselsAndGrid) {
    const ResolvedPiece piece = resolved(testing::sample("table"));
    const ResolvedJoint& joint = jointNamed(piece, "end rail, right into front leg, right");

    EXPECT_NEAR(joint.tenon.thickness.value.mm(), 8, 1e-9);
    EXPECT_NEAR(joint.tenon.length.value.mm(), 42.5, 1e-9)
        << "two thirds of 64 is 42.67, down to the half millimetre";
}

TEST(Joining, RestsStatedBetweenPartsThatTouchIsAJoint) {
    const ResolvedPiece piece = resolved(testing::sample("armchair"));
    EXPECT_EQ(jointNamed(piece, "front cleat on front rail").kind, JointKind::Screwed);
}

TEST(PartVolume, IsBodyAndTenonsLessMortises) {
    const ResolvedPiece piece = resolved(twoPostsAndARail());
    const double cubicInch = 25.4 * 25.4 * 25.4;

    EXPECT_NEAR(volumeAsMade(partNamed(piece, "post, right")) / cubicInch,
                2 * 2 * 24 - 0.3125 * 1.875 * 1.375,
                1e-9);
    EXPECT_NEAR(volumeAsMade(partNamed(piece, "rail")) / cubicInch,
                20 * 3 * 0.875 + 2 * 0.3125 * 1.875 * 1.3125,
                1e-9);
}

TEST(Ripple, APartThatGoesIsTold) {
    const Piece before = testing::pieceAt("tests/pieces/upright_chair");
    const Piece after = apply(before, RemovePart{"cross stretcher"}).value();

    const std::vector<Moved> moved = ripple(resolved(before), resolved(after));

    EXPECT_TRUE(std::any_of(moved.begin(), moved.end(), [](const Moved& m) {
        return m.subject == "cross stretcher" && !m.after;
    }));
}

// Fairham, Table framing: tenons are run in until they almost touch, and their ends mitred.
TEST(Mitred, TenonsInACornerPostRunOnToOneAnotherAndKeepAHairApart) {
    const ResolvedPiece piece = resolved(testing::sample("luggage_stand"));
    const ResolvedJoint& end = jointNamed(piece, "end rail, right into front post, right");
    const ResolvedPart& post = partNamed(piece, "front post, right");
    const auto tenonOf = [&](const ResolvedPart& part, std::size_t joint) {
        for (const TenonSolid& tenon : part.tenons) {
            if (tenon.joint == joint && !tenon.isHaunch) {
                return tenon.solid().transformed(part.frame);
            }
        }
        return ConvexSolid::box({{0, 0, 0}, {1, 1, 1}});
    };
    const ConvexSolid one =
        tenonOf(partNamed(piece, "end rail, right"), piece.findJoint(end.name).value());
    const ConvexSolid other = tenonOf(partNamed(piece, "front rail"),
                                      piece.findJoint("front rail into front post, right").value());

    EXPECT_FALSE(intersection(one, other));
    EXPECT_NEAR(distance(one, other).distance, 1.0 / 32 * Length::kMmPerInch, 1e-6);
    EXPECT_GT(end.tenon.length.value, post.thickness.value * 0.6) << "longer than a square end";
    EXPECT_EQ(end.tenon.length.reasons.front().rule, RuleId::MitreLength);
}

TEST(Horn, IsLeftOnTheEndOfThePostThatTheRailIsNextTo) {
    const ResolvedPiece piece = resolved(testing::sample("luggage_stand"));
    const ResolvedPart& post = partNamed(piece, "front post, right");

    EXPECT_NEAR(post.farHorn.inches(), 1.0, 1e-9) << "its top";
    EXPECT_EQ(post.startHorn, Length());
}

TEST(Features, AreStatedForBothEndsAndTakenBackInOneStep) {
    const Piece piece = testing::sample("table");
    const SetJointFeatures edit{{{"end rail", "front leg", JointFeature::Haunch, true},
                                 {"front rail", "front leg", JointFeature::Haunch, true}}};
    const Piece haunched = shoulderline::apply(piece, edit).value();

    EXPECT_TRUE(jointNamed(resolved(haunched), "front rail into front leg, left")
                    .has(JointFeature::Haunch));
    Piece back = haunched;
    for (const SetJointFeature& one : edit.all) {
        SetJointFeature undo = one;
        undo.has = false;
        back = shoulderline::apply(back, undo).value();
    }
    EXPECT_EQ(back, piece);
}

}  // namespace
}  // namespace shoulderline
