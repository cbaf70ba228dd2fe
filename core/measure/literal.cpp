#include "core/measure/literal.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>
#include <optional>
#include <string>

#include "core/measure/length.h"

namespace shoulderline {

namespace {

constexpr std::size_t kMostDigits = 30;         // of a whole or decimal number
constexpr std::size_t kMostFractionDigits = 9;  // of a numerator or denominator
constexpr double kInchesPerFoot = 12;

enum class WrittenUnit { Inch, Foot, Millimetre, Centimetre, Metre, Degree };

struct UnitWord {
    std::string_view word;
    WrittenUnit unit;
};

constexpr std::array<UnitWord, 19> kUnitWords = {{
    {"in", WrittenUnit::Inch},
    {"inch", WrittenUnit::Inch},
    {"inches", WrittenUnit::Inch},
    {"ft", WrittenUnit::Foot},
    {"foot", WrittenUnit::Foot},
    {"feet", WrittenUnit::Foot},
    {"mm", WrittenUnit::Millimetre},
    {"millimetre", WrittenUnit::Millimetre},
    {"millimetres", WrittenUnit::Millimetre},
    {"millimeter", WrittenUnit::Millimetre},
    {"millimeters", WrittenUnit::Millimetre},
    {"cm", WrittenUnit::Centimetre},
    {"m", WrittenUnit::Metre},
    {"metre", WrittenUnit::Metre},
    {"metres", WrittenUnit::Metre},
    {"meter", WrittenUnit::Metre},
    {"deg", WrittenUnit::Degree},
    {"degree", WrittenUnit::Degree},
    {"degrees", WrittenUnit::Degree},
}};

// A number before its unit is known.
struct WrittenNumber {
    enum class Form { Whole, Decimal, Fraction, Mixed };
    Form form = Form::Whole;
    std::string_view wholeDigits;
    std::string_view decimalDigits;
    double numerator = 0;  // of a fraction; of a mixed number, the whole taken in
    double denominator = 1;
    std::size_t position = 0;
};

struct Fraction {
    int numerator = 0;
    int denominator = 1;
    std::size_t position = 0;
};

std::optional<WrittenUnit> findUnit(std::string_view word) {
    const auto sameLetter = [](char written, char small) {
        return written == small || (small >= 'a' && written == static_cast<char>(small - 'a' + 'A'));
    };
    const auto* found = std::find_if(kUnitWords.begin(), kUnitWords.end(), [&](const UnitWord& u) {
        return u.word.size() == word.size() &&
               std::equal(word.begin(), word.end(), u.word.begin(), sameLetter);
    });
    if (found == kUnitWords.end()) {
        return std::nullopt;
    }
    return found->unit;
}

// The number times ten to the `shift`, rounded once (41.9 cm is 419 mm to the last bit).
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

double valueOf(const WrittenNumber& number, int shift = 0) {
    using Form = WrittenNumber::Form;
    if (number.form == Form::Whole || number.form == Form::Decimal) {
        return decimalValue(number, shift);
    }
    constexpr std::array<double, 4> kPowers = {1, 10, 100, 1000};
    return number.numerator / number.denominator * kPowers[static_cast<std::size_t>(shift)];
}

bool isDecimalSignBeforeDigit(const TextCursor& cursor) {
    const char32_t here = cursor.peek();
    return (here == U'.' || here == U',') && isDigit(cursor.peekSecond());
}

tl::unexpected<Error> tooManyDigits(std::size_t position) {
    return fail(ErrorCode::OutOfRange,
                "the number has more digits than any size needs",
                {},
                position);
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
        return fail(ErrorCode::BadText,
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
                    "the comma could part thousands or decimals; write " + std::string(whole) + "." +
                        std::string(number.decimalDigits) + " or " + std::string(whole) +
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

// The unit here, after spaces or none. Nothing, and no step, where there is none.
std::optional<WrittenUnit> takeUnit(TextCursor& cursor) {
    const std::size_t start = cursor.position();
    cursor.skipSpaces();
    if (cursor.take(U'"')) {
        return WrittenUnit::Inch;
    }
    if (cursor.take(U'\'')) {
        // Two single marks are how a keyboard without a double prime writes inches.
        return cursor.take(U'\'') ? WrittenUnit::Inch : WrittenUnit::Foot;
    }
    if (cursor.take(kDegreeSign)) {
        return WrittenUnit::Degree;
    }
    const std::optional<WrittenUnit> unit = findUnit(cursor.takeWord());
    if (!unit) {
        cursor.moveTo(start);
    }
    return unit;
}

// Steps to the number that carries on a literal (the inches after feet, the minutes after degrees);
// false, and no step, where none follows.
bool stepToNextNumber(TextCursor& cursor, bool hyphenJoins) {
    const std::size_t start = cursor.position();
    if (!cursor.skipSpaces() && hyphenJoins) {
        cursor.take(U'-');
    }
    if (isDigit(cursor.peek()) || vulgarFraction(cursor.peek())) {
        return true;
    }
    cursor.moveTo(start);
    return false;
}

tl::unexpected<Error> notWhole(const char* what, std::size_t position) {
    return fail(ErrorCode::BadText,
                std::string(what) + " must be a whole number when smaller units follow",
                {},
                position);
}

Result<Literal> finishFeet(TextCursor& cursor, const WrittenNumber& feet, Comma comma) {
    double inches = valueOf(feet) * kInchesPerFoot;
    if (stepToNextNumber(cursor, true)) {
        if (feet.form != WrittenNumber::Form::Whole) {
            return notWhole("feet", feet.position);
        }
        const auto rest = readNumber(cursor, comma);
        if (!rest) {
            return tl::unexpected(rest.error());
        }
        const std::size_t unitPosition = cursor.position();
        if (takeUnit(cursor) != WrittenUnit::Inch) {
            return fail(ErrorCode::BadText,
                        "the number after feet must carry inches, as in 1 ft 4 in (for a "
                        "subtraction put spaces around the minus)",
                        {},
                        unitPosition);
        }
        if (valueOf(*rest) >= kInchesPerFoot) {
            return fail(ErrorCode::BadText,
                        "the inches after feet must be under 12",
                        {},
                        rest->position);
        }
        inches += valueOf(*rest);
    }
    return Literal{Literal::Kind::Length, Length::inches(inches).mm(), false};
}

Result<Literal> finishDegrees(TextCursor& cursor, const WrittenNumber& degrees, Comma comma) {
    double seconds = 0;
    bool hasParts = false;
    bool partIsWhole = degrees.form == WrittenNumber::Form::Whole;
    std::size_t partPosition = degrees.position;
    // Minutes carry one mark and seconds two, as in ISO 80000-3.
    for (const auto& [mark, inSeconds, what] :
         {std::tuple{U'\'', 60.0, "minutes"}, std::tuple{U'"', 1.0, "seconds"}}) {
        if (!stepToNextNumber(cursor, false)) {
            break;
        }
        if (!partIsWhole) {
            return notWhole("degrees and minutes", partPosition);
        }
        const auto part = readNumber(cursor, comma);
        if (!part) {
            return tl::unexpected(part.error());
        }
        if (!cursor.take(mark)) {
            return fail(ErrorCode::BadText,
                        std::string("found ") + cursor.describe() + " where the mark of " + what +
                            " was expected, as in 12° 30' 15\"",
                        {},
                        cursor.position());
        }
        if (valueOf(*part) >= 60) {
            return fail(ErrorCode::BadText,
                        std::string(what) + " of arc must be under 60",
                        {},
                        part->position);
        }
        seconds += valueOf(*part) * inSeconds;
        partIsWhole = part->form == WrittenNumber::Form::Whole;
        partPosition = part->position;
        hasParts = true;
    }
    const double amount = valueOf(degrees) + (hasParts ? seconds / 3600 : 0);
    return Literal{Literal::Kind::Angle, amount, false};
}

}  // namespace

bool startsLiteral(const TextCursor& cursor) {
    return isDigit(cursor.peek()) || vulgarFraction(cursor.peek()) ||
           isDecimalSignBeforeDigit(cursor);
}

Result<Literal> readLiteral(TextCursor& cursor, Comma comma) {
    const auto number = readNumber(cursor, comma);
    if (!number) {
        return tl::unexpected(number.error());
    }
    const bool isFraction = number->form == WrittenNumber::Form::Fraction;
    const std::optional<WrittenUnit> unit = takeUnit(cursor);
    if (!unit) {
        return Literal{Literal::Kind::Bare, valueOf(*number), isFraction};
    }
    const auto length = [&](double mm) { return Literal{Literal::Kind::Length, mm, isFraction}; };
    switch (*unit) {
        case WrittenUnit::Inch:
            return length(Length::inches(valueOf(*number)).mm());
        case WrittenUnit::Foot: {
            auto feet = finishFeet(cursor, *number, comma);
            return feet.map([&](Literal l) { return Literal{l.kind, l.amount, isFraction}; });
        }
        case WrittenUnit::Millimetre:
            return length(valueOf(*number));
        case WrittenUnit::Centimetre:
            return length(valueOf(*number, 1));
        case WrittenUnit::Metre:
            return length(valueOf(*number, 3));
        case WrittenUnit::Degree:
            return finishDegrees(cursor, *number, comma);
    }
    return length(0);
}

bool isUnitWord(std::string_view word) { return findUnit(word).has_value(); }

}  // namespace shoulderline
