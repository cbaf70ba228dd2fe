#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/joint/cross_lap.h"
#include "core/joint/grooved.h"
#include "core/joint/joint_sizing.h"
#include "core/joint/screws.h"
#include "tests/support/pieces.h"

// Tusk tenons, eased ends, round ends, shortened tenons, panels, cross laps and plugs, each by
// itself. Lengths in inches unless said.
namespace shoulderline {
namespace {

using testing::ruleBook;
using testing::workshop;

using testing::kInch;

SizingGuide guide() {
    return {ruleBook(), workshop().inchRack, workshop().inchBits, workshop().inchGrid};
}

JointTask taskOf(const JointForm& form) {
    JointTask task;
    task.form = form;
    task.section = {Role::Stretcher, Length::inches(3), Length::inches(1.125)};
    task.post = {{0, -2 * kInch, -0.5 * kInch}, {1.125 * kInch, 6 * kInch, 1.625 * kInch}};
    return task;
}

struct MadeFurther {
    SizedJoint sized;
    JointCuts cuts;
};

MadeFurther make(const JointTask& task, const StatedSizes& stated = {}) {
    MadeFurther made;
    made.sized = sizeJoint(task, guide(), stated);
    made.cuts = cutJoint(task, made.sized, guide());
    return made;
}

double volumeOf(const JointSolid& solid) {
    return solid.exact ? solid.exact->volume() : solid.box.volume();
}

// Noyes, Handwork in Wood, joint No. 39: the slot for the key begins 1/16 in inside the outer face
// of the mortised piece.
TEST(TuskTenon, ItsSlotBeginsASixteenthInsideTheOuterFace) {
    const MadeFurther made = make(taskOf({JointKind::Through, {JointFeature::Tusked}}));

    ASSERT_EQ(made.cuts.slots.size(), 1u);
    const Box& slot = made.cuts.slots.front().box;
    EXPECT_NEAR(slot.min.x / kInch, 1.125 - 1.0 / 16, 1e-9);
    EXPECT_NEAR(
        slot.size().y / kInch, made.sized.furtherSize(SizeName::TuskThickness).inches(), 1e-9);
}

// Common practice: 1 to 1 1/2 times the wedge's thickness of wood beyond it; taper 1 in 6 to 1 in
// 8.
TEST(TuskTenon, LeavesWoodBeyondItsWedge) {
    const MadeFurther made = make(taskOf({JointKind::Through, {JointFeature::Tusked}}));

    const double thickness = made.sized.furtherSize(SizeName::TuskThickness).mm();
    const double beyond = made.cuts.tenons.front().box.max.x - made.cuts.slots.front().box.max.x;
    EXPECT_GE(beyond, thickness);
    EXPECT_LE(beyond, 1.5 * thickness + kInch / 16 + 1e-9);
    // The slot is a prism of a trapezium: what the taper takes off is a triangle.
    const Box& slot = made.cuts.slots.front().box;
    const double through = slot.size().z;
    const double taken = through * (through / 8) / 2 * slot.size().y;
    EXPECT_NEAR(volumeOf(made.cuts.slots.front()), slot.volume() - taken, 1e-6);
}

TEST(TuskTenon, NeedsAThroughTenon) {
    const MadeFurther made = make(taskOf({JointKind::Blind, {JointFeature::Tusked}}));

    EXPECT_FALSE(made.sized.troubles.empty());
    EXPECT_TRUE(made.cuts.slots.empty());
}

// Closed form: a chamfer of c on four edges of a t by w end takes c^2/2 times (2t + 2w) less the
// four corners that two of them share, c^3/3 each.
TEST(EasedEnd, ChamferTakesAsMuchAsTheClosedFormSays) {
    StatedSizes stated;
    stated.set(SizeName::Projection, {SizeState::Stated, Length::inches(0.25)});
    const MadeFurther plain = make(taskOf({JointKind::Through, {}}), stated);
    const MadeFurther made =
        make(taskOf({JointKind::Through, {JointFeature::ChamferedEnd}}), stated);

    const double c = made.sized.furtherSize(SizeName::EndEasing).mm();
    EXPECT_NEAR(c, 0.125 * kInch, 1e-9) << "1/8 in, of the 1/4 in that stands proud";
    const Vec3 size = plain.cuts.tenons.front().box.size();
    const double taken = c * c / 2 * 2 * (size.y + size.z) - 4 * c * c * c / 3;
    EXPECT_NEAR(
        volumeOf(plain.cuts.tenons.front()) - volumeOf(made.cuts.tenons.front()), taken, 1e-6);
}

// Closed form: rounding an edge to r takes (1 - pi/4) r^2 of it; at the corners two of them meet.
TEST(EasedEnd, RoundingTakesLessThanAChamferAndAboutWhatTheClosedFormSays) {
    StatedSizes stated;
    stated.set(SizeName::Projection, {SizeState::Stated, Length::inches(0.25)});
    const MadeFurther plain = make(taskOf({JointKind::Through, {}}), stated);
    const MadeFurther made = make(taskOf({JointKind::Through, {JointFeature::RoundedEnd}}), stated);

    const double r = made.sized.furtherSize(SizeName::EndEasing).mm();
    const Vec3 size = plain.cuts.tenons.front().box.size();
    const double edges = (1 - std::numbers::pi / 4) * r * r * 2 * (size.y + size.z);
    const double taken = volumeOf(plain.cuts.tenons.front()) - volumeOf(made.cuts.tenons.front());
    EXPECT_LT(taken, edges);
    EXPECT_GT(taken, edges - 4 * r * r * r * (5.0 / 3 - std::numbers::pi / 2) - 0.05 * edges);
}

TEST(EasedEnd, OfAFlushTenonIsToldAsImpossible) {
    StatedSizes stated;
    stated.set(SizeName::Projection, {SizeState::Stated, Length()});

    EXPECT_FALSE(make(taskOf({JointKind::Through, {JointFeature::ChamferedEnd}}), stated)
                     .sized.troubles.empty());
}

// A cutter as wide as the mortise leaves half circles: the mouth is a rectangle and a circle.
TEST(RoundEnds, MortiseIsARectangleWithHalfCircles) {
    const MadeFurther made = make(taskOf({JointKind::Blind, {JointFeature::RoundEnds}}));

    const Box& mouth = made.cuts.mortises.front().box;
    const double d = mouth.size().z;
    const double area = d * (mouth.size().y - d) + std::numbers::pi * d * d / 4;
    EXPECT_NEAR(volumeOf(made.cuts.mortises.front()) / mouth.size().x, area, area * 2e-3);
    EXPECT_TRUE(made.cuts.tenons.front().exact.has_value());
}

// Fairham, Table framing: run in until they almost touch; 1/16 in of wood between (rule book).
TEST(Shortened, EndsBeforeItsNeighbour) {
    JointTask task = taskOf({JointKind::Blind, {JointFeature::Shortened}});
    task.post.max.x = 2.5 * kInch;
    task.neighbourBefore = Length::inches(1.0);
    const MadeFurther made = make(task);

    EXPECT_NEAR(made.sized.mortiseDepth.value.inches(), 1.0 - 1.0 / 16, 1.0 / 32 + 1e-9);
    EXPECT_LE(made.sized.mortiseDepth.value.inches(), 1.0 - 1.0 / 16 + 1e-9);
}

// Noyes, joint No. 42: the tenon loses the depth of the groove.
TEST(GrooveBeside, TakesItsDepthOffTheTenon) {
    JointTask task = taskOf({JointKind::Blind, {}});
    const Length usual = make(task).sized.tenon.shoulders.backEdge.value;
    task.grooveAtBackEdge = Length::inches(0.625);

    EXPECT_LT(usual.inches(), 0.625);
    EXPECT_NEAR(make(task).sized.tenon.shoulders.backEdge.value.inches(), 0.625, 1e-9);
    EXPECT_EQ(make(task).sized.tenon.shoulders.backEdge.state, SizeState::ByRule);
}

GroovedTask panel(double width, bool isAcross = true) {
    return {Length::inches(0.5),
            Length::inches(width),
            isAcross,
            Length::inches(0.75),
            Length::inches(2)};
}

// Noyes, joint No. 42: groove as wide as the tenon is thick, a third; as deep as wide.
TEST(Grooved, GrooveIsAThirdOfTheFrameAndAboutAsDeep) {
    const GroovedEdge edge = sizeGrooved(panel(8), guide(), {});

    EXPECT_NEAR(edge.grooveWidth.value.inches(), 0.25, 1e-9);
    EXPECT_NEAR(edge.grooveDepth.value.inches(), 0.25, 1e-9);
    EXPECT_NEAR(edge.tongueThickness.value.inches(), 0.25, 1e-9);
    EXPECT_NEAR((edge.tongueLength.value + edge.room.value).inches(), 0.25, 1e-9);
}

// Common practice: 1/16 to 1/8 in at each edge of a panel of one to two feet.
TEST(Grooved, PanelHasRoomAtItsEdgesAndLittleAtItsEnds) {
    for (const double width : {12.0, 18.0}) {
        const double room = sizeGrooved(panel(width), guide(), {}).room.value.inches();
        EXPECT_GE(room, 1.0 / 16) << width;
        EXPECT_LE(room, 0.2) << width;
    }
    EXPECT_NEAR(sizeGrooved(panel(18, false), guide(), {}).room.value.inches(), 1.0 / 16, 1e-9);
}

TEST(Grooved, RoomThatLeavesNoTongueIsTold) {
    StatedSizes stated;
    stated.set(SizeName::Room, {SizeState::Stated, Length::inches(0.25)});
    stated.set(SizeName::GrooveDepth, {SizeState::Stated, Length::inches(0.25)});

    EXPECT_FALSE(sizeGrooved(panel(8), guide(), stated).troubles.empty());
}

// Fairham, halved joints: half of each.
TEST(CrossLap, TakesHalfOutOfEachAndTogetherWhatBothWouldFill) {
    const CrossLapTask task{{{0, 0, 0}, {500, 50, 30}}, {{200, -100, 0}, {250, 300, 30}}, 1};
    const CrossLap lap = crossLap(task, guide(), {});

    ASSERT_TRUE(lap.trouble.empty());
    EXPECT_NEAR(lap.outOfFirst.volume(), 50.0 * 50 * 15, 1e-9);
    EXPECT_NEAR(lap.outOfFirst.volume() + lap.outOfSecond.volume(), 50.0 * 50 * 30, 1e-9);
    EXPECT_EQ(lap.firstFace, Face::BackSide);
}

TEST(CrossLap, OnEdgeTakesHalfOfTheDepthThatBothShare) {
    // The second is deeper and lies lower: it comes in from the first's back edge.
    const CrossLapTask task{{{0, 0, 0}, {500, 50, 20}}, {{200, 0, -100}, {230, 70, 300}}, 2};
    const CrossLap lap = crossLap(task, guide(), {});

    EXPECT_NEAR(lap.outOfFirst.min.y, 25, 1e-9);
    EXPECT_NEAR(lap.outOfFirst.max.y, 50, 1e-9);
    EXPECT_NEAR(lap.outOfSecond.min.y, 0, 1e-9);
    EXPECT_NEAR(lap.outOfSecond.max.y, 25, 1e-9);
    EXPECT_EQ(lap.firstFace, Face::BackEdge);
}

TEST(CrossLap, PartsThatOnlyTouchAreNotLapped) {
    EXPECT_FALSE(
        crossLap({{{0, 0, 0}, {500, 50, 30}}, {{200, -100, 30}, {250, 300, 60}}, 1}, guide(), {})
            .trouble.empty());
}

// A boat-plan chart: counterbores of 5/16, 3/8, 3/8, 7/16 and 1/2 in for screws No. 6, 8, 10, 12
// and 14; shank = 0.060 + 0.013 N in.
TEST(Plugs, AreAsWideAsThePublishedChartSays) {
    struct Row {
        int gauge;
        double plug;
    };
    for (const Row& row :
         {Row{6, 0.3125}, Row{8, 0.375}, Row{10, 0.375}, Row{12, 0.4375}, Row{14, 0.5}}) {
        StatedSizes stated;
        stated.set(SizeName::Diameter,
                   {SizeState::Stated, Length::inches(0.060 + 0.013 * row.gauge)});
        const ScrewedButt butt = screwButt(
            {{{0, 0, 0}, {200, 60, 25.4}}, {{0, 0, 25.4}, {200, 60, 80}}, true}, guide(), stated);
        ASSERT_FALSE(butt.plugs.empty());
        EXPECT_NEAR(butt.plugs.front().diameter / kInch, row.plug, 1e-9) << row.gauge;
    }
}

// A bracket whose back slopes from 40 mm at one end to nothing: heads as far from the post each, so
// that screws of one length serve (common practice).
TEST(Plugs, LeaveAsMuchUnderEachHeadWhereThePartSlopes) {
    ScrewTask task{{{0, 0, 0}, {120, 22, 60}}, {{0, 0, 60}, {120, 22, 120}}, true};
    task.woodIn = [](const Box& mouth, int, double) {
        return std::optional(40.0 * (1.0 - mouth.min.x / 120.0));  // the deepest under the mouth
    };
    const ScrewedButt butt = screwButt(task, guide(), {});

    ASSERT_EQ(butt.plugs.size(), 2u);
    EXPECT_TRUE(butt.trouble.empty());
    const double radius = butt.plugs.front().diameter / 2;
    const double thinnest = 60.0 - 40.0 * (1.0 - (butt.plugs.front().mouth.x - radius) / 120.0);
    double sunk = 0.0;
    for (const FurtherSize& size : butt.further) {
        sunk = size.name == SizeName::PlugDepth ? size.size.value.mm() : sunk;
    }
    for (const JointBore& plug : butt.plugs) {
        EXPECT_NEAR(60.0 - plug.depth, thinnest - sunk, 1e-9);
    }
}

TEST(Screwed, IsRefusedWhereThePartIsCutAwayUnderAHead) {
    ScrewTask task{{{0, 0, 0}, {120, 22, 60}}, {{0, 0, 60}, {120, 22, 120}}, false};
    task.woodIn = [](const Box& mouth, int, double) {
        return mouth.min.x > 60.0 ? std::optional(5.0) : std::nullopt;
    };
    const ScrewedButt butt = screwButt(task, guide(), {});

    EXPECT_FALSE(butt.trouble.empty());
    EXPECT_TRUE(butt.clearance.empty());
}

TEST(Plugs, LeaveHalfOfThePartUnderTheHead) {
    const ScrewedButt butt =
        screwButt({{{0, 0, 0}, {200, 60, 8}}, {{0, 0, 8}, {200, 60, 80}}, true}, guide(), {});

    EXPECT_LE(butt.plugs.front().depth, 4.0 + 1e-9);
    EXPECT_EQ(butt.plugs.size(), butt.clearance.size());
}

}  // namespace
}  // namespace shoulderline
