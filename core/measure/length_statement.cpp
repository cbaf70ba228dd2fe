#include "core/measure/length_statement.h"

#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <string_view>

#include "core/measure/expression.h"
#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

// The length that a text without measures comes to.
std::optional<Length> plainLength(std::string_view text, Unit unit) {
    const Result<Expression> expression = Expression::parse(text, unit);
    if (!expression || !expression->names().empty()) {
        return std::nullopt;
    }
    const Result<Length> value = expression->evaluateLength(
        [](std::string_view) -> Result<Value> { return fail(ErrorCode::UnknownName, {}); });
    return value ? std::optional(*value) : std::nullopt;
}

struct Offset {
    std::string before;
    Length by;
};

// The plain length added or taken off at the end of an expression, outside its brackets.
Offset offsetOf(const std::string& statement, Unit unit) {
    int depth = 0;
    for (std::size_t i = statement.size(); i-- > 1;) {
        const char c = statement[i];
        depth += c == ')' ? 1 : (c == '(' ? -1 : 0);
        if (depth != 0 || (c != '+' && c != '-') || statement[i - 1] != ' ') {
            continue;
        }
        const std::string before = statement.substr(0, i - 1);
        const std::optional<Length> by =
            plainLength(std::string_view(statement).substr(i + 1), unit);
        if (by && Expression::parse(before, unit)) {
            return {before, c == '+' ? *by : -*by};
        }
        break;
    }
    return {statement, Length()};
}

}  // namespace

std::string lengthStatement(Length length, Unit preferred) {
    const Length sixtyFourth = Length::inches(1.0 / 64);
    if (preferred == Unit::Inch && nearlyEqual(snapNearest(length, sixtyFourth), length)) {
        return showLength(length, LengthStyle::fractions(64)) + " in";
    }
    std::array<char, 32> digits{};
    const double mm = std::round(length.mm() * 1000.0) / 1000.0;
    const auto end =
        std::to_chars(digits.data(), digits.data() + digits.size(), mm == 0.0 ? 0.0 : mm).ptr;
    return std::string(digits.data(), end) + " mm";
}

std::string offsetStatement(const std::string& statement, Length by, Unit unit) {
    const std::string text = statement.empty() ? "0" : statement;
    if (const std::optional<Length> plain = plainLength(text, unit)) {
        return lengthStatement(*plain + by, unit);
    }
    if (!Expression::parse(text, unit)) {
        return statement;
    }
    const Offset offset = offsetOf(text, unit);
    const Length whole = offset.by + by;
    if (nearlyEqual(whole, Length())) {
        return offset.before;
    }
    const bool isLess = whole < Length();
    return offset.before + (isLess ? " - " : " + ") +
           lengthStatement(isLess ? -whole : whole, unit);
}

}  // namespace shoulderline
