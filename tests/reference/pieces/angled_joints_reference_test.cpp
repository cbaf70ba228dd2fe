#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/check/neighbours.h"
#include "core/check/proportions.h"
#include "core/resolve/joint_angles.h"
#include "tests/reference/pieces/seat_frame.h"
#include "tests/reference/solid_geometry/occt_solids.h"
#include "tests/support/pieces.h"

// Rails that meet leaning posts at an angle, against Open CASCADE Technology 7.6 and against
// spherical trigonometry.
namespace shoulderline {
namespace {

using reference::kStances;
using reference::seatFrame;
using reference::Solid;
using reference::SolidPlan;
using reference::Stance;

class AngledJoints : public ::testing::TestWithParam<Stance> {};
INSTANTIATE_TEST_SUITE_P(OpenCascade, AngledJoints, ::testing::ValuesIn(kStances));

// The ends of a rail lie on the faces of its posts: what the kernel leaves of a longer rail between
// the two posts has the volume of ours.
TEST_P(AngledJoints, RailsEndOnTheFacesOfTheirPosts) {
    const ResolvedPiece piece = testing::resolved(seatFrame(GetParam()));
    ASSERT_TRUE(piece.troubles.empty()) << piece.troubles.front().message;
    for (const ResolvedPart& rail : piece.parts) {
        if (rail.role != Role::Rail) {
            continue;
        }
        Box longer = rail.bodyBox();
        longer.min.x -= 10.0;  // ends within the posts
        longer.max.x += 10.0;
        SolidPlan plan{longer, rail.frame, {}, {}};
        Solid left(plan);
        for (const ResolvedPart& post : piece.parts) {
            if (post.role == Role::Post) {
                left = reference::cut(left, Solid(SolidPlan{post.body, post.frame, {}, {}}));
            }
        }
        const double theirs = left.volume();
        EXPECT_NEAR(rail.body.volume().value(), theirs, 1e-6 * theirs) << rail.name;
    }
}

TEST_P(AngledJoints, VolumesHollowsAndWallsAreThoseOfTheKernel) {
    const ResolvedPiece piece = testing::resolved(seatFrame(GetParam()));
    for (std::size_t p = 0; p < piece.parts.size(); ++p) {
        const ResolvedPart& part = piece.parts[p];
        SolidPlan plan{part.body, part.frame, {}, {}};
        for (const TenonSolid& tenon : part.tenons) {
            plan.added.push_back(tenon.solid());
        }
        for (const MortiseSolid& mortise : part.mortises) {
            plan.cutAway.push_back(mortise.solid());
        }
        const double theirs = Solid(plan).volume();
        EXPECT_NEAR(volumeAsMade(part), theirs, 1e-6 * theirs) << part.name;
        for (const Meeting& meeting : meetingsIn(piece, p)) {
            const Solid first(SolidPlan{meeting.first.solid(), part.frame, {}, {}});
            const Solid second(SolidPlan{meeting.second.solid(), part.frame, {}, {}});
            const double shared = reference::common(first, second).volume();
            EXPECT_NEAR(meeting.shared, shared, 1e-6 * std::max(shared, 1.0)) << part.name;
            EXPECT_NEAR(meeting.wall, reference::minimumDistance(first, second), 1e-6);
        }
    }
}

// A tenon fills its mortise but for the room at the bottom: nothing of it stands in the wood of the
// post, and all of it past the face stands in the mortise.
TEST_P(AngledJoints, TenonsStandWholeInTheirMortises) {
    const ResolvedPiece piece = testing::resolved(seatFrame(GetParam()));
    for (const ResolvedPart& part : piece.parts) {
        for (const TenonSolid& tenon : part.tenons) {
            const ResolvedPart& post = piece.parts[piece.joints[tenon.joint].mortised];
            const Solid ours(SolidPlan{tenon.solid(), part.frame, {}, {}});
            SolidPlan wood{post.body, post.frame, {}, {}};
            for (const MortiseSolid& mortise : post.mortises) {
                wood.cutAway.push_back(mortise.solid());
            }
            EXPECT_NEAR(reference::common(ours, Solid(wood)).volume(), 0.0, 1e-3) << part.name;
            const Solid whole(SolidPlan{post.body, post.frame, {}, {}});
            EXPECT_NEAR(reference::common(ours, whole).volume(), tenon.solid().volume(), 1e-3)
                << part.name << ": it begins on the face";
        }
    }
}

// The corner where three planes meet: the face side, the face edge (square to it), and the end.
// Their lines make a spherical triangle with a right angle at the arris. With a and b the angles
// there between the arris and the end's lines on face side and face edge, Napier's rules give the
// angle A between the end and the face side: tan A = tan b / sin a.
TEST_P(AngledJoints, SawSettingsFollowNapiersRules) {
    const ResolvedPiece piece = testing::resolved(seatFrame(GetParam()));
    for (const ResolvedPart& rail : piece.parts) {
        if (rail.role != Role::Rail) {
            continue;
        }
        for (const End end : {End::Start, End::Far}) {
            const EndAngles angles = endAnglesOf(rail, end);
            const double a = M_PI / 2 - angles.lines[0].fromSquare.radians();
            const double b = M_PI / 2 - angles.lines[2].fromSquare.radians();
            const double between = std::atan2(std::sin(b), std::cos(b) * std::sin(a));
            EXPECT_NEAR(angles.mitre.radians(), angles.lines[0].fromSquare.radians(), 1e-12);
            EXPECT_NEAR(angles.tilt.degrees(), 90.0 - between * 180 / M_PI, 1e-9) << rail.name;
        }
    }
}

class AskewSamples : public ::testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(OpenCascade,
                         AskewSamples,
                         ::testing::Values("raked_chair", "pilot_stool", "side_chair"));

// The raked chair: back posts bent at the seat, the seat narrower behind, a crest rail that leans;
// the stool: three round legs that splay.
TEST_P(AskewSamples, AreSoundAndHaveTheVolumesOfTheKernel) {
    const Piece stated = testing::sample(GetParam());
    for (const Finding& finding : testing::findings(stated)) {
        EXPECT_NE(finding.severity, Severity::MustMend) << finding.message;
    }
    const ResolvedPiece piece = testing::resolved(stated);
    for (const ResolvedPart& part : piece.parts) {
        SolidPlan plan{part.body, part.frame, {}, {}};
        for (const TenonSolid& tenon : part.tenons) {
            plan.added.push_back(tenon.solid());
        }
        for (const MortiseSolid& mortise : part.mortises) {
            plan.cutAway.push_back(mortise.solid());
        }
        for (const ResolvedCut& hole : part.cuts) {
            plan.cutAway.push_back(hole.solid());
        }
        const double theirs = Solid(plan).volume();
        double facets = part.body.isBox() ? 0.0 : 0.02 * part.thickness.value.mm();
        // Of an arched edge facets within kArcSagitta go with what is mortised in it.
        for (const MortiseSolid& mortise : part.mortises) {
            const Vec3 size = mortise.box.size();
            facets +=
                part.body.face.isConvex()
                    ? 0.0
                    : kArcSagitta * std::min({size.x * size.y, size.y * size.z, size.x * size.z});
        }
        EXPECT_NEAR(volumeAsMade(part), theirs, 1e-6 * theirs + facets) << part.name;
    }
}

// Where rails come into the front posts of the raked chair out of square, with their ends mitred:
// both tenons stand whole in their mortises and nowhere in one another, and the parts have the
// kernel's volumes.
TEST(MitredAskewEnds, KeepClearOfOneAnotherInTheKernel) {
    Piece stated = testing::sample("raked_chair");
    for (JointStatement& joint : stated.joints) {
        if (joint.mortised == "front post" && joint.tenoned != "side stretcher") {
            joint.features = {JointFeature::Mitred};
            joint.sizes.erase(SizeName::TenonLength);
        }
    }
    const ResolvedPiece piece = testing::resolved(stated);
    ASSERT_TRUE(piece.troubles.empty());
    std::vector<Solid> mitred;
    for (const ResolvedPart& part : piece.parts) {
        SolidPlan plan{part.body, part.frame, {}, {}};
        for (const TenonSolid& tenon : part.tenons) {
            plan.added.push_back(tenon.solid());
            const ResolvedJoint& joint = piece.joints[tenon.joint];
            if (!joint.has(JointFeature::Mitred)) {
                continue;
            }
            ASSERT_TRUE(tenon.exact) << part.name << ": its corner is off";
            mitred.emplace_back(SolidPlan{tenon.solid(), part.frame, {}, {}});
            const ResolvedPart& post = piece.parts[joint.mortised];
            SolidPlan wood{post.body, post.frame, {}, {}};
            for (const MortiseSolid& mortise : post.mortises) {
                wood.cutAway.push_back(mortise.solid());
            }
            EXPECT_NEAR(reference::common(mitred.back(), Solid(wood)).volume(), 0.0, 1e-3)
                << part.name;
        }
        for (const MortiseSolid& mortise : part.mortises) {
            plan.cutAway.push_back(mortise.solid());
        }
        for (const ResolvedCut& hole : part.cuts) {
            plan.cutAway.push_back(hole.solid());
        }
        const double theirs = Solid(plan).volume();
        const double facets = part.body.isBox() ? 0.0 : 0.02 * part.thickness.value.mm();
        EXPECT_NEAR(volumeAsMade(part), theirs, 1e-6 * theirs + facets) << part.name;
    }
    ASSERT_EQ(mitred.size(), 4u) << "two rails into each of two posts";
    for (std::size_t i = 0; i < mitred.size(); ++i) {
        for (std::size_t k = i + 1; k < mitred.size(); ++k) {
            EXPECT_NEAR(reference::common(mitred[i], mitred[k]).volume(), 0.0, 1e-6);
        }
    }
}

// The foot of the back post slopes by atan(kick / its length); the stretcher's tenon goes in level,
// so its mouth there is its width drawn out by the slope: w / cos.
TEST(RakedChair, MouthOnTheSlopingFootIsDrawnOutByTheSlope) {
    const ResolvedPiece piece = testing::resolved(testing::sample("raked_chair"));
    const ResolvedPart& post = testing::partNamed(piece, "back post, right");
    const double foot = (17.25 - 0.75 - 2.5 - 5.0) * 25.4;  // up to the rails' zone, less 5 in
    const double slope = std::atan(1.25 * 25.4 / foot);
    int seen = 0;
    for (const MortiseSolid& mortise : post.mortises) {
        const ResolvedJoint& joint = piece.joints[mortise.joint];
        if (piece.parts[joint.tenoned].of == "side stretcher") {
            const Box mouth = mouthOf(mortise);
            const Vec3 size = mouth.size();
            EXPECT_NEAR(
                std::hypot(size.x, size.y), joint.tenon.width.value.mm() / std::cos(slope), 1e-6);
            ++seen;
        }
    }
    EXPECT_EQ(seen, 1);
}

// Above the seat the post leans, so that square to it its 1 5/8 in are narrower: the crest's tenon,
// in the middle of it and leaning with it, has (1 5/8 cos a - t) / 2 beside it.
TEST(RakedChair, WallBesideTheCrestsTenonIsTakenSquareToThePost) {
    const ResolvedPiece piece = testing::resolved(testing::sample("raked_chair"));
    const double lean = std::atan(3.0 / (36.0 - 17.25));
    int seen = 0;
    for (std::size_t i = 0; i < piece.joints.size(); ++i) {
        const ResolvedJoint& joint = piece.joints[i];
        if (piece.parts[joint.tenoned].of != "crest rail") {
            continue;
        }
        const std::vector<Proportion> all = proportionsOf(piece, i);
        const auto wall = std::find_if(all.begin(), all.end(), [](const Proportion& one) {
            return one.rule == RuleId::MortiseWallLeast;
        });
        ASSERT_NE(wall, all.end());
        EXPECT_NEAR(wall->value,
                    (1.625 * 25.4 * std::cos(lean) - joint.tenon.thickness.value.mm()) / 2,
                    1e-6);
        ++seen;
    }
    EXPECT_EQ(seen, 2);
}

// Where the legs lean by rake r and splay s and the rails run square to the piece, the front rail's
// end leaves the square by s on its face and not at all on its edge; the side rail's by t with
// tan t = tan r cos^2 s on its face (the leg's section keeps its front edge to the front).
TEST(LeaningLegs, GiveTheirRailsTheAnglesOfTheStance) {
    const ResolvedPiece piece = testing::resolved(seatFrame({"7 deg", "5 deg", "0 in", false}));
    const auto angleOn = [&](const char* rail, std::size_t side) {
        return std::abs(endAnglesOf(testing::partNamed(piece, rail), End::Start)
                            .lines[side]
                            .fromSquare.degrees());
    };
    EXPECT_NEAR(angleOn("front rail", 0), 5.0, 1e-9);
    EXPECT_NEAR(angleOn("front rail", 2), 0.0, 1e-9);
    const double r = 7 * M_PI / 180;
    const double s = 5 * M_PI / 180;
    EXPECT_NEAR(angleOn("side rail, right", 0),
                std::atan(std::tan(r) * std::cos(s) * std::cos(s)) * 180 / M_PI,
                1e-9);
}

// The angle at which a leg stands from the plumb line: tan^2 = tan^2 rake + tan^2 splay, as for any
// two slopes at right angles.
TEST(LeaningLegs, StandAtTheResultantOfRakeAndSplay) {
    const ResolvedPiece piece = testing::resolved(seatFrame({"11 deg", "6 deg", "0 in", false}));
    const ResolvedPart& post = testing::partNamed(piece, "front leg, right");
    const double resultant =
        std::atan(std::hypot(std::tan(11 * M_PI / 180), std::tan(6 * M_PI / 180)));
    EXPECT_NEAR(std::acos(post.frame.x.z), resultant, 1e-12);
    EXPECT_NEAR(post.frame.x.x / post.frame.x.z, -std::tan(6 * M_PI / 180), 1e-12)
        << "to the middle going up";
    EXPECT_NEAR(post.frame.x.y / post.frame.x.z, std::tan(11 * M_PI / 180), 1e-12)
        << "back going up";
    const Box bounds = boundsInSpace(post);
    EXPECT_NEAR(bounds.min.z, 0.0, 1e-9);
    EXPECT_NEAR(bounds.max.z, 20 * 25.4, 1e-9) << "its ends are level";
}

}  // namespace
}  // namespace shoulderline
