#include "core/resolve/part_set_up.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "core/resolve/set_up.h"
#include "tests/core/resolve/stated_easing.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::easing;
using testing::partNamed;
using testing::resolved;
using testing::statedPart;
using testing::twoPostsAndARail;

std::vector<PartSetUp> eased(const EasingStatement& easing) {
    Piece piece = twoPostsAndARail();
    statedPart(piece, "rail").easings = {easing};
    const ResolvedPiece made = resolved(piece);
    EXPECT_TRUE(made.troubles.empty());
    return partSetUpsOf(partNamed(made, "rail"), piece.style);
}

bool holds(const PartSetUp& setUp, const std::string& words) {
    return setUp.setting.find(words) != std::string::npos;
}

TEST(PartSetUps, APartWithNothingOfItsOwnHasNone) {
    const Piece piece = twoPostsAndARail();
    EXPECT_TRUE(partSetUpsOf(partNamed(resolved(piece), "rail"), piece.style).empty());
}

// Common practice: an even chamfer by a bit of 45 degrees, lowered by its size.
TEST(PartSetUps, AnEvenChamferIsRoutedWithItsBearingOnTheOtherFace) {
    const std::vector<PartSetUp> setUps =
        eased(easing(EasingKind::Chamfer, Arris::FaceSideFaceEdge, "1/4 in"));
    ASSERT_EQ(setUps.size(), 1u);
    EXPECT_EQ(setUps.front().tool, RuleId::SetUpEasingRouter);
    EXPECT_TRUE(holds(setUps.front(), "45\u00b0; lowered 1/4"));
    EXPECT_TRUE(holds(setUps.front(), "bearing along the face edge"));
}

TEST(PartSetUps, ARoundOverTellsTheRadiusOfItsBit) {
    const std::vector<PartSetUp> setUps =
        eased(easing(EasingKind::RoundOver, Arris::AllAlong, "3/16 in"));
    ASSERT_EQ(setUps.size(), 1u);
    EXPECT_TRUE(holds(setUps.front(), "R 3/16"));
    EXPECT_TRUE(holds(setUps.front(), "both edges"));
}

TEST(PartSetUps, ACoveTellsTheRadiusOfItsCoveBit) {
    const std::vector<PartSetUp> setUps =
        eased(easing(EasingKind::Cove, Arris::BackSideFaceEdge, "1/4 in"));
    ASSERT_EQ(setUps.size(), 1u);
    EXPECT_EQ(setUps.front().tool, RuleId::SetUpEasingRouter);
    EXPECT_TRUE(holds(setUps.front(), "cove bit R 1/4; lowered 1/4"));
    EXPECT_TRUE(holds(setUps.front(), "base on the back side, bearing along the face edge"));
}

TEST(PartSetUps, AnUnevenCoveIsRabbetedAndHollowedWithARoundPlane) {
    EasingStatement stated = easing(EasingKind::Cove, Arris::BackSideFaceEdge, "3/8 in");
    stated.second = "1/4 in";
    const std::vector<PartSetUp> setUps = eased(stated);
    ASSERT_EQ(setUps.size(), 1u);
    EXPECT_EQ(setUps.front().tool, RuleId::SetUpEasingPlane);
    EXPECT_TRUE(holds(setUps.front(), "gauge 3/8 on the back side and 1/4 on the face edge"));
    EXPECT_TRUE(holds(setUps.front(), "round plane"));
}

TEST(PartSetUps, AStoppedOneTellsItsStopsFromBothEnds) {
    EasingStatement stated = easing(EasingKind::Chamfer, Arris::BackSideBackEdge, "1/4 in");
    stated.fromStart = "2 in";
    stated.fromFar = "3 in";
    const std::vector<PartSetUp> setUps = eased(stated);
    ASSERT_EQ(setUps.size(), 1u);
    EXPECT_TRUE(holds(setUps.front(), "begins 2 from the left shoulder"));
    EXPECT_TRUE(holds(setUps.front(), "ends 3 from the right shoulder"));
}

TEST(PartSetUps, AnUnevenChamferIsPlanedToTwoGaugedLines) {
    EasingStatement stated = easing(EasingKind::Chamfer, Arris::FaceSideFaceEdge, "3/8 in");
    stated.second = "1/8 in";
    const std::vector<PartSetUp> setUps = eased(stated);
    ASSERT_EQ(setUps.size(), 1u);
    EXPECT_EQ(setUps.front().tool, RuleId::SetUpEasingPlane);
    EXPECT_TRUE(holds(setUps.front(), "gauge 3/8 on the face side and 1/8 on the face edge"));
}

