#include "core/resolve/holes.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/resolve/part_set_up.h"
#include "core/resolve/sizes_json.h"
#include "core/resolve/small_parts.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::partNamed;
using testing::resolved;
using testing::statedPart;
using testing::twoPostsAndARail;

using testing::kInch;
constexpr double kThick = 0.875;  // in, of the rail; it is 3 in wide and 20 in long

CutStatement boreAt(const char* along, const char* across) {
    CutStatement bore;
    bore.kind = CutKind::Bore;
    bore.along = along;
    bore.across = across;
    bore.width = "1/2 in";
    return bore;
}

CutStatement screwAt(const char* along, const char* across) {
    CutStatement screw = boreAt(along, across);
    screw.kind = CutKind::ScrewHole;
    screw.width = "3/16 in";
    return screw;
}

ResolvedPiece with(const std::vector<CutStatement>& cuts) {
    Piece piece = twoPostsAndARail();
    statedPart(piece, "rail").cuts = cuts;
    return resolved(piece);
}

double takenBy(const std::vector<CutStatement>& cuts) {
    const ResolvedPiece made = with(cuts);
    EXPECT_TRUE(made.troubles.empty()) << made.troubles.front().message;
    return (volumeAsMade(partNamed(with({}), "rail")) - volumeAsMade(partNamed(made, "rail"))) /
           std::pow(kInch, 3);
}

// Cavalieri: whatever its tilt, a cylinder between two parallel planes has the section across its
// axis times its length along that axis, which is the thickness over the cosine of the tilt.
TEST(TiltedBore, TakesItsSectionTimesItsLengthThroughTheWood) {
    CutStatement bore = boreAt("10 in", "1 1/2 in");
    bore.tiltAlong = "20 deg";
    const double section = M_PI / 16;
    EXPECT_NEAR(takenBy({bore}), section * kThick / std::cos(20 * M_PI / 180), 0.002);

    bore.tiltAcross = "10 deg";
    const double slope = std::hypot(1.0, std::tan(20 * M_PI / 180), std::tan(10 * M_PI / 180));
    EXPECT_NEAR(takenBy({bore}), section * kThick * slope, 0.002);
}

TEST(TiltedBore, OneThatIsBlindIsAsDeepAlongItsAxisAsStated) {
    CutStatement bore = boreAt("10 in", "1 1/2 in");
    bore.tiltAcross = "-15 deg";
    bore.depth = "1/2 in";
    // On the far side of its mouth as much wood is missing as is left on the near one.
    EXPECT_NEAR(takenBy({bore}), M_PI / 16 * 0.5, 0.001);
}

// The angle of a line to the normal of a plane by their vectors; its two views are its tilts.
TEST(TiltedBore, ItsTableTiltAndTurnAreThoseOfACompoundAngle) {
    CutStatement bore = boreAt("10 in", "1 1/2 in");
    bore.tiltAlong = "12 deg";
    bore.tiltAcross = "7 deg";
    const ResolvedHole hole = *partNamed(with({bore}), "rail").cuts.front().hole;

    EXPECT_NEAR(std::atan2(hole.into.x, hole.into.z), 12 * M_PI / 180, 1e-12);
    EXPECT_NEAR(std::atan2(hole.into.y, hole.into.z), 7 * M_PI / 180, 1e-12);
    EXPECT_NEAR(hole.lean.tilt().radians(), std::acos(hole.into.z), 1e-12);
    EXPECT_NEAR(hole.lean.turn().radians(), std::atan2(hole.into.y, hole.into.x), 1e-12);
}

// A drill pointed along the vector and turned about two axes one after the other, tried the long
// way: rake and splay of 15 degrees each make 20.8 degrees, 45 from either.
TEST(TiltedBore, EqualTiltsBothWaysLeanAtFortyFiveDegrees) {
    CutStatement bore = boreAt("10 in", "1 1/2 in");
    bore.tiltAlong = bore.tiltAcross = "15 deg";
    const ResolvedHole hole = *partNamed(with({bore}), "rail").cuts.front().hole;

    EXPECT_NEAR(hole.lean.turn().degrees(), 45.0, 1e-9);
    EXPECT_NEAR(hole.lean.tilt().degrees(), 20.75, 0.01);
}

TEST(TiltedBore, ItsMouthStaysWhereItIsStatedOnEveryFace) {
    for (const Face face : {Face::FaceSide, Face::BackSide, Face::FaceEdge, Face::BackEdge}) {
        CutStatement bore = boreAt("10 in", "7/16 in");
        bore.width = "1/4 in";
        bore.face = face;
        bore.tiltAlong = "10 deg";
        const ResolvedPiece made = with({bore});
        const ResolvedCut& cut = partNamed(made, "rail").cuts.front();
        const CutAxes axes = axesOn(face);
        EXPECT_NEAR(cut.hole->mouth.x, 10 * kInch, 1e-9);
        EXPECT_NEAR(cut.hole->mouth[axes.across], 0.4375 * kInch, 1e-9);
        EXPECT_GT(cut.hole->into.x, 0.0) << "towards the far end";
        EXPECT_TRUE(cut.solid().contains(cut.hole->mouth + cut.hole->into * 5.0));
    }
}

