#include "core/measure/expression.h"

#include <string>

#include <gtest/gtest.h>

#include "core/measure/measure_name.h"

namespace shoulderline {
namespace {

Result<Value> someMeasures(std::string_view name) {
    if (name == "seat height") {
        return Value::length(Length::inches(17));
    }
    if (name == "rail thickness") {
        return Value::length(Length::inches(1.125));
    }
    if (name == "rake") {
        return Value::angle(Angle::degrees(104));
    }
    if (name == "slats") {
        return Value::bare(5, Unit::Inch);
    }
    return fail(ErrorCode::UnknownName, "there is no measure '" + std::string(name) + "'");
}

Result<Length> lengthOfText(std::string_view text, Unit bare = Unit::Inch) {
    return Expression::parse(text, bare).and_then([](const Expression& e) {
        return e.evaluateLength(someMeasures);
    });
}

double inches(std::string_view text) {
    const auto length = lengthOfText(text);
    EXPECT_TRUE(length.has_value()) << text << ": " << length.error().message;
    return length ? length->inches() : -12345.0;
}

double number(std::string_view text) {
    const auto value = Expression::parse(text, Unit::Inch).and_then([](const Expression& e) {
        return e.evaluate(someMeasures);
    });
    EXPECT_TRUE(value.has_value()) << text << ": " << value.error().message;
    return value ? value->asNumber().value_or(-12345.0) : -12345.0;
}

Error errorOf(std::string_view text) {
    const auto length = lengthOfText(text);
    EXPECT_FALSE(length.has_value()) << text;
    return length ? Error{} : length.error();
}

TEST(Expression, ProductsBindTighterThanSumsAndDivisionGoesLeftToRight) {
    EXPECT_DOUBLE_EQ(inches("2 in + 3 * 4 in"), 14);
    EXPECT_DOUBLE_EQ(inches("(2 + 3) * 4 in"), 20);
    EXPECT_DOUBLE_EQ(inches("24 in / 3 / 2"), 4);
    EXPECT_DOUBLE_EQ(inches("10 in - 3 in - 2 in"), 5);
    EXPECT_DOUBLE_EQ(inches("2 × 9 in ÷ 3"), 6);
    EXPECT_DOUBLE_EQ(inches("-2 in * -3"), 6);
    EXPECT_DOUBLE_EQ(inches("5 in - -3 in"), 8);
    EXPECT_DOUBLE_EQ(inches("10 in − 1/2 in"), 9.5);
}

TEST(Expression, LiteralsAreReadAsMakersWriteThem) {
    EXPECT_DOUBLE_EQ(inches("16 1/2 in"), 16.5);
    EXPECT_DOUBLE_EQ(inches("5-3/8\""), 5.375);
    EXPECT_DOUBLE_EQ(inches("9/16"), 0.5625);
    EXPECT_DOUBLE_EQ(inches("3/4 in"), 0.75);
    EXPECT_DOUBLE_EQ(inches("0.742 in"), 0.742);
    EXPECT_DOUBLE_EQ(inches("419.1 mm"), 16.5);
    EXPECT_DOUBLE_EQ(inches("2½ + ½"), 3);
    EXPECT_DOUBLE_EQ(inches("1' 4 1/2\" + 1 ft 1 in"), 29.5);
    EXPECT_DOUBLE_EQ(inches("425,5 mm + 0,5 mm"), 426 / 25.4);
}

TEST(Expression, HyphenWithoutSpacesMakesAMixedNumberAndWithSpacesSubtracts) {
    EXPECT_DOUBLE_EQ(inches("16-1/2"), 16.5);
    EXPECT_DOUBLE_EQ(inches("16 - 1/2"), 15.5);
    EXPECT_DOUBLE_EQ(inches("16 -1/2"), 15.5);
    EXPECT_DOUBLE_EQ(inches("16- 1/2"), 15.5);
    EXPECT_DOUBLE_EQ(inches("16−1/2"), 15.5);
    EXPECT_DOUBLE_EQ(inches("16-1"), 15);
    EXPECT_DOUBLE_EQ(inches("slats-1/2"), 4.5);
    EXPECT_DOUBLE_EQ(inches("2*16-1/2"), 33);
    EXPECT_EQ(errorOf("16-9/8").position, 3U);
}

TEST(Expression, FractionAfterADivisionIsSplitWithoutAUnitAndRefusedWithOne) {
    EXPECT_DOUBLE_EQ(inches("24 in/3/4"), 2);
    EXPECT_DOUBLE_EQ(number("24 in / (3/4 in)"), 32);
    EXPECT_DOUBLE_EQ(number("24 in / ¾ in"), 32);
    EXPECT_DOUBLE_EQ(inches("24 in / 1 1/2"), 16);
    EXPECT_DOUBLE_EQ(inches("24 in / -3/4"), -2);
    EXPECT_EQ(errorOf("24 in / 3/4 in").position, 8U);
    EXPECT_EQ(errorOf("3 / 4 in").code, ErrorCode::WrongDimension);
}

TEST(Expression, NamesAreWordsAndSpacesInsideThemCollapse) {
    EXPECT_DOUBLE_EQ(inches("seat height - rail thickness / 2"), 17 - 1.125 / 2);
    EXPECT_DOUBLE_EQ(inches("  seat \u00A0 height*2"), 34);
    EXPECT_EQ(errorOf("Seat height").code, ErrorCode::UnknownName);
    EXPECT_EQ(errorOf("1 in + seat").position, 7U);
}

TEST(Expression, NamesMentionedAreListedSortedAndOnce) {
    const auto expression =
        Expression::parse("seat height + max(rake post, arm height, seat height) * 2", Unit::Inch);

    ASSERT_TRUE(expression.has_value());
    EXPECT_EQ(expression->names(),
              (std::vector<std::string>{"arm height", "rake post", "seat height"}));
    EXPECT_EQ(expression->text(), "seat height + max(rake post, arm height, seat height) * 2");
}

TEST(Expression, BareNumberIsAFactorBesideAProductAndALengthBesideASum) {
    EXPECT_DOUBLE_EQ(inches("seat height / 2"), 8.5);
    EXPECT_DOUBLE_EQ(inches("seat height - 2"), 15);
    EXPECT_DOUBLE_EQ(inches("(seat height - slats * 1 in) / (slats + 1)"), 2);
    EXPECT_EQ(lengthOfText("3", Unit::Millimetre), Length::mm(3));
    EXPECT_EQ(lengthOfText("25.4 mm + 3", Unit::Millimetre), Length::mm(28.4));
}

TEST(Expression, FunctionsWorkOnAnyOneDimension) {
    EXPECT_DOUBLE_EQ(inches("min(seat height, 16 1/2, 18)"), 16.5);
    EXPECT_DOUBLE_EQ(inches("max(1 in, 30 mm)"), 30 / 25.4);
    EXPECT_DOUBLE_EQ(inches("round(rail thickness / 3, 1/16)"), 0.375);
    EXPECT_DOUBLE_EQ(number("round(7 in / 2 in, 1)"), 4);
    EXPECT_DOUBLE_EQ(inches("min((1 + 2) * 1 in, max(2 in, 5 in))"), 3);
    EXPECT_EQ(errorOf("min(1 in, 2°)").code, ErrorCode::WrongDimension);
}

// Sines and cosines of 0, 30, 45, 60 and 90 degrees in closed form.
TEST(Expression, TrigonometryTakesAnglesAndGivesPlainNumbers) {
    EXPECT_NEAR(number("sin(30°)"), 0.5, 1e-15);
    EXPECT_NEAR(number("cos(60)"), 0.5, 1e-15);
    EXPECT_NEAR(number("tan(45 deg)"), 1, 1e-15);
    EXPECT_NEAR(inches("10 in * cos(rake - 44°)"), 5, 1e-14);
    EXPECT_EQ(errorOf("2 in * tan(90°)").code, ErrorCode::OutOfRange);
    EXPECT_EQ(errorOf("sin(2 in)").code, ErrorCode::WrongDimension);
}

TEST(Expression, AngleAndCountAreGivenWhenAsked) {
    const auto angle = Expression::parse("rake - 90", Unit::Inch)->evaluateAngle(someMeasures);
    const auto count = Expression::parse("slats + 1", Unit::Inch)->evaluateCount(someMeasures);

    ASSERT_TRUE(angle.has_value() && count.has_value());
    EXPECT_NEAR(angle->degrees(), 14, 1e-12);
    EXPECT_EQ(*count, 6);
}

TEST(Expression, ErrorsPointAtTheirCharacter) {
    const auto at = [](std::string_view text) { return errorOf(text).position; };
    EXPECT_EQ(at("2 in * 3 in"), 5U);
    EXPECT_EQ(at("1 in + 2°"), 5U);
    EXPECT_EQ(at("1 in / (2 in - 2 in)"), 5U);
    EXPECT_EQ(at("(1 in + 2 in"), 12U);
    EXPECT_EQ(at("1 in + 2 in)"), 11U);
    EXPECT_EQ(at("1 in +"), 6U);
    EXPECT_EQ(at("2 3"), 2U);
    EXPECT_EQ(at("2 seat height"), 2U);
    EXPECT_EQ(at("2 (3)"), 2U);
    EXPECT_EQ(at("(3) in"), 4U);
    EXPECT_EQ(at("1 in ? 2"), 5U);
    EXPECT_EQ(at("in + 3"), 0U);
    EXPECT_EQ(at("3 + min"), 4U);
    EXPECT_EQ(at("3 + seat(2)"), 4U);
    EXPECT_EQ(at("min(1 in)"), 0U);
    EXPECT_EQ(at("min()"), 4U);
    EXPECT_EQ(at("round(1, 2, 3)"), 0U);
    EXPECT_EQ(at("1 + 2/0"), 6U);
    EXPECT_EQ(at("1 in * \xFF"), 7U);
    EXPECT_EQ(at("½ in + ; "), 8U);
}

TEST(Expression, CommaBetweenDigitsInsideAFunctionIsRefused) {
    EXPECT_EQ(errorOf("min(1,5)").position, 5U);
    EXPECT_EQ(errorOf("min(1,5, 2)").position, 5U);
    EXPECT_EQ(errorOf("max((1,5 + 2), 2)").position, 6U);
    EXPECT_DOUBLE_EQ(inches("min(1.5, 2)"), 1.5);
    EXPECT_DOUBLE_EQ(inches("max(slats,2)"), 5);
}

TEST(Expression, MessageNamesWhatWasFoundAndWhatWasExpected) {
    EXPECT_EQ(errorOf("2 cubits").message,
              "found 'cubits' where a unit (in, ft, mm, cm, m, deg) or an operator was expected");
    EXPECT_EQ(errorOf("2 in * 3 in").message, "a length times a length is not a length");
    EXPECT_EQ(errorOf("seat height / rail thickness").message,
              "this comes to a plain number where a length was expected");
}

TEST(Expression, EmptyTextHasItsOwnCode) {
    EXPECT_EQ(Expression::parse("  ", Unit::Inch).error().code, ErrorCode::EmptyText);
}

TEST(Expression, LengthsOverAKilometreAreOutOfRangeWrittenOrWorkedOut) {
    EXPECT_EQ(errorOf("1 in + 2000 m").code, ErrorCode::OutOfRange);
    EXPECT_EQ(errorOf("1 in + 2000 m").position, 7U);
    EXPECT_EQ(errorOf("600 m + 600 m").code, ErrorCode::OutOfRange);
    EXPECT_EQ(errorOf("999999999 * 999999999").code, ErrorCode::OutOfRange);
}

TEST(Expression, NestingIsBounded) {
    const auto nestedIn = [](std::size_t depth) {
        return std::string(depth, '(') + "1" + std::string(depth, ')');
    };
    EXPECT_TRUE(lengthOfText(nestedIn(60)).has_value());
    EXPECT_EQ(errorOf(nestedIn(61)).position, 60U);
    EXPECT_FALSE(lengthOfText(std::string(900, '-') + "1").has_value());
    EXPECT_FALSE(lengthOfText(std::string(900, '(')).has_value());
}

TEST(Expression, LengthOfTextIsBounded) {
    std::string longest = "1";
    while (longest.size() + 2 <= 1000) {
        longest += "+1";
    }
    EXPECT_TRUE(lengthOfText(longest).has_value());
    EXPECT_FALSE(lengthOfText(longest + "+1").has_value());
}

TEST(MeasureName, WordsOfLettersAndDigitsAreNames) {
    for (const char* name :
         {"seat height", "slat 2", "depth in front", "h", "Sitzhöhe", "a_1", "minimum"}) {
        EXPECT_TRUE(isMeasureName(name)) << name;
    }
}

TEST(MeasureName, OperatorsUnitsFunctionsAndUntidySpacesAreRefused) {
    for (const char* name : {"",
                             " ",
                             "2 slats",
                             "in",
                             "MM",
                             "feet",
                             "min",
                             "cos",
                             "half-lap",
                             "a+b",
                             "seat  height",
                             " seat",
                             "seat ",
                             "a\xFF",
                             "½",
                             "rail'",
                             "a\nb",
                             "x°",
                             "😀"}) {
        EXPECT_FALSE(isMeasureName(name)) << name;
    }
    EXPECT_FALSE(isMeasureName(std::string(81, 'a')));
    EXPECT_EQ(tidyName("  seat \t height "), "seat height");
}

}  // namespace
}  // namespace shoulderline
