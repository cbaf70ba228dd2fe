#include "core/measure/value.h"

#include <limits>

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

const Value kBareFive = Value::bare(5, Unit::Inch);
const Value kTwoInches = Value::length(Length::inches(2));
const Value kTenDegrees = Value::angle(Angle::degrees(10));
const Value kRatio = Value::number(3);

TEST(Value, BareNumberIsLengthInItsUnitOrDegreesOrCountAsAsked) {
    EXPECT_EQ(kBareFive.asLength(), Length::inches(5));
    EXPECT_EQ(Value::bare(5, Unit::Millimetre).asLength(), Length::mm(5));
    EXPECT_EQ(kBareFive.asAngle(), Angle::degrees(5));
    EXPECT_EQ(kBareFive.asNumber(), 5.0);
    EXPECT_EQ(kBareFive.asCount(), 5);
    EXPECT_EQ(kBareFive.dimension(), Dimension::Length);
}

TEST(Value, PlainNumberIsNeverTakenForALength) {
    EXPECT_EQ(kRatio.asLength().error().code, ErrorCode::WrongDimension);
    EXPECT_EQ(kRatio.asAngle().error().code, ErrorCode::WrongDimension);
    EXPECT_EQ(Value::sum(kRatio, kTwoInches).error().code, ErrorCode::WrongDimension);
}

TEST(Value, BareBesideALengthIsALengthInASumAndAFactorInAProduct) {
    EXPECT_EQ(Value::sum(kBareFive, kTwoInches),
              Value::length(Length::inches(5) + Length::inches(2)));
    EXPECT_EQ(Value::product(kBareFive, kTwoInches), Value::length(Length::inches(10)));
    EXPECT_EQ(Value::quotient(kTwoInches, kBareFive),
              Value::length(Length::mm(Length::inches(2).mm() / 5)));
}

TEST(Value, BareBesideAPlainNumberBecomesPlainInEitherOrder) {
    EXPECT_EQ(Value::product(kBareFive, kRatio), Value::number(15));
    EXPECT_EQ(Value::product(kRatio, kBareFive), Value::number(15));
    EXPECT_EQ(Value::quotient(kBareFive, kRatio), Value::number(5.0 / 3));
    EXPECT_EQ(Value::quotient(kRatio, kBareFive), Value::number(3.0 / 5));
    EXPECT_EQ(Value::sum(kRatio, kBareFive), Value::number(8));
}

TEST(Value, BareAmongBareStaysBare) {
    EXPECT_TRUE(Value::sum(kBareFive, kBareFive)->isBare());
    EXPECT_TRUE(Value::product(kBareFive, kBareFive)->isBare());
    EXPECT_TRUE(Value::quotient(kBareFive, kBareFive)->isBare());
}

TEST(Value, ProductsAndQuotientsThatAreNoLengthAreRefused) {
    EXPECT_EQ(Value::product(kTwoInches, kTwoInches).error().message,
              "a length times a length is not a length");
    EXPECT_FALSE(Value::product(kTwoInches, kTenDegrees).has_value());
    EXPECT_FALSE(Value::quotient(kTwoInches, kTenDegrees).has_value());
    EXPECT_FALSE(Value::quotient(kBareFive, kTwoInches).has_value());
    EXPECT_FALSE(Value::smaller(kTwoInches, kTenDegrees).has_value());
}

TEST(Value, DivisionByZeroIsOutOfRangeInEveryKind) {
    for (const Value& zero : {Value::number(0), Value::bare(0, Unit::Inch)}) {
        EXPECT_EQ(Value::quotient(kTwoInches, zero).error().code, ErrorCode::OutOfRange);
    }
    EXPECT_EQ(Value::quotient(kTwoInches, Value::length(Length())).error().code,
              ErrorCode::OutOfRange);
}

TEST(Value, ResultsPastTheLimitsAreOutOfRange) {
    const Value kilometre = Value::length(Length::mm(1e6));
    EXPECT_TRUE(kilometre.checked().has_value());
    EXPECT_EQ(Value::sum(kilometre, kTwoInches).error().code, ErrorCode::OutOfRange);
    EXPECT_EQ(Value::product(kTenDegrees, Value::number(361)).error().code, ErrorCode::OutOfRange);
    EXPECT_EQ(Value::bare(1e12, Unit::Inch).asLength().error().code, ErrorCode::OutOfRange);
    EXPECT_FALSE(Value::number(std::numeric_limits<double>::quiet_NaN()).checked().has_value());
    EXPECT_FALSE(Value::length(Length::mm(std::numeric_limits<double>::infinity())).checked());
}

TEST(Value, RoundingTakesHalvesUp) {
    const Value half = Value::length(Length::mm(0.5));
    EXPECT_EQ(Value::rounded(Value::length(Length::mm(1.25)), half),
              Value::length(Length::mm(1.5)));
    EXPECT_EQ(Value::rounded(Value::length(Length::mm(1.2)), half), Value::length(Length::mm(1)));
    EXPECT_EQ(Value::rounded(half, Value::length(Length())).error().code, ErrorCode::OutOfRange);
}

TEST(Value, CountIsWholeAndWithinBounds) {
    EXPECT_EQ(Value::number(0).asCount(), 0);
    EXPECT_EQ(Value::number(2.5).asCount().error().code, ErrorCode::BadText);
    EXPECT_EQ(Value::number(-1).asCount().error().code, ErrorCode::OutOfRange);
    EXPECT_EQ(Value::number(10001).asCount().error().code, ErrorCode::OutOfRange);
    EXPECT_EQ(kTwoInches.asCount().error().code, ErrorCode::WrongDimension);
}

}  // namespace
}  // namespace shoulderline
