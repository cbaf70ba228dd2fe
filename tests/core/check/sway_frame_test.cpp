// Statics of frames against worked examples and against a plane-frame program of the tests' own.

#include "core/check/sway_frame.h"

#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "tests/core/check/plane_frame.h"

namespace shoulderline {
namespace {

constexpr double kElasticity = 11000.0;

double stiffness(double thickness, double depth) {
    return kElasticity * thickness * depth * depth * depth / 12.0;
}

// Legs 38 x 38, rail 22 x 64 at 400 mm, stretcher 22 x 32 at 150 mm, 380 mm apart; 500 N at the
// rail.
SwayFrame chairSide(bool hasStretcher, bool frontRolls) {
    SwayFrame frame;
    frame.posts = {{stiffness(38, 38), frontRolls}, {stiffness(38, 38), false}};
    frame.members = {{0, 1, 400.0, 380.0, stiffness(22, 64)}};
    if (hasStretcher) {
        frame.members.push_back({0, 1, 150.0, 380.0, stiffness(22, 32)});
    }
    frame.forces = {{1, 400.0, 500.0}};
    return frame;
}

double sumOf(const std::vector<EndMoments>& moments) {
    double sum = 0.0;
    for (const EndMoments& one : moments) {
        sum += one.from + one.to;
    }
    return sum;
}

TEST(SwayFrame, WithoutAStretcherBothJointsCarryHalf) {
    const std::vector<EndMoments> moments = solveSway(chairSide(false, false));

    ASSERT_EQ(moments.size(), 1u);
    EXPECT_NEAR(moments[0].from, 100.0, 0.2);
    EXPECT_NEAR(moments[0].to, 100.0, 0.2);
}

TEST(SwayFrame, OnARollerTheBackJointCarriesAll) {
    const std::vector<EndMoments> moments = solveSway(chairSide(false, true));

    ASSERT_EQ(moments.size(), 1u);
    EXPECT_NEAR(moments[0].from, 0.0, 1e-9);
    EXPECT_NEAR(moments[0].to, 200.0, 1e-9);
}

// The figures are those of a plane-frame program in which members stretch a little: within 1 %.
TEST(SwayFrame, AStretcherTakesItsShare) {
    const std::vector<EndMoments> held = solveSway(chairSide(true, false));
    const std::vector<EndMoments> rolling = solveSway(chairSide(true, true));

    ASSERT_EQ(held.size(), 2u);
    EXPECT_NEAR(held[0].from, 57.4, 0.01 * 57.4);
    EXPECT_NEAR(held[0].to, 57.0, 0.01 * 57.0);
    EXPECT_NEAR(held[1].from, 42.8, 0.01 * 42.8);
    EXPECT_NEAR(held[1].to, 42.8, 0.01 * 42.8);
    ASSERT_EQ(rolling.size(), 2u);
    EXPECT_NEAR(rolling[0].from, 65.8, 0.01 * 65.8);
    EXPECT_NEAR(rolling[0].to, 48.6, 0.01 * 48.6);
    EXPECT_NEAR(rolling[1].from, 38.3, 0.01 * 38.3);
    EXPECT_NEAR(rolling[1].to, 47.3, 0.01 * 47.3);
}

TEST(SwayFrame, AFrameThatCanMoveFreelyHasNoAnswer) {
    SwayFrame frame = chairSide(false, true);
    frame.posts[1].footRolls = true;

    EXPECT_TRUE(solveSway(frame).empty());
}

// Random frames of two to five posts with rails anywhere between neighbours: the moments add up to
// force times height, and agree with the plane-frame program in which nothing stretches.
TEST(SwayFrame, AgreesWithThePlaneFrameProgramOnAnyFrame) {
    std::mt19937 random(20);
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    for (int round = 0; round < 60; ++round) {
        SwayFrame frame;
        std::vector<testing::PlaneNode> nodes;
        std::vector<testing::PlaneBeam> beams;
        constexpr double kRigid = 1e10;
        const std::size_t posts = 2 + static_cast<std::size_t>(round % 4);
        const std::vector<double> levels{150.0 + between(0, 60), 400.0 + between(0, 60), 700.0};
        double x = 0.0;
        for (std::size_t p = 0; p < posts; ++p) {
            frame.posts.push_back({stiffness(38, between(25, 60)), false});
            const std::size_t foot = nodes.size();
            nodes.push_back({x, 0.0, true, true, 0.0, 0.0});
            for (const double level : levels) {
                nodes.push_back({x, level, false, false, 0.0, 0.0});
            }
            for (std::size_t i = 0; i < levels.size(); ++i) {
                beams.push_back({foot + i, foot + i + 1, kRigid, frame.posts[p].stiffness});
            }
            x += between(250.0, 600.0);
        }
        const std::size_t postBeams = beams.size();
        for (std::size_t p = 0; p + 1 < posts; ++p) {
            for (std::size_t i = 0; i < 2; ++i) {
                const std::size_t a = p * (levels.size() + 1) + 1 + i;
                const std::size_t b = a + levels.size() + 1;
                const double ei = stiffness(22, between(25, 90));
                frame.members.push_back({p, p + 1, levels[i], nodes[b].x - nodes[a].x, ei});
                beams.push_back({a, b, kRigid, ei});
            }
        }
        const double force = between(100.0, 900.0);
        frame.forces = {{posts - 1, levels[2], force}};
        nodes.back().force = force;

        const std::vector<EndMoments> ours = solveSway(frame);
        const std::vector<testing::BeamMoments> theirs = testing::solvePlaneFrame(nodes, beams);

        ASSERT_EQ(ours.size(), frame.members.size());
        const double whole = force * levels[2] / 1000.0;
        EXPECT_NEAR(sumOf(ours), whole, 1e-6 * whole);
        for (std::size_t i = 0; i < ours.size(); ++i) {
            // The program's moments are on the beam, counter-clockwise; both are told alike by
            // size.
            EXPECT_NEAR(
                std::abs(ours[i].from), std::abs(theirs[postBeams + i].a) / 1000.0, 2e-3 * whole)
                << "round " << round << " member " << i;
            EXPECT_NEAR(
                std::abs(ours[i].to), std::abs(theirs[postBeams + i].b) / 1000.0, 2e-3 * whole);
        }
    }
}

// Worked examples: rail at 400 mm, back force 300 mm above it, feet 380 mm apart, the sitter
// midway.
SideFrame example(double seat, double back) {
    return {seat, back, 400.0, 300.0, 380.0, 190.0};
}

TEST(SideFrame, HeldDownBearsSeatAndBackAsWorked) {
    const SideFrameForces first = sideFrameForces(example(650, 280));
    EXPECT_NEAR(first.frontFoot, 190.8, 0.05);
    EXPECT_NEAR(first.backFoot, 840.8, 0.05);
    EXPECT_NEAR(first.railAtSeat, 36.3, 0.06);
    EXPECT_NEAR(first.railAtBack, 196.0, 0.05);
    EXPECT_NEAR(first.postAbove, 84.0, 0.05);
    EXPECT_NEAR(first.postBelow, 112.0, 0.05);

    const SideFrameForces third = sideFrameForces(example(500, 225));
    EXPECT_NEAR(third.frontFoot, 164.5, 0.05);
    EXPECT_NEAR(third.backFoot, 664.5, 0.05);
    EXPECT_NEAR(third.railAtSeat, 31.3, 0.06);
    EXPECT_NEAR(third.railAtBack, 157.5, 0.05);

    const SideFrameForces fourth = sideFrameForces(example(500, 150));
    EXPECT_NEAR(fourth.frontFoot, 26.3, 0.05);
    EXPECT_NEAR(fourth.railAtBack, 105.0, 0.05);
}

TEST(SideFrame, BalancesAtItsFeetAndJoints) {
    const SideFrameForces forces = sideFrameForces(example(650, 280));

    EXPECT_NEAR(forces.backFoot - forces.frontFoot, 650.0, 1e-9);
    EXPECT_NEAR(forces.railAtBack, forces.postAbove + forces.postBelow, 1e-9);
}

TEST(SideFrame, FreeToTipBearsNoMoreThanTheSitterHolds) {
    SideFrame frame = example(650, 280);
    frame.backNewtons = tippingForce(frame);

    EXPECT_NEAR(frame.backNewtons, 176.4, 0.05);
    EXPECT_NEAR(sideFrameForces(frame).railAtBack, 123.5, 0.05);
    EXPECT_NEAR(sideFrameForces(frame).frontFoot, 0.0, 1e-9);
}

// The determinate frame and the sway of the same frame on a roller are one thing.
TEST(SideFrame, AgreesWithTheSwayOfAFrameOnARoller) {
    SwayFrame sway = chairSide(false, true);
    sway.forces = {{1, 700.0, 280.0}};

    EXPECT_NEAR(solveSway(sway).front().to, sideFrameForces(example(650, 280)).railAtBack, 1e-6);
}

}  // namespace
}  // namespace shoulderline
