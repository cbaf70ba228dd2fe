#include <cmath>

#include <gtest/gtest.h>

#include "core/joint/joint_sizing.h"
#include "core/joint/screws.h"
#include "tests/support/pieces.h"

// Each family by itself: its sizes against the published or customary figure, its solids against
// its sizes. Lengths in inches unless said.
namespace shoulderline {
namespace {

using testing::ruleBook;
using testing::workshop;

using testing::kInch;

struct Made {
    JointTask task;
    SizedJoint sized;
    JointCuts cuts;

    [[nodiscard]] double further(SizeName name) const { return sized.furtherSize(name).inches(); }
};

// A rail of that section against a post that is `there` thick behind the mouth, as wide as the rail
// is thick and `past` beyond it each side, and runs on past the rail's edges by `low` and `high`.
struct Corner {
    double width = 4;
    double thickness = 1;
    double there = 2;
    double past = 0.5;
    double low = 1;
    double high = 10;
};

Made make(const JointForm& form, const Corner& f = {}, const StatedSizes& stated = {}) {
    Made made;
    made.task.form = form;
    made.task.section = {Role::Rail, Length::inches(f.width), Length::inches(f.thickness)};
    made.task.post = {
        {0, -f.low * kInch, -f.past * kInch},
        {f.there * kInch, (f.width + f.high) * kInch, (f.thickness + f.past) * kInch}};
    const SizingGuide guide{
        ruleBook(), workshop().inchRack, workshop().inchBits, workshop().inchGrid};
    made.sized = sizeJoint(made.task, guide, stated);
    made.cuts = cutJoint(made.task, made.sized, guide);
    return made;
}

double volume(const JointSolid& solid) {
    return (solid.exact ? solid.exact->volume() : ConvexSolid::box(solid.box).volume()) /
           std::pow(kInch, 3);
}

// Common practice: each of twin tenons about a fifth to a quarter of thick stock.
TEST(TwinTenons, StandSideBySideWithAsMuchWoodBetweenThem) {
    const Made made = make({JointKind::Blind, {JointFeature::Twin}}, {4, 2, 2.5, 0.5, 1, 10});

    ASSERT_EQ(made.cuts.tenons.size(), 2u);
    ASSERT_EQ(made.cuts.mortises.size(), 2u);
    EXPECT_NEAR(made.sized.tenon.thickness.value.inches(), 0.375, 1e-9)
        << "a fifth of 2 in is 0.4 in; the nearest chisel 3/8 in";
    const Box& first = made.cuts.tenons[0].box;
    const Box& second = made.cuts.tenons[1].box;
    EXPECT_NEAR(second.min.z - first.max.z, 0.375 * kInch, 1e-9);
    EXPECT_NEAR(first.min.z, 2 * kInch - second.max.z, 1e-9) << "the two stand in the middle";
    EXPECT_EQ(first.min.y, second.min.y);
}

// Fairham, Woodwork Joints, Pinning: tenons and gap equal.
TEST(DoubleTenons, AreAsWideAsTheGapBetweenThem) {
    const Made made = make({JointKind::Blind, {JointFeature::Double}}, {6.5, 1, 2, 0.5, 1, 10});

    ASSERT_EQ(made.cuts.tenons.size(), 2u);
    EXPECT_NEAR(made.sized.tenon.width.value.inches(), 2, 1e-9) << "6 1/2 less two 1/4 shoulders";
    EXPECT_NEAR(made.further(SizeName::TenonGap), 2, 1e-9);
    EXPECT_NEAR(made.cuts.tenons[1].box.max.y, 6.25 * kInch, 1e-9);
}

TEST(DoubleTenons, InAVeryWideRailLeaveNoMoreThanThreeInchesBetween) {
    const Made made = make({JointKind::Blind, {JointFeature::Double}}, {12.5, 1, 2, 0.5, 1, 10});

    EXPECT_NEAR(made.further(SizeName::TenonGap), 3, 1e-9);
}

// Noyes, Handwork in Wood, No. 42: a haunched tenon about half as wide as its rail; the haunch at
// the end of the post.
TEST(Haunch, FillsTheMouthOutToTheEdgeAtTheEndOfThePost) {
    const Made made = make({JointKind::Blind, {JointFeature::Haunch}});

    ASSERT_EQ(made.cuts.tenons.size(), 2u);
    const Box& tenon = made.cuts.tenons[0].box;
    const Box& haunch = made.cuts.tenons[1].box;
    EXPECT_TRUE(made.cuts.tenons[1].isHaunch);
    EXPECT_NEAR(haunch.min.y, 0, 1e-9) << "the near end of the post is past the face edge";
    EXPECT_NEAR(haunch.max.y, tenon.min.y, 1e-9);
    EXPECT_NEAR(haunch.max.x, 0.375 * kInch, 1e-9);
    const double share = made.sized.tenon.width.value.inches() / 4;
    EXPECT_GE(share, 0.5 - 1e-9);
    EXPECT_LT(share, 0.7);
    EXPECT_EQ(made.sized.tenon.shoulders.faceEdge.state, SizeState::ByRule);
}

TEST(Haunch, LiesAtTheOtherEdgeWhereThePostEndsThere) {
    const Made made = make({JointKind::Blind, {JointFeature::Haunch}}, {4, 1, 2, 0.5, 10, 0});

    EXPECT_NEAR(made.cuts.tenons[1].box.max.y, 4 * kInch, 1e-9);
}

TEST(Haunch, SlopingIsHalfOfASquareOne) {
    const Made square = make({JointKind::Blind, {JointFeature::Haunch}});
    const Made sloping = make({JointKind::Blind, {JointFeature::SlopingHaunch}});

    EXPECT_NEAR(volume(sloping.cuts.tenons[1]), volume(square.cuts.tenons[1]) / 2, 1e-9);
}

// Fairham, Fig. 131; Noyes No. 42: as deep as the panel groove.
TEST(Haunch, FillsAGroove) {
    Made made;
    made.task.form = {JointKind::Blind, {JointFeature::Haunch}};
    made.task.section = {Role::Rail, Length::inches(4), Length::inches(1)};
    made.task.post = {{0, -30, -10}, {50, 300, 40}};
    made.task.groove = MetGroove{Length::inches(0.25), Length::inches(0.3125)};
    const SizingGuide guide{
        ruleBook(), workshop().inchRack, workshop().inchBits, workshop().inchGrid};

    EXPECT_NEAR(
        sizeJoint(made.task, guide, {}).furtherSize(SizeName::HaunchLength).inches(), 0.3125, 1e-9);
}

TEST(Stub, IsAsThickAsItsGrooveAndNearlyAsLongAsItIsDeep) {
    JointTask task;
    task.form = {JointKind::Stub, {}};
    task.section = {Role::Rail, Length::inches(3), Length::inches(0.75)};
    task.post = {{0, -30, -5}, {60, 300, 25}};
    task.groove = MetGroove{Length::inches(0.25), Length::inches(0.375)};
    const SizingGuide guide{
        ruleBook(), workshop().inchRack, workshop().inchBits, workshop().inchGrid};
    const SizedJoint sized = sizeJoint(task, guide, {});

    EXPECT_NEAR(sized.tenon.thickness.value.inches(), 0.25, 1e-9);
    EXPECT_NEAR(sized.tenon.length.value.inches(), 0.3125, 1e-9);
    EXPECT_TRUE(sized.troubles.empty());
    task.groove.reset();
    EXPECT_EQ(sizeJoint(task, guide, {}).troubles.size(), 1u) << "it needs a groove";
}

// Fairham, Drawbore pinning: the tenon's hole lies nearer the shoulder.
TEST(Pins, ADrawboredHoleLiesNearerTheShoulderThanThePosts) {
    const Made made = make({JointKind::Blind, {JointFeature::Drawbored}});

    ASSERT_EQ(made.cuts.bores.size(), made.cuts.ownBores.size());
    for (std::size_t i = 0; i < made.cuts.bores.size(); ++i) {
        EXPECT_NEAR(made.cuts.bores[i].mouth.x - made.cuts.ownBores[i].mouth.x,
                    made.further(SizeName::DrawboreOffset) * kInch,
                    1e-9);
    }
    EXPECT_NEAR(made.further(SizeName::PinDiameter), 0.3125, 1e-9)
        << "a third of 1 in, the nearest bit";
    EXPECT_NEAR(made.further(SizeName::PinPlace), 0.3125 + 0.125, 1e-9);
}

TEST(Pins, ANarrowTenonTakesOneAndAWideOneTwo) {
    EXPECT_EQ(
        make({JointKind::Blind, {JointFeature::Pinned}}, {2, 1, 2, 0.5, 1, 10}).cuts.bores.size(),
        1u);
    EXPECT_EQ(
        make({JointKind::Blind, {JointFeature::Pinned}}, {4, 1, 2, 0.5, 1, 10}).cuts.bores.size(),
        2u);
}

TEST(Pins, GoInFromTheNearerFaceAndKeepInsideThePost) {
    Corner frame;
    frame.past = 0.25;
    const Made made = make({JointKind::Blind, {JointFeature::Pinned}}, frame);
    const JointBore& bore = made.cuts.bores.front();

    EXPECT_NEAR(bore.mouth.z, made.task.post.min.z, 1e-9);
    EXPECT_GT(bore.box().max.z, made.cuts.tenons.front().box.max.z) << "into the far wall";
    EXPECT_LT(bore.box().max.z, made.task.post.max.z);
}

// Noyes No. 34: the mortise flares outward at both ends. Common practice: 1/8 in in 2 in.
TEST(Wedges, AWedgedMortiseFlaresToItsFarFace) {
    const Made made = make({JointKind::Through, {JointFeature::WedgedInKerfs}});

    EXPECT_NEAR(made.further(SizeName::WedgeFlare), 0.125, 1e-9);
    const double square = make({JointKind::Through, {}}).cuts.mortises[0].box.size().y / kInch;
    const double thickness = made.sized.mortiseWidth.value.inches();
    EXPECT_NEAR(volume(made.cuts.mortises[0]), (square + 0.125) * thickness * 2, 1e-9)
        << "a trapezoid";
    EXPECT_EQ(made.cuts.kerfs.size(), 2u);
    // Fairham, Fig. 158: about 3/16 in from each edge.
    EXPECT_NEAR((made.cuts.kerfs[0].box.min.y + made.cuts.kerfs[0].box.max.y) / 2 -
                    made.cuts.tenons[0].box.min.y,
                0.1875 * kInch,
                1e-9);
}

TEST(Wedges, AtTheEdgesOfABlindTenonAreRefused) {
    const Made made = make({JointKind::Blind, {JointFeature::WedgedOutside}});

    ASSERT_EQ(made.sized.troubles.size(), 1u);
    EXPECT_FALSE(made.cuts.mortises[0].exact);
}

TEST(Loose, TakesAMortiseInBothPartsAndNoTenonOfItsOwn) {
    const Made made = make({JointKind::Loose, {}});

    EXPECT_TRUE(made.cuts.tenons.empty());
    ASSERT_EQ(made.cuts.ownMortises.size(), 1u);
    EXPECT_NEAR(made.cuts.ownMortises[0].box.min.x, -made.cuts.mortises[0].box.max.x, 1e-9);
    EXPECT_NEAR(made.cuts.ownMortises[0].box.max.x, 0, 1e-9);
}

TEST(Round, TenonIsACylinderInTheMiddleOfItsPart) {
    const Made made = make({JointKind::Round, {}}, {1, 1, 1.5, 0.5, 5, 5});
    const double d = made.further(SizeName::Diameter);

    EXPECT_NEAR(d, 0.625, 1e-9) << "five eighths of a 1 in stretcher";
    const double length = made.sized.tenon.length.value.inches();
    EXPECT_NEAR(volume(made.cuts.tenons[0]), M_PI * d * d / 4 * length, 0.003);
    EXPECT_NEAR(made.cuts.tenons[0].box.centre().y, 0.5 * kInch, 1e-9);
}

TEST(LetIn, GoesInWithItsWholeSection) {
    const Made made = make({JointKind::LetIn, {}});

    EXPECT_NEAR(made.cuts.tenons[0].box.size().y, 4 * kInch, 1e-9);
    EXPECT_NEAR(made.cuts.tenons[0].box.size().z, 1 * kInch, 1e-9);
}

TEST(Housed, RunsAcrossTheFaceUnlessStopped) {
    Made made;
    made.task.form = {JointKind::Housed, {}};
    made.task.section = {Role::Panel, Length::inches(8), Length::inches(0.75)};
    // A shelf end against a side: the side runs along z, its face is 9 in wide along y.
    made.task.post = {{0, -0.5 * kInch, -200}, {0.75 * kInch, 8.5 * kInch, 400}};
    made.task.postAxis = 2;
    const SizingGuide guide{
        ruleBook(), workshop().inchRack, workshop().inchBits, workshop().inchGrid};
    JointCuts cuts = cutJoint(made.task, sizeJoint(made.task, guide, {}), guide);
    EXPECT_NEAR(cuts.mortises[0].box.size().y, 9 * kInch, 1e-9);

    made.task.form.features = {JointFeature::Stopped};
    cuts = cutJoint(made.task, sizeJoint(made.task, guide, {}), guide);
    EXPECT_NEAR(cuts.mortises[0].box.min.y, 0.5 * kInch, 1e-9);
    EXPECT_NEAR(cuts.tenons[0].box.min.y, 0.5 * kInch, 1e-9) << "notched around what is left";
    EXPECT_NEAR(cuts.mortises[0].box.max.y, 8.5 * kInch, 1e-9);
}

// Fairham, bridle joints: the stock in three equal parts.
TEST(Bridle, AtACornerIsASlotOpenAtTheEnd) {
    const Made made = make({JointKind::Bridle, {}}, {3, 1.5, 2, 0, 0, 20});

    EXPECT_NEAR(made.sized.tenon.thickness.value.inches(), 0.5, 1e-9);
    EXPECT_NEAR(made.sized.tenon.shoulders.faceSide.value.inches(), 0.5, 1e-9);
    EXPECT_NEAR(made.sized.tenon.length.value.inches(), 2, 1e-9) << "through and flush";
    ASSERT_EQ(made.cuts.mortises.size(), 1u);
    EXPECT_NEAR(made.cuts.mortises[0].box.min.y, made.task.post.min.y, 1e-9);
}

TEST(Bridle, InTheMiddleStraddlesTheMiddleThirdOfTheOther) {
    const Made made = make({JointKind::Bridle, {}}, {3, 1.5, 2, 0, 20, 20});

    ASSERT_EQ(made.cuts.tenons.size(), 2u);
    EXPECT_NEAR(made.cuts.tenons[0].box.max.z, 0.5 * kInch, 1e-9);
    EXPECT_NEAR(made.cuts.tenons[1].box.min.z, 1.0 * kInch, 1e-9);
    for (std::size_t i = 0; i < 2; ++i) {
        EXPECT_NEAR(volume(made.cuts.tenons[i]), volume(made.cuts.mortises[i]), 1e-9);
    }
}

// Fairham, halved joints: half of each.
TEST(Lap, TakesHalfOfEach) {
    const Made made = make({JointKind::Lap, {}}, {3, 1.5, 2, 0, 20, 20});

    EXPECT_NEAR(made.cuts.tenons[0].box.size().z, 0.75 * kInch, 1e-9);
    EXPECT_NEAR(made.cuts.mortises[0].box.size().z, 0.75 * kInch, 1e-9);
    EXPECT_NEAR(made.cuts.mortises[0].box.size().x, 2 * kInch, 1e-9);
}

TEST(Dowelled, BoresBothPartsAlikeAndLeavesAFloor) {
    const Made made = make({JointKind::Dowelled, {}}, {4, 1, 1.25, 0.25, 5, 5});

    ASSERT_GE(made.cuts.bores.size(), 2u);
    ASSERT_EQ(made.cuts.bores.size(), made.cuts.ownBores.size());
    for (std::size_t i = 0; i < made.cuts.bores.size(); ++i) {
        EXPECT_EQ(made.cuts.bores[i].mouth, made.cuts.ownBores[i].mouth);
        EXPECT_NEAR(made.cuts.bores[i].way, -made.cuts.ownBores[i].way, 1e-12);
    }
    EXPECT_LE(made.further(SizeName::BoreDepth), 1.25 - 0.1875 + 1e-9);
}

// A cleat 3/4 in thick, 20 in long, on the face of a 7/8 in rail.
TEST(Screwed, GoThroughTheOneAndStopShortInTheOther) {
    const ScrewTask task{{{0, 0, 0}, {20 * kInch, 0.875 * kInch, 0.75 * kInch}},
                         {{-kInch, -kInch, 0.75 * kInch}, {21 * kInch, 3 * kInch, 1.625 * kInch}}};
    const SizingGuide guide{
        ruleBook(), workshop().inchRack, workshop().inchBits, workshop().inchGrid};
    const ScrewedButt butt = screwButt(task, guide, {});

    ASSERT_EQ(butt.clearance.size(), 3u) << "20 in at about 6 in";
    ASSERT_EQ(butt.pilot.size(), 3u);
    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_NEAR(butt.clearance[i].depth, 0.75 * kInch, 1e-9) << "right through";
        EXPECT_NEAR(butt.clearance[i].mouth.z, 0.0, 1e-9) << "from the outer face";
        EXPECT_NEAR(butt.pilot[i].mouth.z, 0.75 * kInch, 1e-9);
        EXPECT_LT(butt.pilot[i].box().max.z, 1.625 * kInch);
        EXPECT_LT(butt.pilot[i].diameter, butt.clearance[i].diameter);
        EXPECT_NEAR(butt.pilot[i].mouth.x, butt.clearance[i].mouth.x, 1e-9);
        EXPECT_NEAR(butt.clearance[i].mouth.y, 0.4375 * kInch, 1e-9) << "in the middle";
    }
}

TEST(Screwed, PartsThatDoNotTouchAreRefused) {
    const ScrewTask apart{{{0, 0, 0}, {100, 20, 20}}, {{0, 0, 25}, {100, 20, 45}}};
    const SizingGuide guide{
        ruleBook(), workshop().inchRack, workshop().inchBits, workshop().inchGrid};

    EXPECT_FALSE(screwButt(apart, guide, {}).trouble.empty());
}

// Clearance holes by gauge from a boat plan's chart: 7/64 in for No. 4, 9/64 for No. 6, 11/64 for
// No. 8, 3/16 for No. 10, 7/32 for No. 12, 1/4 for No. 14.
TEST(Screws, GoByTheGaugeThatTheirClearanceHoleIsFor) {
    const std::pair<double, int> chart[] = {{7.0 / 64, 4},
                                            {9.0 / 64, 6},
                                            {11.0 / 64, 8},
                                            {3.0 / 16, 10},
                                            {7.0 / 32, 12},
                                            {1.0 / 4, 14}};
    for (const auto& [hole, gauge] : chart) {
        EXPECT_EQ(soldScrew(Length::mm(hole * 25.4), Length::mm(40.0), true).gauge, gauge);
    }
    EXPECT_EQ(soldScrew(Length::mm(2.0), Length::mm(40.0), true).gauge, 0);
    EXPECT_EQ(soldScrew(Length::mm(9.0), Length::mm(40.0), true).gauge, 0);
}

TEST(Screws, AreNotLongerThanTheirHoles) {
    EXPECT_NEAR(soldScrew(Length::mm(4.0), Length::mm(44.5), false).length.mm(), 40.0, 1e-9);
    EXPECT_NEAR(
        soldScrew(Length::mm(4.0), Length::mm(1.5625 * 25.4), true).length.mm(), 38.1, 1e-9);
}

TEST(Families, WhatAKindCannotHaveIsToldAndLeftOut) {
    const Made made = make({JointKind::Lap, {JointFeature::Twin, JointFeature::Pinned}});

    EXPECT_EQ(made.sized.troubles.size(), 2u);
    EXPECT_EQ(made.cuts.tenons.size(), 1u);
}

TEST(JointForm, IsToldByItsKindAndThenWhatItHasBesides) {
    EXPECT_EQ((JointForm{JointKind::Through, {}}).words(), "through");
    EXPECT_EQ(
        (JointForm{JointKind::Through, {JointFeature::Twin, JointFeature::Drawbored}}).words(),
        "through, twin, drawbored");
}

}  // namespace
}  // namespace shoulderline
