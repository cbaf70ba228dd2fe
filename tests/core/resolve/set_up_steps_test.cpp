#include <algorithm>
#include <cmath>
#include <iterator>

#include <gtest/gtest.h>

#include "core/geometry/frame.h"
#include "core/resolve/joined_grooves.h"
#include "core/resolve/lean.h"
#include "core/resolve/set_up.h"
#include "tests/support/pieces.h"

// Every step that a joint takes is told: what is sawn, what is cut out, what is eased. The steps
// are common practice; their figures are checked against the solids that they leave.
namespace shoulderline {
namespace {

using testing::resolved;
using testing::sample;
using AllSetUps = std::vector<shoulderline::SetUp>;

const shoulderline::SetUp* starting(const AllSetUps& all, const std::string& words) {
    const auto it = std::find_if(
        all.begin(), all.end(), [&](const auto& one) { return one.work.rfind(words, 0) == 0; });
    return it == all.end() ? nullptr : &*it;
}

std::size_t firstOf(const ResolvedPiece& piece, JointKind kind) {
    const auto it = std::find_if(piece.joints.begin(), piece.joints.end(), [kind](const auto& one) {
        return one.kind == kind;
    });
    EXPECT_NE(it, piece.joints.end());
    return static_cast<std::size_t>(it - piece.joints.begin());
}

const MortiseSolid& openOf(const ResolvedPiece& piece, std::size_t joint) {
    const std::vector<MortiseSolid>& all = piece.parts[piece.joints[joint].mortised].mortises;
    return *std::find_if(
        all.begin(), all.end(), [joint](const auto& m) { return m.joint == joint; });
}

TEST(SetUpOfAHalfLap, SawsItsCheekFromTheEndAndItsShoulderAcross) {
    const ResolvedPiece made = resolved(sample("chart_cabinet"));
    const std::size_t lap = firstOf(made, JointKind::Lap);
    const AllSetUps all = setUpsOf(made, lap);
    const shoulderline::SetUp* cheek = starting(all, "cheek of the lap");
    const shoulderline::SetUp* shoulder = starting(all, "shoulder of the lap");
    ASSERT_TRUE(cheek != nullptr && shoulder != nullptr);
    const Box box = openOf(made, lap).box;
    EXPECT_NEAR(cheek->depth.mm(), box.size().x, 1e-9) << "from the end, as long as the lap";
    EXPECT_EQ(cheek->depth, shoulder->to);
    const double thickness = made.parts[made.joints[lap].mortised].thickness.value.mm();
    EXPECT_NEAR(shoulder->depth.mm(), thickness / 2, 1e-9) << "half of each";
    EXPECT_NEAR(cheek->fence.mm(), thickness / 2, 1e-9);
    EXPECT_EQ(starting(all, "slot"), nullptr);
}

TEST(SetUpOfABridle, SawsBothCheeksOfItsSlotAndCutsOutTheWaste) {
    const ResolvedPiece made = resolved(sample("chart_cabinet"));
    const std::size_t bridle = firstOf(made, JointKind::Bridle);
    const AllSetUps all = setUpsOf(made, bridle);
    const Box box = openOf(made, bridle).box;
    std::vector<double> fences;
    for (const shoulderline::SetUp& one : all) {
        if (one.work == "cheeks of the slot") {
            fences.push_back(one.fence.mm());
            EXPECT_NEAR(one.depth.mm(), box.size().x, 1e-9);
        }
    }
    ASSERT_EQ(fences.size(), 2u);
    EXPECT_NEAR(fences[0], box.min.z, 1e-9);
    EXPECT_NEAR(fences[1], box.max.z, 1e-9);
    EXPECT_NE(starting(all, "waste of the slot"), nullptr);
}

// In the middle of a rail the slot is in the end that straddles it, and the rail keeps its third.
TEST(SetUpOfATeeBridle, SawsTheSlotInTheStemAndTrenchesBothFacesOfTheRail) {
    const ResolvedPiece made = resolved(sample("chart_cabinet"));
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const ResolvedPart& stem = made.parts[made.joints[i].tenoned];
        if (made.joints[i].kind != JointKind::Bridle || stem.of != "frame mullion") {
            continue;
        }
        std::vector<const TenonSolid*> cheeks;
        for (const TenonSolid& one : stem.tenons) {
            if (one.joint == i) {
                cheeks.push_back(&one);
            }
        }
        ASSERT_EQ(cheeks.size(), 2u);
        int fences = 0;
        int trenches = 0;
        for (const shoulderline::SetUp& one : setUpsOf(made, i)) {
            EXPECT_EQ(one.work.find("shoulder"), std::string::npos) << one.work;
            if (one.work == "cheeks of the slot") {
                ++fences;
                const bool isInner = std::abs(one.fence.mm() - cheeks[0]->box.max.z) < 1e-9 ||
                                     std::abs(one.fence.mm() - cheeks[1]->box.min.z) < 1e-9;
                EXPECT_TRUE(isInner) << one.fence.mm();
                EXPECT_NEAR(one.depth.mm(), cheeks[0]->box.size().x, 1e-9);
            }
            trenches += one.isTrench ? 1 : 0;
        }
        EXPECT_EQ(fences, 2);
        EXPECT_EQ(trenches, 2);
        return;
    }
    FAIL() << "no bridle in the middle of a rail";
}

TEST(SetUpOfARoundTenon, TurnsItToItsDiameter) {
    const ResolvedPiece made = resolved(sample("pilot_stool"));
    int seen = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        if (made.joints[i].kind != JointKind::Round) {
            continue;
        }
        const AllSetUps all = setUpsOf(made, i);
        const shoulderline::SetUp* round = starting(all, "round tenon");
        ASSERT_NE(round, nullptr) << made.joints[i].name;
        EXPECT_EQ(round->cutter, made.joints[i].tenon.thickness.value);
        EXPECT_EQ(round->depth, made.joints[i].tenon.length.value);
        ++seen;
    }
    EXPECT_GT(seen, 4);
}

