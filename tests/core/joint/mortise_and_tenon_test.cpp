#include "core/joint/mortise_and_tenon.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "core/joint/size_chain.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::ruleBook;
using testing::workshop;

JointTask taskOf(const JointForm& form, Role role, double width, double thickness, double there) {
    JointTask task;
    task.form = form;
    task.section = {role, Length::inches(width), Length::inches(thickness)};
    task.post = {{0, -500, -20}, {Length::inches(there).mm(), 500, 60}};
    return task;
}

SizedJoint sized(const JointForm& form,
                 Role role,
                 double width,
                 double thickness,
                 double there,
                 const StatedSizes& stated = {}) {
    const SizingGuide guide{
        ruleBook(), workshop().inchRack, workshop().inchBits, workshop().inchGrid};
    return sizeMortiseAndTenon(taskOf(form, role, width, thickness, there), guide, stated);
}

const JointForm kBlind{JointKind::Blind, {}};
const JointForm kThrough{JointKind::Through, {}};
const JointForm kBareFaced{JointKind::Blind, {JointFeature::BareFaced}};

SizedJoint blind(double width, double thickness, double there, const StatedSizes& stated = {}) {
    return sized(kBlind, Role::Rail, width, thickness, there, stated);
}

// Source: one third of the stock: Fairham, Woodwork Joints, General rule; Noyes, Handwork in Wood,
// joint No. 42; Hasluck, Carpentry and Joinery. Thicknesses whose third is a chisel's width.
struct ThirdCase {
    double stock;
    double tenon;
};
void PrintTo(const ThirdCase& one, std::ostream* os) {
    *os << one.stock << " in stock";
}
class OneThirdRule : public ::testing::TestWithParam<ThirdCase> {};
TEST_P(OneThirdRule, TenonIsAThirdOfStockWhereAChiselIsThatWide) {
    EXPECT_NEAR(
        blind(3, GetParam().stock, 3).tenon.thickness.value.inches(), GetParam().tenon, 1e-9);
}
INSTANTIATE_TEST_SUITE_P(Published,
                         OneThirdRule,
                         ::testing::Values(ThirdCase{0.75, 0.25},
                                           ThirdCase{1.125, 0.375},
                                           ThirdCase{1.5, 0.5},
                                           ThirdCase{1.875, 0.625},
                                           ThirdCase{2.25, 0.75}));

TEST(TenonThickness, SevenEighthsRailGetsTheNearestChiselToItsThird) {
    // 7/24 in lies between 1/4 and 5/16; 5/16 is 1/48 away, 1/4 is 1/24 away.
    const SizedJoint joint = blind(3, 0.875, 2.125);

    EXPECT_NEAR(joint.tenon.thickness.value.inches(), 0.3125, 1e-9);
    ASSERT_EQ(joint.tenon.thickness.reasons.size(), 2u);
    EXPECT_EQ(joint.tenon.thickness.reasons[0].rule, RuleId::TenonThicknessShare);
    EXPECT_EQ(joint.tenon.thickness.reasons[1].rule, RuleId::ChiselNearest);
}

TEST(TenonThickness, WallsAndTenonShareTheStockWholly) {
    const SizedJoint joint = blind(3, 0.875, 2.125);
    const Shoulders& s = joint.tenon.shoulders;

    EXPECT_NEAR(
        (s.faceSide.value + joint.tenon.thickness.value + s.backSide.value).inches(), 0.875, 1e-12);
    EXPECT_NEAR(
        (s.faceEdge.value + joint.tenon.width.value + s.backEdge.value).inches(), 3.0, 1e-12);
}

// Source: Noyes, Handwork in Wood, joint No. 42 and Hasluck: at least half the rail's width.
TEST(TenonWidth, WideRailKeepsHalfItsWidthInTheTenon) {
    const SizedJoint joint = blind(5, 0.75, 3);

    EXPECT_NEAR(joint.tenon.width.value.inches(), 2.5, 1e-9);
    EXPECT_EQ(joint.tenon.width.reasons.back().rule, RuleId::TenonWidthShareLeast);
}

