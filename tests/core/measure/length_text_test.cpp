#include "core/measure/length_text.h"

#include <string>

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

constexpr Length kSeat = Length::inches(16.5);

double readMm(std::string_view text, Unit bare) {
    const auto length = readLength(text, bare);
    return length ? length->mm() : -12345.0;
}

std::string messageFor(std::string_view text) {
    const auto length = readLength(text, Unit::Inch);
    return length ? "no error" : length.error().message;
}

TEST(ReadLength, BareNumberTakesThePiecesUnit) {
    EXPECT_EQ(readMm("16 1/2", Unit::Inch), kSeat.mm());
    EXPECT_EQ(readMm("16 1/2", Unit::Millimetre), 16.5);
}

TEST(ReadLength, CentimetresAreRoundedOnlyOnce) {
    EXPECT_EQ(readMm("41.9 cm", Unit::Inch), 419.0);
    EXPECT_EQ(readMm("0.07 m", Unit::Inch), 70.0);
}

TEST(ReadLength, ErrorNamesWhatWasFoundAndWhatWasExpected) {
    EXPECT_EQ(messageFor("16 cubits"),
              "found 'cubits' where a unit was expected: in, ft, mm, cm, m");
    EXPECT_EQ(messageFor("16 1/2 )"), "found ')' after a length; nothing may follow it");
    EXPECT_EQ(messageFor("rail"), "found 'rail' where a number was expected");
    EXPECT_EQ(messageFor("-"), "found the end where a number was expected");
}

TEST(ReadLength, CommaThatCouldGroupThousandsIsAnsweredWithBothReadings) {
    EXPECT_EQ(messageFor("1,234"),
              "the comma could part thousands or decimals; write 1.234 or 1234");
}

TEST(ReadLength, BytesThatAreNotUtf8AreRefusedAtTheirPlace) {
    const auto length = readLength("16 \xC3(", Unit::Inch);

    ASSERT_FALSE(length.has_value());
    EXPECT_EQ(length.error().code, ErrorCode::BadText);
    EXPECT_EQ(length.error().position, 3U);
}

TEST(ReadLength, NulByteIsRefused) {
    EXPECT_FALSE(readLength(std::string_view("16\0", 3), Unit::Inch).has_value());
}

TEST(ReadLength, VeryLongTextIsRefused) {
    EXPECT_FALSE(readLength(std::string(100000, '1'), Unit::Inch).has_value());
    EXPECT_FALSE(readLength("16" + std::string(100000, ' '), Unit::Inch).has_value());
}

TEST(ShowLength, FractionsAreInLowestTerms) {
    EXPECT_EQ(showLength(kSeat, LengthStyle::fractions(64)), "16 1/2");
    EXPECT_EQ(showLength(Length::inches(0.5625), LengthStyle::fractions(16)), "9/16");
    EXPECT_EQ(showLength(Length::inches(3), LengthStyle::fractions(8)), "3");
    EXPECT_EQ(showLength(Length(), LengthStyle::fractions(8)), "0");
}

TEST(ShowLength, FractionThatIsNotExactCarriesASign) {
    EXPECT_EQ(showLength(Length::inches(25.0 / 64), LengthStyle::fractions(16)), "≈3/8");
    EXPECT_EQ(showLength(Length::mm(419), LengthStyle::fractions(16)), "≈16 1/2");
    EXPECT_EQ(showLength(Length::mm(-419), LengthStyle::fractions(16)), "≈−16 1/2");
    EXPECT_EQ(showLength(Length::mm(0.2), LengthStyle::fractions(16)), "≈0");
    EXPECT_EQ(showLength(Length::inches(1.99), LengthStyle::fractions(8)), "≈2");
}

TEST(ShowLength, FractionWithinAMicrometreCountsAsExact) {
    EXPECT_EQ(showLength(Length::mm(419.1009), LengthStyle::fractions(16)), "16 1/2");
    EXPECT_EQ(showLength(Length::mm(419.1011), LengthStyle::fractions(16)), "≈16 1/2");
}

// A mortise for a 5/16 tenon that leans 3.8 degrees is 0.018 mm longer: no calliper tells that on
// wood.
TEST(LetterLength, MarksOnlyWhatAMakerCouldMeasure) {
    const Length leaning = Length::mm(7.9554);
    EXPECT_EQ(letterLength(leaning, LengthStyle::fractions(32)), "5/16");
    EXPECT_EQ(showLength(leaning, LengthStyle::fractions(32)), "≈5/16");

    EXPECT_EQ(letterLength(Length::mm(419.14), LengthStyle::fractions(16)), "16 1/2");
    EXPECT_EQ(letterLength(Length::mm(419.16), LengthStyle::fractions(16)), "≈16 1/2");
    EXPECT_EQ(letterLength(Length::mm(419.14), LengthStyle::fractions(16).inBothUnits(), true),
              "16 1/2\u00A0in [419.1\u00A0mm]");
    EXPECT_EQ(letterLength(Length::mm(419.04), LengthStyle::millimetres(1)), "419");
}

TEST(ShowLength, NegativeCarriesTheTrueMinus) {
    EXPECT_EQ(showLength(Length::inches(-0.25), LengthStyle::fractions(16)), "\u22121/4");
    EXPECT_EQ(showLength(Length::mm(-3.5), LengthStyle::millimetres(1)), "\u22123.5");
    EXPECT_EQ(showLength(Length::mm(-0.01), LengthStyle::millimetres(1)), "0");
}

TEST(ShowLength, DecimalsDropTrailingZeros) {
    EXPECT_EQ(showLength(Length::inches(0.742), LengthStyle::decimalInches(3)), "0.742");
    EXPECT_EQ(showLength(kSeat, LengthStyle::decimalInches(3)), "16.5");
    EXPECT_EQ(showLength(Length::mm(419.5), LengthStyle::millimetres(1)), "419.5");
    EXPECT_EQ(showLength(Length::mm(419), LengthStyle::millimetres(1)), "419");
    EXPECT_EQ(showLength(Length::mm(419.1), LengthStyle::millimetres(0)), "419");
    EXPECT_EQ(showLength(Length::mm(400), LengthStyle::millimetres(0)), "400");
}

TEST(ShowLength, UnitFollowsANoBreakSpace) {
    EXPECT_EQ(showLength(kSeat, LengthStyle::fractions(16), true), "16 1/2\u00A0in");
    EXPECT_EQ(showLength(kSeat, LengthStyle::decimalInches(2), true), "16.5\u00A0in");
    EXPECT_EQ(showLength(Length::mm(419), LengthStyle::millimetres(0), true), "419\u00A0mm");
}

TEST(ShowLength, EnormousLengthIsStillShown) {
    EXPECT_EQ(showLength(Length::inches(1e20), LengthStyle::fractions(16)),
              "100000000000000000000");
}

TEST(LengthStyle, UnitOfMillimetresIsMillimetreAndOfTheOthersInch) {
    EXPECT_EQ(unitOf(LengthStyle::millimetres(0)), Unit::Millimetre);
    EXPECT_EQ(unitOf(LengthStyle::fractions(8)), Unit::Inch);
    EXPECT_EQ(unitOf(LengthStyle::decimalInches(3)), Unit::Inch);
}

}  // namespace
}  // namespace shoulderline