// A bit touches a round part on its crown first, and its depth stop is set from there.
TEST(SetUpOfABoreInARoundPart, IsAsDeepFromItsCrownAsTheSolid) {
    const ResolvedPiece made = resolved(sample("pilot_stool"));
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const ResolvedPart& mortised = made.parts[made.joints[i].mortised];
        if (mortised.of != "front stretcher") {
            continue;
        }
        const AllSetUps all = setUpsOf(made, i);
        const shoulderline::SetUp* bore = starting(all, "bored mortise");
        ASSERT_NE(bore, nullptr);
        const Box box = openOf(made, i).box;
        EXPECT_NEAR(bore->depth.mm(), box.size()[2], 1e-6);
        return;
    }
    FAIL() << "nothing is bored into the front stretcher";
}

TEST(SetUpsOfATenon, CutOutBetweenTwinsAndEaseTheEnd) {
    int waste = 0;
    int eased = 0;
    int rounded = 0;
    for (const char* name : {"luggage_stand", "bed_frame", "bench", "armchair"}) {
        const ResolvedPiece made = resolved(sample(name));
        for (std::size_t i = 0; i < made.joints.size(); ++i) {
            const ResolvedJoint& joint = made.joints[i];
            const AllSetUps all = setUpsOf(made, i);
            const bool isTwo = joint.has(JointFeature::Twin) || joint.has(JointFeature::Double);
            EXPECT_EQ(starting(all, "waste between the tenons") != nullptr, isTwo) << joint.name;
            waste += isTwo ? 1 : 0;
            if (const Size* by = joint.size(SizeName::EndEasing)) {
                const shoulderline::SetUp* end = starting(all, "end of the tenon");
                ASSERT_NE(end, nullptr) << joint.name;
                EXPECT_EQ(end->eased, by->value);
                ++eased;
            }
            const bool isRounded = joint.has(JointFeature::RoundEnds);
            EXPECT_EQ(starting(all, "edges of the tenon, rounded") != nullptr, isRounded);
            rounded += isRounded ? 1 : 0;
        }
    }
    EXPECT_GT(waste, 0);
    EXPECT_GT(eased, 0);
    EXPECT_GT(rounded, 0);
}

