#include "core/timber/species.h"

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

// Source: USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010), Table 13-5 (change
// coefficients) and Table 5-3a (modulus of rupture in kPa, of elasticity in MPa, shear in kPa, at
// 12 %).
struct Published {
    const char* name;
    double radial;
    double tangential;
    double rupture;
    double elasticity;
    double shear;
};
void PrintTo(const Published& published, std::ostream* os) {
    *os << published.name;
}
class WoodHandbook : public ::testing::TestWithParam<Published> {};
TEST_P(WoodHandbook, SpeciesHasThePublishedFigures) {
    const Published& published = GetParam();
    const Species* species = testing::speciesTable().find(published.name);

    ASSERT_NE(species, nullptr);
    EXPECT_DOUBLE_EQ(species->radialChange.value_or(0), published.radial);
    EXPECT_DOUBLE_EQ(species->tangentialChange.value_or(0), published.tangential);
    EXPECT_DOUBLE_EQ(species->ruptureKpa.value_or(0), published.rupture);
    EXPECT_DOUBLE_EQ(species->elasticityMpa.value_or(0), published.elasticity);
    EXPECT_DOUBLE_EQ(species->shearKpa.value_or(0), published.shear);
}
INSTANTIATE_TEST_SUITE_P(
    Tables,
    WoodHandbook,
    ::testing::Values(Published{"White oak", 0.00180, 0.00365, 105000, 12300, 13800},
                      Published{"Northern red oak", 0.00158, 0.00369, 99000, 12500, 12300},
                      Published{"Sugar maple", 0.00165, 0.00353, 109000, 12600, 16100},
                      Published{"Red maple", 0.00137, 0.00289, 92000, 11300, 12800}));

// Source: Wood Handbook, Table 13-5: across the rings wood moves less than along them.
TEST(SpeciesTable, EverySpeciesMovesLessRadiallyThanTangentially) {
    for (const Species& species : testing::speciesTable().all()) {
        if (species.radialChange && species.tangentialChange) {
            EXPECT_LT(*species.radialChange, *species.tangentialChange) << species.name;
        }
    }
    EXPECT_GE(testing::speciesTable().all().size(), 30u);
}

TEST(SpeciesTable, UnknownSpeciesIsNotFound) {
    EXPECT_EQ(testing::speciesTable().find("island driftwood"), nullptr);
    EXPECT_FALSE(SpeciesTable::read("{}"));
    EXPECT_FALSE(SpeciesTable::read("{\"species\": [{\"name\": \"x\"}]}"));
}

}  // namespace
}  // namespace shoulderline
