#include "core/resolve/sitting.h"

#include <cmath>

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::resolved;

Part freeBoard(const char* name, Role role, Free placed, const char* width, const char* thickness) {
    Part part;
    part.name = name;
    part.role = role;
    part.stock = "ash";
    part.width = width;
    part.thickness = thickness;
    part.relation = std::move(placed);
    return part;
}

// A board 400 mm deep as a seat, its front 430 mm up, sloping down to its back by `slope`; and a
// board 500 mm high behind it that leans back by `lean`. Free parts are turned about x: the right
// way round, y into z.
Piece seatAndBack(const char* slope, const char* lean) {
    Piece piece;
    piece.unit = Unit::Millimetre;
    Stock ash;
    ash.name = "ash";
    ash.species = "Ash, white";
    ash.thickness = "20 mm";
    piece.stocks = {ash};
    Free seat{"-200 mm", "0 mm", "410 mm", std::string("-(") + slope + ")", "", "", "400 mm"};
    Free back{
        "-200 mm", "430 mm", "450 mm", std::string("90 deg - (") + lean + ")", "", "", "400 mm"};
    piece.parts = {freeBoard("seat", Role::Seat, seat, "400 mm", "20 mm"),
                   freeBoard("back board", Role::Panel, back, "500 mm", "20 mm")};
    return piece;
}

TEST(Sitting, ALevelSeatAndAnUprightBackAreAtRightAngles) {
    const std::optional<Sitting> sitting = sittingOn(resolved(seatAndBack("0 deg", "0 deg")));

    ASSERT_TRUE(sitting && sitting->lean);
    EXPECT_NEAR(sitting->slope.degrees(), 0.0, 1e-9);
    EXPECT_NEAR(sitting->lean->degrees(), 0.0, 1e-9);
    EXPECT_NEAR(sitting->between()->degrees(), 90.0, 1e-9);
    EXPECT_NEAR(sitting->seatHeight.mm(), 430.0, 1e-9);
}

// By construction: the boards were turned by these angles.
TEST(Sitting, TheAnglesAreThoseThatTheBoardsWereTurnedBy) {
    const std::optional<Sitting> sitting = sittingOn(resolved(seatAndBack("4 deg", "15 deg")));

    ASSERT_TRUE(sitting && sitting->lean);
    EXPECT_NEAR(sitting->slope.degrees(), 4.0, 1e-9);
    EXPECT_NEAR(sitting->lean->degrees(), 15.0, 1e-9);
    EXPECT_NEAR(sitting->between()->degrees(), 101.0, 1e-9);
}

TEST(Sitting, TheArmchairsBackLeansAsItsSwingHasIt) {
    const ResolvedPiece chair = resolved(testing::sample("armchair"));
    const std::optional<Sitting> sitting = sittingOn(chair);
    ASSERT_TRUE(sitting && sitting->lean);
    ASSERT_FALSE(chair.swings.empty());
    const ResolvedSwing& swing = chair.swings.front();

    EXPECT_NEAR(sitting->lean->degrees(), swing.positions[swing.at].lean.degrees(), 0.01);
}

TEST(Sitting, NobodySitsOnATableOrACabinetOrABed) {
    for (const char* piece : {"table", "chart_cabinet", "bed_frame"}) {
        EXPECT_FALSE(sittingOn(resolved(testing::sample(piece)))) << piece;
    }
}

TEST(Sitting, AStoolHasASeatAndNoBack) {
    const std::optional<Sitting> sitting = sittingOn(resolved(testing::sample("pilot_stool")));

    ASSERT_TRUE(sitting);
    EXPECT_FALSE(sitting->lean);
    EXPECT_NEAR(sitting->slope.degrees(), 0.0, 1e-6);
}

// The ranges are those of the rule book, from the published seating figures named there.
TEST(Sitting, AnglesOutsideThePublishedOnesAreToldAndThoseWithinAreNot) {
    const auto told = [](const char* slope, const char* lean, RuleId rule) {
        return testing::ofRule(testing::findings(seatAndBack(slope, lean)), rule).size();
    };

    EXPECT_EQ(told("4 deg", "15 deg", RuleId::SeatSlope), 0U);
    EXPECT_EQ(told("4 deg", "15 deg", RuleId::SeatToBack), 0U);
    EXPECT_EQ(told("18 deg", "30 deg", RuleId::SeatSlope), 1U);
    EXPECT_EQ(told("-3 deg", "10 deg", RuleId::SeatSlope), 1U);
    EXPECT_EQ(told("0 deg", "0 deg", RuleId::SeatToBack), 1U);
    EXPECT_EQ(told("0 deg", "28 deg", RuleId::SeatToBack), 1U);
}

}  // namespace
}  // namespace shoulderline