TEST(TiltedBore, OnePastWhatABitHoldsIsToldWithTheMost) {
    CutStatement bore = boreAt("10 in", "1 1/2 in");
    bore.tiltAlong = "70 deg";
    const ResolvedPiece made = with({bore});
    ASSERT_EQ(made.troubles.size(), 1u);
    EXPECT_NE(made.troubles.front().message.find("at most 60"), std::string::npos)
        << made.troubles.front().message;
    EXPECT_TRUE(partNamed(made, "rail").cuts.empty());

    bore.tiltAlong = "60 deg";
    EXPECT_TRUE(with({bore}).troubles.empty());
}

TEST(TiltedBore, ItsSetUpTellsTheTiltAndTheCaution) {
    CutStatement bore = boreAt("10 in", "1 1/2 in");
    bore.tiltAlong = "10 deg";
    CutStatement other = bore;
    other.along = "5 in";
    const ResolvedPiece made = with({bore, other});
    const std::vector<PartSetUp> setUps =
        partSetUpsOf(partNamed(made, "rail"), twoPostsAndARail().style);

    ASSERT_EQ(setUps.size(), 1u) << "alike but for their place";
    EXPECT_EQ(setUps.front().tool, RuleId::SetUpTiltedBit);
    const std::string text = partSetUpText(setUps.front(), made.rules);
    // tan 10 degrees is 1 in 5.67.
    for (const char* words : {"1/2",
                              "table tilted 10°, 1 in 5.7",
                              "towards the right end",
                              "10 and 5 from the left shoulder"}) {
        EXPECT_NE(text.find(words), std::string::npos) << words << " in: " << text;
    }
    ASSERT_EQ(cautionsFor(setUps, made.rules).size(), 1u);
    EXPECT_NE(cautionsFor(setUps, made.rules).front().find("machine's manual"), std::string::npos);
}

TEST(TiltedBore, IsInTheSizes) {
    CutStatement bore = boreAt("10 in", "1 1/2 in");
    bore.tiltAlong = "10 deg";
    Piece piece = twoPostsAndARail();
    statedPart(piece, "rail").cuts = {bore};
    const std::string sizes = sizesJson(piece, resolved(piece));
    EXPECT_NE(sizes.find("\"tilt_along_deg\": 10"), std::string::npos);
    EXPECT_NE(sizes.find("\"table_tilt_deg\": 10"), std::string::npos);
}

// A slot is a rectangle with half a circle at either end.
TEST(ScrewHole, ASlotIsALongHole) {
    CutStatement screw = screwAt("10 in", "1 1/2 in");
    screw.slot = SlotWay::Along;
    screw.length = "1/2 in";
    const double d = 3.0 / 16;
    EXPECT_NEAR(takenBy({screw}), (M_PI * d * d / 4 + d * (0.5 - d)) * kThick, 5e-4);
    const Box box = partNamed(with({screw}), "rail").cuts.front().box;
    EXPECT_NEAR(box.size().x / kInch, 0.5, 1e-9);
    EXPECT_NEAR(box.size().y / kInch, d, 1e-3);

    screw.slot = SlotWay::Across;
    EXPECT_NEAR(partNamed(with({screw}), "rail").cuts.front().box.size().y / kInch, 0.5, 1e-9);
}

TEST(ScrewHole, ASlotShorterThanItIsWideIsToldWithTheLeast) {
    CutStatement screw = screwAt("10 in", "1 1/2 in");
    screw.slot = SlotWay::Along;
    screw.length = "1/8 in";
    const ResolvedPiece made = with({screw});
    ASSERT_EQ(made.troubles.size(), 1u);
    EXPECT_NE(made.troubles.front().message.find("at least 3/16"), std::string::npos);
    screw.length = "3/16 in";
    EXPECT_TRUE(with({screw}).troubles.empty());
}

// Boat plan chart, as for screws of joints: a counterbore of 3/8 in for a No. 10 screw, 3/16 in.
TEST(ScrewHole, ACounterboreIsByRuleAsForAPlug) {
    CutStatement screw = screwAt("10 in", "1 1/2 in");
    screw.head = ScrewHead::Plugged;
    const ResolvedPiece made = with({screw});
    const ResolvedPart& rail = partNamed(made, "rail");
    ASSERT_EQ(rail.cuts.size(), 2u);
    const ResolvedHole& head = *rail.cuts.back().hole;
    EXPECT_TRUE(head.isForHead);
    EXPECT_NEAR(head.headWidth.value.inches(), 3.0 / 8, 1e-9);
    EXPECT_NEAR(head.headDepth.value.inches(), 3.0 / 16, 1e-9);
    EXPECT_EQ(head.headWidth.reasons.front().rule, RuleId::PlugDiameter);

    const double d = 3.0 / 16;
    const double counterbore = M_PI * (3.0 / 8) * (3.0 / 8) / 4 * (3.0 / 16);
    EXPECT_NEAR(takenBy({screw}), counterbore + M_PI * d * d / 4 * (kThick - 3.0 / 16), 1e-3);
}

