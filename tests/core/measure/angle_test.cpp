#include "core/measure/angle.h"

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

TEST(Angle, RightAnglesHaveExactSinesAndCosines) {
    EXPECT_EQ(Angle::degrees(90).sin(), 1.0);
    EXPECT_EQ(Angle::degrees(90).cos(), 0.0);
    EXPECT_EQ(Angle::degrees(180).sin(), 0.0);
    EXPECT_EQ(Angle::degrees(-90).sin(), -1.0);
    EXPECT_EQ(Angle::degrees(360).cos(), 1.0);
}

TEST(Angle, ThirtyDegreesHasHalfForSine) {
    EXPECT_NEAR(Angle::degrees(30).sin(), 0.5, 1e-15);
}

}  // namespace
}  // namespace shoulderline
