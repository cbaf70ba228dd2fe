// Wood that moves in a piece: figures and findings.

#include "core/check/movement.h"

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::findings;
using testing::ofRule;
using testing::resolved;
using testing::statedPart;
using testing::twoPostsAndARail;

TEST(Season, IsThatOfHeatedRoomsWhereNothingIsStated) {
    const Season season = seasonOf(Piece{});

    // Wood Handbook, Table 4-2: 21.1 C, 30 and 60 %.
    EXPECT_NEAR(season.dry, 6.2, 0.07);
    EXPECT_NEAR(season.damp, 11.0, 0.07);
    EXPECT_TRUE(season.troubles.empty());
}

TEST(Season, TakesAMoistureContentOrAnAirAsStated) {
    Piece piece;
    piece.use.climate = {{"7", "", ""}, {"", "21.1", "80"}};

    const Season season = seasonOf(piece);

    EXPECT_EQ(season.dry, 7.0);
    EXPECT_NEAR(season.damp, 16.0, 0.07) << "Wood Handbook, Table 4-2";
}

TEST(Season, TellsOfAirThatCannotBe) {
    Piece piece;
    piece.use.climate = {{"12", "", ""}, {"", "", "99"}};
    EXPECT_EQ(seasonOf(piece).troubles.size(), 2u) << "too damp, and then drier than the driest";

    piece.use.climate = {{"no such measure", "", ""}, {}};
    EXPECT_EQ(seasonOf(piece).troubles.size(), 1u);
    EXPECT_NEAR(seasonOf(piece).dry, 6.2, 0.07);
}

TEST(PartMovement, GoesByTheCutOfTheStock) {
    Piece piece = twoPostsAndARail();
    piece.use.climate = {{"6", "", ""}, {"12", "", ""}};
    const auto widthOf = [&](Cut cut) {
        piece.stocks[1].cut = cut;
        const ResolvedPiece frame = resolved(piece);
        const std::size_t rail = *frame.findPart("rail");
        return movementReport(piece, frame, testing::speciesTable()).parts[rail];
    };

    // White oak, Wood Handbook Table 13-5: 0.00365 tangential, 0.00180 radial; 3 in wide, 7/8
    // thick.
    EXPECT_NEAR(*widthOf(Cut::Flat).width, 76.2 * 0.00365 * 6, 1e-9);
    EXPECT_NEAR(*widthOf(Cut::Quarter).width, 76.2 * 0.00180 * 6, 1e-9);
    EXPECT_NEAR(*widthOf(Cut::Rift).width, 76.2 * (0.00365 + 0.00180) / 2 * 6, 1e-9);
    EXPECT_NEAR(*widthOf(Cut::Quarter).thickness, 22.225 * 0.00365 * 6, 1e-9);
}

TEST(PartMovement, IsNotGuessedWhereThereIsNoFigure) {
    Piece piece = twoPostsAndARail();
    piece.stocks[1].species = "Mahogany, true";
    const ResolvedPiece frame = resolved(piece);

    EXPECT_FALSE(
        movementReport(piece, frame, testing::speciesTable()).parts[*frame.findPart("rail")].width);
}

Piece withWideTenon(const char* width) {
    Piece piece = twoPostsAndARail();
    piece.parts[1].width = "5 in";
    JointStatement joint;
    joint.tenoned = "rail";
    joint.mortised = "post";
    joint.sizes = {{SizeName::TenonWidth, {SizeState::Stated, width}}};
    piece.joints = {joint};
    return piece;
}

TEST(MovementFinding, AWideTenonIsHeldAcrossTheGrain) {
    const std::vector<Finding> some =
        ofRule(findings(withWideTenon("4 in")), RuleId::MovementTenonHeld);

    ASSERT_EQ(some.size(), 1u) << "both ends told once";
    EXPECT_EQ(some[0].severity, Severity::LookAt);
    EXPECT_NEAR(some[0].value, 101.6, 1e-6);
    EXPECT_EQ(some[0].limit, 75.0);
    // 101.6 mm quartersawn white oak, 0.00180 over 4.8 %.
    EXPECT_NE(some[0].message.find("0.9"), std::string::npos) << some[0].message;
    const Piece mended =
        shoulderline::apply(withWideTenon("4 in"), *some[0].mends.at(0).edit).value();
    EXPECT_TRUE(ofRule(findings(mended), RuleId::MovementTenonHeld).empty());
}

TEST(MovementFinding, ANarrowTenonIsNot) {
    EXPECT_TRUE(ofRule(findings(withWideTenon("2 1/2 in")), RuleId::MovementTenonHeld).empty());
}

TEST(MovementFinding, ATopHeldAtBothSidesNeedsSlots) {
    Piece table = testing::sample("table");
    statedPart(table, "end rail").cuts.clear();  // nothing is said of how it is fixed

    const std::vector<Finding> some = ofRule(findings(table), RuleId::MovementFixedApart);

    ASSERT_EQ(some.size(), 1u);
    EXPECT_EQ(some[0].severity, Severity::Note);
    EXPECT_GT(some[0].value, some[0].limit);
    EXPECT_NE(some[0].mends.at(0).text.find("slotted holes"), std::string::npos);
}

