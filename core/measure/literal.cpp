#include "core/measure/literal.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <tuple>

#include "core/measure/length.h"

namespace shoulderline {

namespace {

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

std::optional<WrittenUnit> findUnit(std::string_view word) {
    const auto sameLetter = [](char written, char small) {
        return written == small ||
               (small >= 'a' && written == static_cast<char>(small - 'a' + 'A'));
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
    double inches = numberValue(feet) * kInchesPerFoot;
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
        if (numberValue(*rest) >= kInchesPerFoot) {
            return fail(
                ErrorCode::BadText, "the inches after feet must be under 12", {}, rest->position);
        }
        inches += numberValue(*rest);
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
        if (numberValue(*part) >= 60) {
            return fail(ErrorCode::BadText,
                        std::string(what) + " of arc must be under 60",
                        {},
                        part->position);
        }
        seconds += numberValue(*part) * inSeconds;
        partIsWhole = part->form == WrittenNumber::Form::Whole;
        partPosition = part->position;
        hasParts = true;
    }
    const double amount = numberValue(degrees) + (hasParts ? seconds / 3600 : 0);
    return Literal{Literal::Kind::Angle, amount, false};
}

}  // namespace

Result<Literal> readLiteral(TextCursor& cursor, Comma comma) {
    const auto number = readNumber(cursor, comma);
    if (!number) {
        return tl::unexpected(number.error());
    }
    const bool isFraction = number->form == WrittenNumber::Form::Fraction;
    const std::optional<WrittenUnit> unit = takeUnit(cursor);
    if (!unit) {
        return Literal{Literal::Kind::Bare, numberValue(*number), isFraction};
    }
    const auto length = [&](double mm) { return Literal{Literal::Kind::Length, mm, isFraction}; };
    switch (*unit) {
        case WrittenUnit::Inch:
            return length(Length::inches(numberValue(*number)).mm());
        case WrittenUnit::Foot: {
            auto feet = finishFeet(cursor, *number, comma);
            return feet.map([&](Literal l) { return Literal{l.kind, l.amount, isFraction}; });
        }
        case WrittenUnit::Millimetre:
            return length(numberValue(*number));
        case WrittenUnit::Centimetre:
            return length(numberValue(*number, 1));
        case WrittenUnit::Metre:
            return length(numberValue(*number, 3));
        case WrittenUnit::Degree:
            return finishDegrees(cursor, *number, comma);
    }
    return length(0);
}

bool isUnitWord(std::string_view word) {
    return findUnit(word).has_value();
}

}  // namespace shoulderline
