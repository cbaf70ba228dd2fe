#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/resolve/frames.h"
#include "core/resolve/joint_angles.h"
#include "core/resolve/set_up.h"
#include "tests/support/pieces.h"

// How tools are set for what lies out of square: checked against the angles that the piece states
// and against the solids, by trigonometry.
namespace shoulderline {
namespace {

using testing::resolved;
using testing::sample;

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

bool isBetween(const ResolvedPiece& piece,
               const ResolvedJoint& joint,
               const std::string& tenoned,
               const std::string& mortised) {
    return piece.parts[joint.tenoned].of == tenoned && piece.parts[joint.mortised].of == mortised;
}

// The stool's front legs rake by 5 degrees and splay by 8.7 as stated; so do their bores in the
// level seat, which runs from front to back.
TEST(LeanOfABore, IsTheRakeAndTheSplayOfItsLeg) {
    const ResolvedPiece made = resolved(sample("pilot_stool"));
    int seen = 0;
    for (const ResolvedJoint& joint : made.joints) {
        if (!isBetween(made, joint, "front leg", "seat")) {
            continue;
        }
        const JointAngles angles = anglesOf(made, joint);
        EXPECT_NEAR(std::abs(angles.lean.along.degrees()), 5.0, 1e-9);
        EXPECT_NEAR(std::abs(angles.lean.across.degrees()), 8.7, 1e-9);
        EXPECT_EQ(angles.mouthTurn.radians(), 0.0) << "a round mouth turns to nothing";
        const std::string text = jointSettings(made, joint).front();
        EXPECT_TRUE(has(text, "bore: table tilted 10°")) << text;
        EXPECT_TRUE(has(text, "leans 5°")) << text;
        EXPECT_TRUE(has(text, "8.7°")) << text;
        ++seen;
    }
    EXPECT_EQ(seen, 2);
}

// tan2 of one tilt of the table is the sum of both leans'; worked out here from the solids' axes.
TEST(LeanOfAMortise, IsTheTiltOfTheTable) {
    int seen = 0;
    for (const char* name : {"pilot_stool", "raked_chair", "side_chair"}) {
        const ResolvedPiece made = resolved(sample(name));
        for (const ResolvedJoint& joint : made.joints) {
            const JointAngles angles = anglesOf(made, joint);
            EXPECT_NEAR(angles.lean.tilt().radians(), angles.mortise.radians(), 1e-9) << joint.name;
            seen += angles.lean.isTilted() ? 1 : 0;
        }
    }
    EXPECT_GT(seen, 5);
}

// A tenon square to its post is out of line with its rail, so its cheeks run from one line at the
// shoulder to another at the end: over its depth by the tangent of the angle.
TEST(CheekOutOfLine, IsGaugedAtTheShoulderAndAtTheEnd) {
    const Piece piece = sample("raked_chair");
    const ResolvedPiece made = resolved(piece);
    int seen = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const ResolvedJoint& joint = made.joints[i];
        const double runOut = anglesOf(made, joint).runOut.radians();
        for (const shoulderline::SetUp& one : setUpsOf(made, i)) {
            if (!has(one.work, "cheek at the ") || runOut < 1e-6) {
                EXPECT_EQ(one.lean.radians(), 0.0) << joint.name << ", " << one.work;
                continue;
            }
            // All of the run-out is in plan, so the cheeks at the edges stay in line.
            const bool isOnSide = has(one.work, "side");
            EXPECT_NEAR(std::abs(one.lean.radians()), isOnSide ? runOut : 0.0, 1e-9) << one.work;
            if (isOnSide) {
                EXPECT_NEAR(std::abs((one.fenceAtEnd - one.fence).mm()),
                            one.depth.mm() * std::sin(runOut),
                            1e-6);
                const std::string text = setUpText(one, made, piece.style);
                EXPECT_TRUE(has(text, " at the shoulder and ")) << text;
                EXPECT_TRUE(has(text, "4.6°")) << text;
                ++seen;
            }
        }
    }
    EXPECT_EQ(seen, 4) << "two cheeks at each of two joints";
}

// What the saw leaves between its two cheeks at the end of the tenon is where the solid's end is.
TEST(CheekOutOfLine, EndsWhereTheTenonDoes) {
    const ResolvedPiece made = resolved(sample("raked_chair"));
    int seen = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        if (!made.joints[i].has(JointFeature::SquareToPost)) {
            continue;
        }
        const ResolvedPart& part = made.parts[made.joints[i].tenoned];
        for (const TenonSolid& tenon : part.tenons) {
            if (tenon.joint != i || !tenon.exact) {
                continue;
            }
            double middle = 0.0;
            int corners = 0;
            const Box bounds = tenon.exact->bounds();
            const bool isAtStart = bounds.centre().x < 0.0;
            for (const Vec3& p : tenon.exact->vertices()) {
                const double fromEnd = isAtStart ? p.x - bounds.min.x : bounds.max.x - p.x;
                if (fromEnd < 2.0) {
                    middle += p.z;
                    ++corners;
                }
            }
            double cheeks = 0.0;
            for (const shoulderline::SetUp& one : setUpsOf(made, i)) {
                cheeks += one.lean.radians() != 0.0 ? one.fenceAtEnd.mm() / 2.0 : 0.0;
            }
            EXPECT_EQ(corners, 4);
            EXPECT_NEAR(middle / corners, cheeks, 0.05);
            ++seen;
        }
    }
    EXPECT_GT(seen, 0);
}

