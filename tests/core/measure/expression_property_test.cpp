#include <algorithm>
#include <string>
#include <vector>

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/measure/expression.h"
#include "core/measure/length_text.h"
#include "core/measure/measures.h"

namespace shoulderline {
namespace {

Result<Value> noMeasures(std::string_view name) {
    return fail(ErrorCode::UnknownName, std::string(name));
}

Result<Length> evaluated(const std::string& text) {
    return Expression::parse(text, Unit::Inch).and_then([](const Expression& e) {
        return e.evaluateLength(noMeasures);
    });
}

// A length in sixty-fourths of an inch, written with its unit.
std::string someLength() {
    return showLength(
        Length::inches(*rc::gen::inRange(0, 6400) / 64.0), LengthStyle::fractions(64), true);
}

// A length in any of the ways that makers write one.
std::string someWrittenLength() {
    std::string text = *rc::gen::element<std::string>("", "-", "−", "+ ");
    text += *rc::gen::element<std::string>("", "3 ft ", "2' ", "1'-");
    const bool hasFeet = !text.empty() && (text.back() == ' ' || text.back() == '-') &&
                         text.find_first_of("0123456789") != std::string::npos;
    text += std::to_string(*rc::gen::inRange(0, 12));
    text += *rc::gen::element<std::string>("", " 1/2", "-9/16", "½", " ⅜", ".25", ",5", "/7");
    text += hasFeet
                ? *rc::gen::element<std::string>(" in", "\"", "″", "''")
                : *rc::gen::element<std::string>("", " in", "\"", " mm", "cm", " m", "'", " ft");
    return text;
}

// Texts made of the pieces of the language, so that they reach past the first character.
std::string someTokens() {
    const auto tokens =
        *rc::gen::container<std::vector<std::string>>(rc::gen::element<std::string>("1",
                                                                                    "16",
                                                                                    " ",
                                                                                    "/",
                                                                                    "-",
                                                                                    "+",
                                                                                    "*",
                                                                                    "(",
                                                                                    ")",
                                                                                    ",",
                                                                                    ".",
                                                                                    "½",
                                                                                    "in",
                                                                                    "ft",
                                                                                    "'",
                                                                                    "\"",
                                                                                    "°",
                                                                                    "mm",
                                                                                    "min(",
                                                                                    "round(",
                                                                                    "tan(",
                                                                                    "seat",
                                                                                    "0",
                                                                                    "\xE2",
                                                                                    "−",
                                                                                    "≈"));
    std::string text;
    for (const auto& token : tokens) {
        text += token;
    }
    return text;
}

RC_GTEST_PROP(ExpressionLaws, ProductDistributesOverSumAndDifference, ()) {
    const std::string a = someLength();
    const std::string b = someLength();
    const std::string k = std::to_string(*rc::gen::inRange(1, 20));
    const std::string sign = *rc::gen::element(" + ", " - ");

    const auto together = evaluated(k + " * (" + a + sign + b + ")");
    const auto apart = evaluated(k + " * " + a + sign + k + " * " + b);

    RC_ASSERT(together.has_value() && apart.has_value());
    RC_ASSERT(nearlyEqual(*together, *apart, Length::mm(1e-8)));
}

RC_GTEST_PROP(ExpressionLaws, SumAndDifferenceAreThoseOfTheLengths, ()) {
    const std::string a = someLength();
    const std::string b = someLength();
    const Length first = readLength(a, Unit::Inch).value();
    const Length second = readLength(b, Unit::Inch).value();

    RC_ASSERT((evaluated(a + " + " + b) == first + second));
    RC_ASSERT((evaluated(a + " - " + b) == first - second));
    RC_ASSERT((evaluated("max(" + a + ", " + b + ")") == std::max(first, second)));
}

RC_GTEST_PROP(ExpressionLaws, LengthAloneIsReadAsALengthFieldReadsIt, ()) {
    const std::string text = someWrittenLength();

    const auto field = readLength(text, Unit::Inch);

    RC_ASSERT(field.has_value());
    RC_ASSERT((evaluated(text) == field));
}

RC_GTEST_PROP(ExpressionReader, AnyTokensAreReadOrRefusedWithAPlaceInTheText, ()) {
    const std::string text = someTokens();

    const auto expression = Expression::parse(text, Unit::Inch);

    RC_ASSERT(expression.has_value() || expression.error().position <= text.size());
    RC_ASSERT(expression.has_value() || !expression.error().message.empty());
}

RC_GTEST_PROP(ExpressionReader, AnyBytesAreReadOrRefusedWithAPlaceInTheText, ()) {
    const auto text = *rc::gen::arbitrary<std::string>();

    const auto expression = Expression::parse(text, Unit::Millimetre);

    RC_ASSERT(expression.has_value() || expression.error().position <= text.size());
}

std::string numbered(int i) {
    std::string name = "m";
    return name += std::to_string(i);
}

// Twin: each measure's value by following its mentions without any order or memory.
int twin(const std::vector<std::vector<int>>& mentions, int measure, int depth) {
    if (depth > static_cast<int>(mentions.size())) {
        return -1;
    }
    int total = 1;
    for (const int other : mentions[static_cast<std::size_t>(measure)]) {
        const int part = twin(mentions, other, depth + 1);
        if (part < 0) {
            return -1;
        }
        total += part;
    }
    return total;
}

RC_GTEST_PROP(MeasureTableLaws, ValuesAndFailuresMatchAPlainRecursiveTwin, ()) {
    const int count = *rc::gen::inRange(1, 7);
    const auto mentions = *rc::gen::container<std::vector<std::vector<int>>>(
        static_cast<std::size_t>(count),
        rc::gen::resize(3, rc::gen::container<std::vector<int>>(rc::gen::inRange(0, count))));
    std::vector<NamedExpression> measures;
    for (int i = 0; i < count; ++i) {
        std::string text = "1 in";
        for (const int other : mentions[static_cast<std::size_t>(i)]) {
            text += " + ";
            text += numbered(other);
        }
        measures.push_back({numbered(i), text});
    }

    const auto table = MeasureTable::evaluateAll(measures, Unit::Inch);

    for (int i = 0; i < count; ++i) {
        const int expected = twin(mentions, i, 0);
        const auto& value = table.results()[static_cast<std::size_t>(i)].value;
        RC_ASSERT((value.has_value() == (expected >= 0)));
        if (value) {
            RC_ASSERT(nearlyEqual(value->asLength().value(), Length::inches(expected)));
        } else {
            RC_ASSERT((value.error().code == ErrorCode::Cycle));
        }
    }
}

}  // namespace
}  // namespace shoulderline