TEST(TenonWidth, NarrowRailLosesOnlyItsEdgeShoulders) {
    EXPECT_NEAR(blind(2, 1.125, 3).tenon.width.value.inches(), 1.5, 1e-9);
}

// Source: Fairham, Woodwork Joints: in a 40 mm leg the mortise goes 35 mm deep and leaves 5 mm; the
// rule's two thirds stays within that.
TEST(TenonLength, StaysWithinSevenEighthsOfThePost) {
    for (double post = 0.75; post <= 4.0; post += 0.125) {
        const SizedJoint joint = blind(3, 0.75, post);
        EXPECT_LE(joint.mortiseDepth.value.inches(), post * 0.875 + 1e-9) << "post " << post;
        EXPECT_GE(post - joint.mortiseDepth.value.inches(), 0.1875 - 1e-9) << "post " << post;
    }
}

TEST(TenonLength, TwoThirdsOfThePostTakenDownToTheGrid) {
    EXPECT_NEAR(blind(3, 0.875, 2.125).tenon.length.value.inches(), 1.375, 1e-9);  // 17/12 = 1.4167
}

TEST(MortiseDepth, IsASixteenthDeeperThanTheTenon) {
    const SizedJoint joint = blind(3, 0.875, 2.125);

    EXPECT_NEAR((joint.mortiseDepth.value - joint.tenon.length.value).inches(), 0.0625, 1e-12);
}

TEST(ThroughTenon, PassesThePartAndStandsProud) {
    const SizedJoint joint = sized(kThrough, Role::Post, 2.125, 2.125, 1.0);

    EXPECT_NEAR(joint.tenon.length.value.inches(), 1.1875, 1e-9);
    EXPECT_NEAR(joint.mortiseDepth.value.inches(), 1.0, 1e-12);
    // Source: Noyes, Handwork in Wood, joint No. 31: at least as long as the piece is thick.
    EXPECT_GE(joint.tenon.length.value.inches(), 1.0);
}

TEST(SlatTenon, LeavesASmallShoulderAtEachCheek) {
    const SizedJoint joint = sized(kBlind, Role::Slat, 2, 0.5, 0.875);

    EXPECT_NEAR(joint.tenon.thickness.value.inches(), 0.375, 1e-9);
    EXPECT_NEAR(joint.tenon.shoulders.faceSide.value.inches(), 0.0625, 1e-9);
}

TEST(StatedSize, StandsOverTheRuleAndSaysSo) {
    StatedSizes stated;
    stated.set(SizeName::TenonLength, {SizeState::Stated, Length::inches(1)});
    const SizedJoint joint = blind(3, 0.875, 2.125, stated);

    EXPECT_NEAR(joint.tenon.length.value.inches(), 1.0, 1e-12);
    EXPECT_EQ(joint.tenon.length.state, SizeState::Stated);
    EXPECT_EQ(joint.tenon.length.reasons.back().rule, RuleId::StatedOver);
    EXPECT_NEAR(joint.tenon.length.reasons.back().a.inches(), 1.375, 1e-9)
        << "what the rule would give";
    EXPECT_NEAR(joint.mortiseDepth.value.inches(), 1.0625, 1e-12) << "the mortise follows";
}

TEST(StatedSize, OffsetFollowsTheRule) {
    StatedSizes stated;
    stated.set(SizeName::TenonLength, {SizeState::RulePlusOffset, Length::inches(-0.125)});

    EXPECT_NEAR(blind(3, 0.875, 2.125, stated).tenon.length.value.inches(), 1.25, 1e-9);
    EXPECT_NEAR(blind(3, 0.875, 3.0, stated).tenon.length.value.inches(), 1.875, 1e-9);
}

TEST(StatedSize, ShoulderAtFaceSideMovesTheTenonWithoutChangingIt) {
    StatedSizes stated;
    stated.set(SizeName::ShoulderFaceSide, {SizeState::Stated, Length::inches(0.25)});
    const SizedJoint joint = blind(3, 0.875, 2.125, stated);

    EXPECT_NEAR(joint.tenon.thickness.value.inches(), 0.3125, 1e-12);
    EXPECT_NEAR(joint.tenon.shoulders.backSide.value.inches(), 0.3125, 1e-12);
}

