#include "core/measure/written_number.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <string>

namespace shoulderline {

namespace {

constexpr std::size_t kMostDigits = 30;         // of a whole or decimal number
constexpr std::size_t kMostFractionDigits = 9;  // of a numerator or denominator

struct Fraction {
    int numerator = 0;
    int denominator = 1;
    std::size_t position = 0;
};

// The shift goes into the text as an exponent, so that there is one rounding.
double decimalValue(const WrittenNumber& number, int shift) {
    std::array<char, kMostDigits + 8> buffer = {};
    char* end = std::copy(number.wholeDigits.begin(), number.wholeDigits.end(), buffer.data());
    *end++ = '.';
    end = std::copy(number.decimalDigits.begin(), number.decimalDigits.end(), end);
    *end++ = 'e';
    *end++ = static_cast<char>('0' + shift);
    double value = 0;
    std::from_chars(buffer.data(), end, value);
    return value;
}

bool isDecimalSignBeforeDigit(const TextCursor& cursor) {
    const char32_t here = cursor.peek();
    return (here == U'.' || here == U',') && isDigit(cursor.peekSecond());
}

tl::unexpected<Error> tooManyDigits(std::size_t position) {
    return fail(
        ErrorCode::OutOfRange, "the number has more digits than any size needs", {}, position);
}

int toInt(std::string_view digits) {
    int value = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return value;
}

// The rest of a fraction whose numerator has been stepped over. Nothing, and no step, where what
// follows is no unspaced slash and whole denominator.
Result<std::optional<Fraction>> takeDenominator(TextCursor& cursor,
                                                std::string_view numerator,
                                                std::size_t position) {
    const std::size_t start = cursor.position();
    if (numerator.empty() || !cursor.take(U'/')) {
        return std::nullopt;
    }
    const std::size_t denominatorPosition = cursor.position();
    const std::string_view denominator = cursor.takeDigits();
    if (denominator.empty() || isDecimalSignBeforeDigit(cursor)) {
        cursor.moveTo(start);
        return std::nullopt;
    }
    if (numerator.size() > kMostFractionDigits || denominator.size() > kMostFractionDigits) {
        return tooManyDigits(position);
    }
    const Fraction fraction = {toInt(numerator), toInt(denominator), position};
    if (fraction.denominator == 0) {
        return fail(ErrorCode::BadText,
                    "the fraction has zero below the line; a denominator is 1 or more",
                    {},
                    denominatorPosition);
    }
    return fraction;
}

// A whole fraction, 1/2 or ½. Nothing, and no step, where there is none.
Result<std::optional<Fraction>> takeFraction(TextCursor& cursor) {
    const std::size_t start = cursor.position();
    if (const auto vulgar = vulgarFraction(cursor.peek())) {
        cursor.advance();
        return Fraction{vulgar->numerator, vulgar->denominator, start};
    }
    const std::string_view numerator = cursor.takeDigits();
    auto fraction = takeDenominator(cursor, numerator, start);
    if (fraction && !*fraction) {
        cursor.moveTo(start);
    }
    return fraction;
}

// The fraction of a mixed number: joined (16½), after spaces (16 1/2), or after an unspaced hyphen
// (16-1/2). Nothing, and no step, where there is none.
Result<std::optional<Fraction>> takeMixedPart(TextCursor& cursor) {
    const std::size_t start = cursor.position();
    if (!cursor.skipSpaces()) {
        cursor.take(U'-');
    }
    auto fraction = takeFraction(cursor);
    if (fraction && !*fraction) {
        cursor.moveTo(start);
    }
    return fraction;
}

Result<WrittenNumber> finishDecimal(TextCursor& cursor, WrittenNumber number, Comma comma) {
    const std::size_t signPosition = cursor.position();
    const bool isComma = cursor.peek() == U',';
    if (isComma && comma == Comma::Ambiguous) {
        return fail(
            ErrorCode::BadText,
            "a comma between two digits is ambiguous here; put a space after it to part two "
            "values, or write a decimal with a point",
            {},
            signPosition);
    }
    cursor.advance();
    number.form = WrittenNumber::Form::Decimal;
    number.decimalDigits = cursor.takeDigits();
    if (isDecimalSignBeforeDigit(cursor)) {
        return fail(ErrorCode::BadText,
                    "the number has two separators; write it with one decimal sign and no grouping",
                    {},
                    cursor.position());
    }
    const std::string_view whole = number.wholeDigits;
    const bool couldBeGrouping =
        !whole.empty() && whole.size() <= 3 && whole[0] != '0' && number.decimalDigits.size() == 3;
    if (isComma && couldBeGrouping) {
        return fail(ErrorCode::BadText,
                    "the comma could part thousands or decimals; write " + std::string(whole) +
                        "." + std::string(number.decimalDigits) + " or " + std::string(whole) +
                        std::string(number.decimalDigits),
                    {},
                    signPosition);
    }
    if (whole.size() + number.decimalDigits.size() > kMostDigits) {
        return tooManyDigits(number.position);
    }
    return number;
}

Result<WrittenNumber> finishMixed(WrittenNumber number, const Fraction& fraction) {
    if (fraction.numerator >= fraction.denominator) {
        return fail(ErrorCode::BadText,
                    "the fraction after a whole number is one or more; it must be under one (for a "
                    "subtraction put spaces around the minus)",
                    {},
                    fraction.position);
    }
    if (number.wholeDigits.size() > kMostFractionDigits) {
        return tooManyDigits(number.position);
    }
    number.form = WrittenNumber::Form::Mixed;
    number.denominator = fraction.denominator;
    number.numerator = decimalValue(number, 0) * number.denominator + fraction.numerator;
    return number;
}

}  // namespace

bool startsNumber(const TextCursor& cursor) {
    return isDigit(cursor.peek()) || vulgarFraction(cursor.peek()) ||
           isDecimalSignBeforeDigit(cursor);
}

Result<WrittenNumber> readNumber(TextCursor& cursor, Comma comma) {
    WrittenNumber number;
    number.position = cursor.position();
    if (const auto vulgar = vulgarFraction(cursor.peek())) {
        cursor.advance();
        number.form = WrittenNumber::Form::Fraction;
        number.numerator = vulgar->numerator;
        number.denominator = vulgar->denominator;
        return number;
    }
    number.wholeDigits = cursor.takeDigits();
    if (isDecimalSignBeforeDigit(cursor)) {
        return finishDecimal(cursor, number, comma);
    }
    if (number.wholeDigits.empty()) {
        return fail(ErrorCode::BadText,
                    "found " + cursor.describe() + " where a number was expected",
                    {},
                    cursor.position());
    }
    const auto fraction = takeDenominator(cursor, number.wholeDigits, number.position);
    if (!fraction) {
        return tl::unexpected(fraction.error());
    }
    if (*fraction) {
        number.form = WrittenNumber::Form::Fraction;
        number.numerator = (*fraction)->numerator;
        number.denominator = (*fraction)->denominator;
        return number;
    }
    const auto mixedPart = takeMixedPart(cursor);
    if (!mixedPart) {
        return tl::unexpected(mixedPart.error());
    }
    if (*mixedPart) {
        return finishMixed(number, **mixedPart);
    }
    if (number.wholeDigits.size() > kMostDigits) {
        return tooManyDigits(number.position);
    }
    return number;
}

double numberValue(const WrittenNumber& number, int shift) {
    using Form = WrittenNumber::Form;
    if (number.form == Form::Whole || number.form == Form::Decimal) {
        return decimalValue(number, shift);
    }
    constexpr std::array<double, 4> kPowers = {1, 10, 100, 1000};
    return number.numerator / number.denominator * kPowers[static_cast<std::size_t>(shift)];
}

}  // namespace shoulderline