// Common practice: the ends of a mortise are pared back for the wedges, as far as its tenon
// spreads.
TEST(WedgedMortise, HasItsEndsPared) {
    const Piece piece = sample("luggage_stand");
    const ResolvedPiece made = resolved(piece);
    int seen = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const Size* flare = made.joints[i].size(SizeName::WedgeFlare);
        const std::vector<shoulderline::SetUp> all = setUpsOf(made, i);
        const auto pared = std::find_if(
            all.begin(), all.end(), [](const auto& one) { return one.pared > kLengthTolerance; });
        EXPECT_EQ(flare != nullptr, pared != all.end()) << made.joints[i].name;
        if (flare != nullptr && pared != all.end()) {
            EXPECT_EQ(pared->pared, flare->value);
            EXPECT_TRUE(has(setUpText(*pared, made, piece.style),
                            "on the " +
                                std::string(wordFor(oppositeOf(made.joints[i].mortise.face))) +
                                ", where the tenon comes out, sloping to nothing at the mouth"));
            ++seen;
        }
    }
    EXPECT_GT(seen, 0);
}

// The outer end of a tusk's slot slopes as its wedge does: over the tenon's thickness by the taper.
TEST(SlotForAWedge, SlopesAsTheWedgeDoes) {
    const Piece piece = sample("bed_frame");
    const ResolvedPiece made = resolved(piece);
    int seen = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        for (const shoulderline::SetUp& one : setUpsOf(made, i)) {
            if (!has(one.work, "slot for the wedge")) {
                continue;
            }
            EXPECT_NEAR((one.to - one.slopesTo).mm(),
                        made.joints[i].tenon.thickness.value.mm() *
                            testing::ruleBook()[RuleId::TuskTaper].value,
                        1e-6);
            EXPECT_TRUE(has(setUpText(one, made, piece.style), "its outer end slopes to "));
            ++seen;
        }
    }
    EXPECT_GT(seen, 0);
}

// The saw's blade leans by 4.59 degrees where the line on the side is 4.63 out of square, as the
// end is mitred too: two runs beside the same degrees would look like a fault.
TEST(SlopeText, HasOneRunForTheSameDegrees) {
    EXPECT_EQ(slopeText(Angle::degrees(4.59)), slopeText(Angle::degrees(4.63)));
    EXPECT_EQ(slopeText(Angle::degrees(0.755)), slopeText(Angle::degrees(0.765)));
    EXPECT_EQ(slopeText(Angle::radians(std::atan(1.0 / 12.0))), "4.8\u00b0, 1 in 12")
        << "as stated";
}

}  // namespace
}  // namespace shoulderline
