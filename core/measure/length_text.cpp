#include "core/measure/length_text.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/measure/literal.h"
#include "core/measure/number_text.h"
#include "core/measure/text_cursor.h"

namespace shoulderline {

namespace {

constexpr std::size_t kLongestText = 200;  // bytes

// With ≈ where it is over `slack` from the length.
std::string showFraction(Length length, int denominator, Length slack) {
    const double inches = std::abs(length.inches());
    const auto parts = static_cast<long long>(std::llround(inches * denominator));
    const Length shown = Length::inches(static_cast<double>(parts) / denominator);
    const long long whole = parts / denominator;
    const long long numerator = parts % denominator;

    std::string text = nearlyEqual(shown, Length::inches(inches), slack) ? "" : "≈";
    if (length.mm() < 0 && parts != 0) {
        text += kMinusText;
    }
    if (whole != 0 || numerator == 0) {
        text += std::to_string(whole);
    }
    if (numerator != 0) {
        const long long common = std::gcd(numerator, static_cast<long long>(denominator));
        text += whole != 0 ? " " : "";
        text += std::to_string(numerator / common) + "/" + std::to_string(denominator / common);
    }
    return text;
}

}  // namespace

Result<Length> readLength(std::string_view text, Unit bare) {
    TextCursor cursor(text);
    cursor.skipSpaces();
    if (cursor.atEnd()) {
        return fail(ErrorCode::EmptyText, "nothing is written where a length was expected");
    }
    if (text.size() > kLongestText) {
        return fail(ErrorCode::BadText, "the text is too long for a length", {}, kLongestText);
    }
    if (cursor.take(kAboutSign)) {
        cursor.skipSpaces();
    }
    const bool isNegative = takeSign(cursor);
    const std::size_t start = cursor.position();
    const auto literal = readLiteral(cursor, Comma::Decimal);
    if (!literal) {
        return tl::unexpected(literal.error());
    }
    if (auto rest = expectEnd(cursor, "a length", "in, ft, mm, cm, m"); !rest) {
        return tl::unexpected(rest.error());
    }
    if (literal->kind == Literal::Kind::Angle) {
        return fail(
            ErrorCode::WrongDimension, "this is an angle where a length was expected", {}, start);
    }
    const Length length = literal->kind == Literal::Kind::Bare ? lengthOf(literal->amount, bare)
                                                               : Length::mm(literal->amount);
    if (length > kLongestLength) {
        return fail(ErrorCode::OutOfRange,
                    "the length is over 1 km; nothing longer can be worked with",
                    {},
                    start);
    }
    return isNegative ? -length : length;
}

namespace {

std::string textOf(Length length, const LengthStyle& style, bool withUnit, Length slack) {
    std::string text;
    // Past the range that can be read, whole fractions would overflow.
    const bool isShowable = std::abs(length.mm()) <= 1e9 * kLongestLength.mm();
    if (style.kind == LengthStyle::Kind::Fractions && isShowable) {
        text = showFraction(length, std::max(style.denominator, 1), slack);
    } else {
        const bool isMetric = style.kind == LengthStyle::Kind::Millimetres;
        text = showDecimal(isMetric ? length.mm() : length.inches(), style.decimals);
    }
    if (withUnit) {
        text += unitOf(style) == Unit::Inch ? "\u00A0in" : "\u00A0mm";
    }
    if (style.withOther) {
        const LengthStyle other =
            unitOf(style) == Unit::Inch ? LengthStyle::millimetres(1) : LengthStyle::fractions(32);
        text += " [" + textOf(length, other, withUnit, slack) + "]";
    }
    return text;
}

}  // namespace

std::string showLength(Length length, const LengthStyle& style, bool withUnit) {
    return textOf(length, style, withUnit, kLengthTolerance);
}

std::string letterLength(Length length, const LengthStyle& style, bool withUnit) {
    return textOf(length, style, withUnit, kMeasurable);
}

}  // namespace shoulderline