TEST(ScrewHole, ItsPlugsAreInThePartsList) {
    CutStatement screw = screwAt("10 in", "1 1/2 in");
    screw.head = ScrewHead::Plugged;
    CutStatement second = screw;
    second.along = "5 in";
    CutStatement open = screw;
    open.along = "15 in";
    open.head = ScrewHead::Counterbored;
    Piece piece = twoPostsAndARail();
    statedPart(piece, "rail").cuts = {screw, second, open};
    int plugs = 0;
    for (const SmallPart& small : smallPartsOf(piece, resolved(piece))) {
        if (small.kind == SmallPartKind::Plug) {
            plugs += small.quantity;
            EXPECT_NEAR(small.width.inches(), 3.0 / 8, 1e-9);
            EXPECT_NEAR(small.length.inches(), 3.0 / 16, 1e-9);
            EXPECT_EQ(small.of, "rail");
        }
    }
    EXPECT_EQ(plugs, 2);
}

// A frustum: pi h (R^2 + R r + r^2) / 3; its height that of sides at 41 degrees to the axis.
TEST(ScrewHole, ACountersinkIsACone) {
    CutStatement screw = screwAt("10 in", "1 1/2 in");
    screw.head = ScrewHead::Countersunk;
    const ResolvedPiece made = with({screw});
    const ResolvedCut& head = partNamed(made, "rail").cuts.back();
    const double r = 3.0 / 32;
    const double wide = 2 * r;  // the head is twice the screw
    const double deep = (wide - r) / std::tan(41 * M_PI / 180);
    EXPECT_NEAR(head.hole->headDepth.value.inches(), deep, 1e-9);
    EXPECT_NEAR(head.solid().volume() / std::pow(kInch, 3),
                M_PI * deep * (wide * wide + wide * r + r * r) / 3,
                1e-4);
}

TEST(ScrewHole, AHeadNoWiderThanItsHoleIsTold) {
    CutStatement screw = screwAt("10 in", "1 1/2 in");
    screw.head = ScrewHead::Counterbored;
    screw.headWidth = "1/8 in";
    const ResolvedPiece made = with({screw});
    ASSERT_EQ(made.troubles.size(), 1u);
    EXPECT_NE(made.troubles.front().message.find("more than 3/16"), std::string::npos);
}

TEST(ScrewHole, ASlotOfNoStatedLengthWithNothingBehindItIsTold) {
    CutStatement screw = screwAt("10 in", "1 1/2 in");
    screw.slot = SlotWay::Across;
    EXPECT_EQ(with({screw}).troubles.size(), 1u);
}

// The ticket table's end rail runs as the top's grain does not: 586 mm between the legs' inner
// faces with its middle under the top's. By rule 1/4 in for each foot between screw and middle
// (common practice), and the screw's 5 mm.
TEST(ScrewHole, ASlotByRuleTakesTheMovementOfWhatItHolds) {
    const ResolvedPiece table = resolved(testing::sample("table"));
    EXPECT_TRUE(table.troubles.empty());
    const ResolvedPart& rail = partNamed(table, "end rail, left");
    int slots = 0;
    for (const ResolvedCut& cut : rail.cuts) {
        if (!cut.hole || cut.hole->slot == SlotWay::Round || cut.hole->isForHead) {
            continue;
        }
        ++slots;
        const std::size_t index = static_cast<std::size_t>(&rail - table.parts.data());
        const std::optional<ScrewedTo> to = screwedTo(table, index, *cut.hole);
        ASSERT_TRUE(to);
        EXPECT_EQ(table.parts[to->part].name, "top");
        EXPECT_EQ(to->mover, to->part);
        const double distance = rail.shoulderLength.value.mm() / 2 - 60;
        EXPECT_NEAR(to->distance.mm(), distance, 1e-6);
        const double needed = 5 + distance / 48;
        EXPECT_NEAR(cut.hole->slotLength.value.mm(), std::ceil(needed * 2) / 2, 1e-6);
        EXPECT_EQ(cut.hole->slotLength.reasons.front().rule, RuleId::SlotRoom);
        EXPECT_NEAR(cut.box.size().x, cut.hole->slotLength.value.mm(), 1e-6);
    }
    EXPECT_EQ(slots, 2);
}

}  // namespace
}  // namespace shoulderline