// Chord and rise of a slat: half the angle of its arc is 2 atan(2 rise / chord), as in any table of
// arcs.
TEST(SetUpsOfABentPart, TellHowTheCurveLeavesItsChord) {
    const Piece piece = sample("armchair");
    const ResolvedPiece made = resolved(piece);
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const ResolvedPart& part = made.parts[made.joints[i].tenoned];
        if (part.of != "back slat" || !part.bend) {
            continue;
        }
        const double angle =
            2.0 * std::atan(2.0 * part.bend->rise.value.mm() / part.shoulderLength.value.mm());
        const std::vector<std::string> texts = setUpTexts(setUpsOf(made, i), made, piece.style);
        const std::string order = texts.front();
        EXPECT_NE(order.find("true to the chord"), std::string::npos) << order;
        char shown[16];
        std::snprintf(shown, sizeof shown, "%.1f\u00b0", angle * 180.0 / 3.14159265358979);
        EXPECT_NE(order.find(shown), std::string::npos) << order << " and " << shown;
        return;
    }
    FAIL() << "no bent slat";
}

// The spindle's direction turned by the wedge and then by the table, as matrices would.
TEST(CompoundLean, IsMadeByAWedgeOnATiltedTable) {
    for (const double along : {-9.0, 3.0, 15.0}) {
        for (const double across : {-12.0, 5.0, 20.0}) {
            const Lean lean{Angle::degrees(along), Angle::degrees(across)};
            const double w = lean.along.radians();
            const double t = tiltOverWedge(lean).radians();
            // Straight down in the shop, seen from the table, then from the part on its wedge.
            const Vec3 onTable{0.0, std::sin(t), std::cos(t)};
            const Vec3 inPart{onTable.x * std::cos(w) + onTable.z * std::sin(w),
                              onTable.y,
                              -onTable.x * std::sin(w) + onTable.z * std::cos(w)};
            EXPECT_NEAR(std::atan2(inPart.x, inPart.z), lean.along.radians(), 1e-12);
            EXPECT_NEAR(std::atan2(inPart.y, inPart.z), lean.across.radians(), 1e-12);
        }
    }
}

// The spindles' bores lie under a hollow that is sawn up to 5/8 deep, more than some of them are
// deep themselves: a bit goes through that waste, and all four are bored at one fence.
TEST(BoresOfARail, AreBoredInTheSquareBlankTogether) {
    const ResolvedPiece stand = resolved(sample("luggage_stand"));
    int bores = 0;
    for (std::size_t i = 0; i < stand.joints.size(); ++i) {
        const ResolvedJoint& joint = stand.joints[i];
        if (joint.kind != JointKind::Round || stand.parts[joint.mortised].of != "end rail") {
            continue;
        }
        ++bores;
        const AllSetUps all = setUpsOf(stand, i);
        EXPECT_TRUE(all.front().beforeShaping) << joint.name;
        EXPECT_FALSE(all.front().afterShaping) << joint.name;
        EXPECT_NEAR(
            all.front().depth.mm(), (joint.mortise.depth.value + joint.mortise.below).mm(), 0.05)
            << joint.name;
    }
    EXPECT_EQ(bores, 8);
}

// The plough goes on past the middle rail from one panel to the other.
TEST(GroovesOfTwoPanels, ThatRunIntoOneAnotherAreOneSetting) {
    const ResolvedPiece cabinet = resolved(sample("chart_cabinet"));
    const ResolvedPart& stile = testing::partNamed(cabinet, "back stile, right");
    std::vector<ResolvedCut> own;
    std::copy_if(
        stile.cuts.begin(), stile.cuts.end(), std::back_inserter(own), [](const auto& cut) {
            return cut.kind == CutKind::Groove;
        });
    const std::vector<ResolvedCut> made = groovesJoined(own);

    ASSERT_EQ(own.size(), 2u);
    ASSERT_EQ(made.size(), 1u);
    EXPECT_EQ(made.front().note, "for upper panel and lower panel");
    for (const ResolvedCut& cut : own) {
        for (const shoulderline::SetUp& one : setUpsOf(cabinet, *cut.joint)) {
            if (cabinet.parts[one.part].of == "back stile") {
                EXPECT_NEAR(one.from.mm(), made.front().box.min.x, 1e-6);
                EXPECT_NEAR(one.to.mm(), made.front().box.max.x, 1e-6);
            }
        }
    }
}

}  // namespace
}  // namespace shoulderline