TEST(MovementFinding, ATopFastInTheMiddleAndSlottedAtItsSidesIsFree) {
    EXPECT_TRUE(ofRule(findings(testing::sample("table")), RuleId::MovementFixedApart).empty());
}

// The seat's screws: one up through the middle of the front rail, two through each side rail.
TEST(MovementFinding, ASeatFastAtItsMiddleAndSlottedAtItsSidesIsFree) {
    for (const char* name : {"side_chair", "raked_chair"}) {
        Piece chair = testing::sample(name);
        EXPECT_TRUE(ofRule(findings(chair), RuleId::MovementFixedApart).empty()) << name;
        EXPECT_TRUE(ofRule(findings(chair), RuleId::SlotTakesMovement).empty()) << name;

        for (CutStatement& cut : statedPart(chair, "side rail").cuts) {
            cut.slot = SlotWay::Round;
        }

        EXPECT_EQ(ofRule(findings(chair), RuleId::MovementFixedApart).size(), 1u) << name;
    }
}

TEST(MovementFinding, ATopInRoundHolesIsHeldAsFarApartAsTheyAre) {
    Piece table = testing::sample("table");
    for (CutStatement& cut : statedPart(table, "end rail").cuts) {
        cut.slot = SlotWay::Round;
    }
    const ResolvedPiece made = resolved(table);
    const double rail = made.parts[*made.findPart("end rail, right")].shoulderLength.value.mm();
    const std::size_t top = *made.findPart("top");
    const double change = *movementReport(table, made, testing::speciesTable()).parts[top].width;

    const std::vector<Finding> some = ofRule(findings(table), RuleId::MovementFixedApart);

    ASSERT_EQ(some.size(), 1u);
    EXPECT_NEAR(some[0].value / change, (rail - 2 * 60.0) / made.parts[top].width.value.mm(), 1e-6)
        << "60 mm from each end of the rail";
}

// An arm laid across two posts, which hold it apart across its grain.
Piece armAcross(const char* between) {
    Piece piece = twoPostsAndARail();
    piece.parts[0].relation = Stands{{Side::Right, between}, {Side::Front, "0 in"}, "", "24 in"};
    Part arm;
    arm.name = "arm";
    arm.role = Role::Arm;
    arm.stock = "rail stock";
    arm.width = "26 in";
    arm.relation = Caps{{"post"}, Side::Back, {}};
    piece.parts.push_back(arm);
    return piece;
}

TEST(MovementFinding, AnArmFixedToTwoPostsAcrossItsGrainPullsAtThem) {
    const std::vector<Finding> wide =
        ofRule(findings(armAcross("12 in")), RuleId::MovementFixedApart);
    ASSERT_EQ(wide.size(), 1u);
    EXPECT_EQ(wide[0].severity, Severity::LookAt);
    // 22 in from post to post, quartersawn white oak over 4.8 %.
    EXPECT_NEAR(wide[0].value, 558.8 * 0.00180 * 4.8, 0.05);

    EXPECT_TRUE(ofRule(findings(testing::sample("armchair")), RuleId::MovementFixedApart).empty())
        << "its posts stand along the grain of the arm";
}

Piece withSlats(const char* count) {
    Piece piece = twoPostsAndARail();
    Part slat;
    slat.name = "slat";
    slat.role = Role::Slat;
    slat.stock = "rail stock";
    slat.width = "3 in";
    slat.thickness = "1/2 in";
    slat.relation = Free{"0 in", "0 in", "30 in", "", "", "90 deg", "10 in"};
    Part lower = piece.parts[1];
    lower.name = "lower rail";
    std::get<Spans>(lower.relation).level = Position{Side::Top, "6 in"};
    piece.parts.push_back(lower);
    slat.relation = Spans{"lower rail", "rail", std::nullopt, Setting{}, false};
    slat.spacing = Spacing{"post, left", "post, right", count, "", ""};
    piece.parts.push_back(slat);
    return piece;
}

TEST(MovementFinding, GapsThatCloseInDampAirAreTold) {
    // 20 in clear between the posts: six slats of 3 in leave gaps of 2/7 in, and 3 of them plenty.
    EXPECT_TRUE(ofRule(findings(withSlats("3")), RuleId::MovementGapLeast).empty());
    Piece tight = withSlats("6");
    testing::statedPart(tight, "slat").width = "3.325 in";

    const std::vector<Finding> some = ofRule(findings(tight), RuleId::MovementGapLeast);

    ASSERT_EQ(some.size(), 1u);
    EXPECT_LT(some[0].value, 0.5);
    EXPECT_NE(some[0].message.find("grows"), std::string::npos);
}

}  // namespace
}  // namespace shoulderline