// The ticket table's end rail is 96 mm deep and its screws are sunk to leave 30 mm.
TEST(PartSetUps, ASlotBeneathASunkHeadGoesThroughWhatThatLeaves) {
    const Piece piece = testing::sample("table");
    const std::vector<PartSetUp> setUps =
        partSetUpsOf(partNamed(resolved(piece), "end rail, right"), piece.style);

    const auto slot = std::find_if(setUps.begin(), setUps.end(), [](const PartSetUp& one) {
        return one.work.rfind("slot for a screw", 0) == 0;
    });
    ASSERT_NE(slot, setUps.end());
    EXPECT_TRUE(holds(*slot, "through the 30 beneath the hole for the head")) << slot->setting;
}

// The seat of the chair is narrower behind, so that its screws there are nearer to its middle and
// their slots shorter.
TEST(PartSetUps, SlotsOfUnlikeLengthsAreSetUpEachByItself) {
    const Piece piece = testing::sample("side_chair");
    const ResolvedPiece made = resolved(piece);
    const std::vector<PartSetUp> setUps =
        partSetUpsOf(partNamed(made, "side rail, right"), piece.style);

    ASSERT_EQ(setUps.size(), 4u) << "two slots, each with one for the head";
    EXPECT_TRUE(holds(setUps[2], "pared out to a slot 3/8 long over its ends, across the part"));
    EXPECT_TRUE(holds(setUps[3], "pared out to a slot 5/16 long over its ends, across the part"));
}

TEST(PartSetUps, AHoleWhoseMouthIsSawnAwayIsBoredBeforeThePartIsShaped) {
    const Piece piece = testing::sample("side_chair");
    const ResolvedPiece made = resolved(piece);
    const std::string before = "; before the blank is shaped";

    for (const PartSetUp& one : partSetUpsOf(partNamed(made, "front rail"), piece.style)) {
        EXPECT_TRUE(holds(one, before)) << one.setting;
    }
    for (const PartSetUp& one : partSetUpsOf(partNamed(made, "side rail, right"), piece.style)) {
        EXPECT_FALSE(holds(one, before)) << one.setting;
    }
}

// The stand's end rail is arched; its four spindles stand in two depths of seat.
TEST(PartSetUps, NotchesRightAcrossAreToldOnceForEachDepthAndFromTheBlank) {
    const Piece piece = testing::sample("luggage_stand");
    const ResolvedPiece made = resolved(piece);
    std::vector<std::string> settings;
    for (const PartSetUp& one : partSetUpsOf(partNamed(made, "end rail, right"), piece.style)) {
        settings.push_back(one.setting);
    }

    ASSERT_EQ(settings.size(), 2u) << ::testing::PrintToString(settings);
    for (const std::string& setting : settings) {
        EXPECT_EQ(setting.find("right across the part, "), 0u) << setting;
        EXPECT_NE(setting.find(" deep from the blank's back edge, from "), std::string::npos)
            << setting;
        EXPECT_NE(setting.find(" and from "), std::string::npos) << setting;
        EXPECT_NE(setting.find("; before the blank is shaped"), std::string::npos) << setting;
    }
}

// Each eased part of a sample has its setting and the caution of its tool.
TEST(PartSetUps, EveryEasingOfTheSamplesHasOne) {
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece made = resolved(piece);
        for (const ResolvedPart& part : made.parts) {
            const std::vector<PartSetUp> setUps = partSetUpsOf(part, piece.style);
            EXPECT_GE(setUps.size(), part.easings.size()) << name << ", " << part.name;
            EXPECT_EQ(setUps.empty(), cautionsFor(setUps, made.rules).empty());
        }
    }
}

// The stile's pivot hole is drawn on its back edge, with the mortises that are set out there.
TEST(HoleStraightThrough, IsBoredFromTheFaceThatTheSheetShowsItOn) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece made = testing::resolved(piece);
    const ResolvedPart& stile = testing::partNamed(made, "back stile, right");
    bool isTold = false;
    for (const PartSetUp& one : partSetUpsOf(stile, piece.style)) {
        if (one.work.find("pivot pin") != std::string::npos) {
            isTold = true;
            EXPECT_NE(one.work.find("bore in the back edge"), std::string::npos) << one.work;
        }
    }
    EXPECT_TRUE(isTold);
    // The cleat's only shown face is its face side.
    for (std::size_t joint = 0; joint < made.joints.size(); ++joint) {
        for (const shoulderline::SetUp& one : setUpsOf(made, joint)) {
            if (one.work.rfind("screw, clearance hole", 0) == 0 &&
                made.parts[one.part].of == "front cleat") {
                EXPECT_EQ(one.work, "screw, clearance hole in the face side");
            }
        }
    }
}

}  // namespace
}  // namespace shoulderline