TEST(StatedSize, ShoulderAtBackSidePlacesTheTenonFromThere) {
    StatedSizes stated;
    stated.set(SizeName::ShoulderBackSide, {SizeState::Stated, Length::inches(0.25)});
    const SizedJoint joint = blind(3, 0.875, 2.125, stated);

    EXPECT_NEAR(joint.tenon.thickness.value.inches(), 0.3125, 1e-12);
    EXPECT_NEAR(joint.tenon.shoulders.backSide.value.inches(), 0.25, 1e-12);
    EXPECT_NEAR(joint.tenon.shoulders.faceSide.value.inches(), 0.3125, 1e-12);
    EXPECT_EQ(joint.tenon.shoulders.faceSide.reasons.back().rule, RuleId::ShoulderLeft);
    EXPECT_EQ(joint.tenon.shoulders.faceSide.state, SizeState::ByRule);
}

TEST(StatedSize, TwoShouldersAcrossLeaveTheTenon) {
    StatedSizes stated;
    stated.set(SizeName::ShoulderFaceEdge, {SizeState::Stated, Length::inches(0.5)});
    stated.set(SizeName::ShoulderBackEdge, {SizeState::AsFound, Length::inches(0.75)});
    const SizedJoint joint = blind(3, 0.875, 2.125, stated);

    EXPECT_NEAR(joint.tenon.width.value.inches(), 1.75, 1e-12);
    EXPECT_EQ(joint.tenon.width.reasons.back().rule, RuleId::TenonBetweenShoulders);
    EXPECT_NEAR(joint.mortiseLength.value.inches(), 1.75, 1e-12);
    EXPECT_TRUE(joint.troubles.empty());
}

TEST(StatedSize, TenonThatDoesNotFitItsTwoStatedShouldersIsTold) {
    StatedSizes stated;
    stated.set(SizeName::ShoulderFaceSide, {SizeState::Stated, Length::inches(0.25)});
    stated.set(SizeName::ShoulderBackSide, {SizeState::Stated, Length::inches(0.25)});
    stated.set(SizeName::TenonThickness, {SizeState::Stated, Length::inches(0.5)});
    EXPECT_EQ(blind(3, 0.875, 2.125, stated).troubles.size(), 1u);
    EXPECT_NEAR(blind(3, 0.875, 2.125, stated).tenon.thickness.value.inches(), 0.375, 1e-12);

    stated.set(SizeName::TenonThickness, {SizeState::Stated, Length::inches(0.375)});
    EXPECT_TRUE(blind(3, 0.875, 2.125, stated).troubles.empty());
}

TEST(StatedSize, ShouldersThatLeaveNoTenonAreTold) {
    StatedSizes stated;
    stated.set(SizeName::ShoulderFaceSide, {SizeState::Stated, Length::inches(0.5)});
    stated.set(SizeName::ShoulderBackSide, {SizeState::Stated, Length::inches(0.5)});
    const SizedJoint joint = blind(3, 0.875, 2.125, stated);

    EXPECT_EQ(joint.troubles.size(), 1u);
    EXPECT_NEAR(joint.tenon.thickness.value.inches(), 0.3125, 1e-12);
}

// Source of the third: Fairham, Woodwork Joints, General rule; the flush cheek is common practice.
TEST(BareFacedTenon, IsAThirdOfTheStockFlushWithTheBackSide) {
    const SizedJoint joint = sized(kBareFaced, Role::Rail, 3, 1.125, 2.125);
    const Shoulders& s = joint.tenon.shoulders;

    EXPECT_NEAR(joint.tenon.thickness.value.inches(), 0.375, 1e-9);
    EXPECT_EQ(s.backSide.value, Length());
    EXPECT_EQ(s.backSide.reasons.back().rule, RuleId::BareFaced);
    EXPECT_NEAR(s.faceSide.value.inches(), 0.75, 1e-9);
    EXPECT_NEAR(s.faceEdge.value.inches(), s.backEdge.value.inches(), 1e-12)
        << "only one cheek is bare";
    EXPECT_EQ(joint.tenon.length, sized(kBlind, Role::Rail, 3, 1.125, 2.125).tenon.length);
}

