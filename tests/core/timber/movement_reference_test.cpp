// Moisture and movement against the published tables and worked examples in
// tests/reference/moisture.json, which names its sources.

#include <cmath>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "core/timber/moisture.h"
#include "core/timber/movement.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

nlohmann::json table(const char* name) {
    return nlohmann::json::parse(testing::textOf("tests/reference/moisture.json")).at(name);
}

TEST(EquilibriumMoisture, IsAsThePrintedTableHasIt) {
    for (const char* name : {"equilibrium", "rules_of_thumb"}) {
        const nlohmann::json rows = table(name);
        for (const nlohmann::json& row : rows.at("rows")) {
            const Result<double> moisture =
                equilibriumMoisture(row.at("celsius"), row.at("humidity"));
            ASSERT_TRUE(moisture) << row;
            EXPECT_NEAR(*moisture, row.at("moisture").get<double>(), rows.at("tolerance")) << row;
        }
    }
}

TEST(EquilibriumMoisture, IsRefusedOutsideTheTable) {
    EXPECT_FALSE(equilibriumMoisture(-5.0, 50.0));
    EXPECT_FALSE(equilibriumMoisture(21.0, 3.0));
    EXPECT_FALSE(equilibriumMoisture(21.0, 99.0));
    EXPECT_FALSE(equilibriumMoisture(std::nan(""), 50.0));
    EXPECT_TRUE(equilibriumMoisture(kLeastCelsius, kMostHumidity));
}

TEST(ChangeCoefficient, GoesWithThePublishedShrinkage) {
    const nlohmann::json rows = table("coefficients");
    for (const nlohmann::json& row : rows.at("rows")) {
        EXPECT_NEAR(coefficientFor(row.at("shrinkage")),
                    row.at("coefficient").get<double>(),
                    rows.at("tolerance"))
            << row;
        EXPECT_NEAR(shrinkageFor(row.at("coefficient")), row.at("shrinkage").get<double>(), 0.02)
            << row;
    }
}

TEST(ChangeOfSize, IsAsTheWorkedExamplesPrintIt) {
    const nlohmann::json examples = table("changes");
    for (const nlohmann::json& row : examples.at("rows")) {
        EXPECT_NEAR(
            changeOfSize(row.at("size"), row.at("coefficient"), row.at("from"), row.at("to"))
                .value(),
            row.at("change").get<double>(),
            row.at("tolerance"))
            << row;
    }
}

TEST(ChangeOfSize, OfPlainSawnBoardsLiesInTheTradesBand) {
    const nlohmann::json band = table("plain_sawn_band");
    const double share = band.at("share");
    for (const nlohmann::json& row : band.at("rows")) {
        const Species* species = testing::speciesTable().find(row.at("species").get<std::string>());
        ASSERT_NE(species, nullptr) << row;
        const double shrink =
            -changeOfSize(12.0, *changeCoefficient(*species, RingDirection::Tangential), 10.0, 6.0)
                 .value() *
            64.0 * 5.0 / 4.0;  // the list goes to 5 %, the coefficients to 6 %
        const double listed = row.at("sixty_fourths");
        EXPECT_NEAR(shrink, listed, share * listed) << row;
    }
}

// Outside 6 to 14 % the shrinkage is followed from green: walking the same way in two steps comes
// to the same size, which the straight line does not.
TEST(ChangeOfSize, FromGreenIsTheSameInOneStepOrTwo) {
    const double coefficient = coefficientFor(10.5);
    const double once = 250.0 + changeOfSize(250.0, coefficient, 25.0, 4.0).value();
    const double part = 250.0 + changeOfSize(250.0, coefficient, 25.0, 16.0).value();
    const double twice = part + changeOfSize(part, coefficient, 16.0, 4.0).value();

    EXPECT_NEAR(once, twice, 1e-9);
    const double green = 250.0 / (1.0 - 0.105 * (30.0 - 25.0) / 30.0);
    EXPECT_NEAR(once, green * (1.0 - 0.105 * (30.0 - 4.0) / 30.0), 1e-9);
}

TEST(ChangeOfSize, IsRefusedPastFibreSaturation) {
    EXPECT_FALSE(changeOfSize(100.0, 0.003, 8.0, 31.0));
    EXPECT_FALSE(changeOfSize(100.0, 0.003, -1.0, 8.0));
}

TEST(PanelRoom, IsHalfOfWhatThePanelGrows) {
    EXPECT_NEAR(panelRoomPerSide(300.0, 0.00248, 6.0, 12.0).value(), 4.464 / 2.0, 1e-9);
    EXPECT_EQ(panelRoomPerSide(300.0, 0.00248, 12.0, 6.0).value(), 0.0) << "it only shrinks";
}

TEST(SlottedHole, HoldsTheShankAndTheMovement) {
    EXPECT_NEAR(slottedHoleLength(300.0, 0.00248, 6.0, 12.0, 4.0).value(), 8.464, 1e-9);
}

}  // namespace
}  // namespace shoulderline