TEST(BareFacedTenon, AStatedBackShoulderStandsOverTheFlushCheek) {
    StatedSizes stated;
    stated.set(SizeName::ShoulderBackSide, {SizeState::Stated, Length::inches(0.0625)});
    const SizedJoint joint = sized(kBareFaced, Role::Rail, 3, 1.125, 2.125, stated);

    EXPECT_NEAR(joint.tenon.shoulders.backSide.value.inches(), 0.0625, 1e-12);
    EXPECT_NEAR(joint.tenon.shoulders.faceSide.value.inches(), 0.6875, 1e-9);
}

// Those that every mortise and tenon has, in the order of their names.
Size sizeNamed(const SizedJoint& joint, SizeName name) {
    const Tenon& t = joint.tenon;
    const Shoulders& s = t.shoulders;
    const Size* sizes[] = {&t.thickness,
                           &t.width,
                           &t.length,
                           &t.projection,
                           &s.faceSide,
                           &s.backSide,
                           &s.faceEdge,
                           &s.backEdge,
                           &joint.mortiseWidth,
                           &joint.mortiseLength,
                           &joint.mortiseDepth};
    return *sizes[static_cast<std::size_t>(name)];
}

// Every size by its name, in each way of stating one.
class EachSize : public ::testing::TestWithParam<std::size_t> {};
TEST_P(EachSize, IsOverriddenAloneAndSaysSo) {
    const auto name = static_cast<SizeName>(GetParam());
    const JointForm kind = name == SizeName::Projection ? kThrough : kBlind;
    const auto with = [&](SizeState state, double value) {
        StatedSizes stated;
        stated.set(name, {state, Length::inches(value)});
        return sized(kind, Role::Rail, 3, 0.875, 2.125, stated);
    };
    const Length ruled = sizeNamed(sized(kind, Role::Rail, 3, 0.875, 2.125), name).value;

    const Size stated = sizeNamed(with(SizeState::Stated, 0.21), name);
    EXPECT_NEAR(stated.value.inches(), 0.21, 1e-12);
    EXPECT_EQ(stated.state, SizeState::Stated);
    EXPECT_EQ(stated.reasons.back().rule, RuleId::StatedOver);
    EXPECT_NEAR(stated.reasons.back().a.mm(), ruled.mm(), 1e-9);
    const Size found = sizeNamed(with(SizeState::AsFound, 0.21), name);
    EXPECT_EQ(found.reasons.back().rule, RuleId::AsFound);
    const Size offset = sizeNamed(with(SizeState::RulePlusOffset, 0.03), name);
    EXPECT_NEAR((offset.value - ruled).inches(), 0.03, 1e-12);
    EXPECT_EQ(offset.reasons.back().rule, RuleId::StatedOffset);

    const SizedJoint joint = with(SizeState::Stated, 0.21);
    const Shoulders& s = joint.tenon.shoulders;
    EXPECT_NEAR(
        (s.faceSide.value + joint.tenon.thickness.value + s.backSide.value).inches(), 0.875, 1e-12);
    EXPECT_NEAR(
        (s.faceEdge.value + joint.tenon.width.value + s.backEdge.value).inches(), 3.0, 1e-12);
}
INSTANTIATE_TEST_SUITE_P(All,
                         EachSize,
                         ::testing::Range(std::size_t{0},
                                          static_cast<std::size_t>(SizeName::MortiseDepth) + 1),
                         [](const auto& sampled) {
                             std::string word(wordFor(static_cast<SizeName>(sampled.param)));
                             std::replace(word.begin(), word.end(), ' ', '_');
                             return word;
                         });

TEST(Rack, OfTwoEquallyNearChiselsTheNarrowerIsTaken) {
    const std::vector<Length> rack{Length::inches(0.25), Length::inches(0.375)};

    EXPECT_NEAR(nearestOn(rack, Length::inches(0.3125)).inches(), 0.25, 1e-12);
    EXPECT_NEAR(chiselWithin(rack, Length::inches(0.37)).inches(), 0.25, 1e-12);
    EXPECT_NEAR(chiselWithin(rack, Length::inches(0.1)).inches(), 0.25, 1e-12)
        << "the narrowest there is";
}

}  // namespace
}  // namespace shoulderline
