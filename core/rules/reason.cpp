#include "core/rules/reason.h"

#include <array>
#include <charconv>
#include <cmath>

namespace shoulderline {

namespace {

// A ratio as a maker says it: a simple fraction where it is one, else a decimal.
std::string ratioText(double ratio) {
    struct Word {
        double value;
        std::string_view text;
    };
    constexpr std::array<Word, 8> kWords{{{1.0 / 3.0, "one third"},
                                          {2.0 / 3.0, "two thirds"},
                                          {0.5, "half"},
                                          {0.25, "a quarter"},
                                          {0.75, "three quarters"},
                                          {0.125, "one eighth"},
                                          {0.875, "seven eighths"},
                                          {0.2, "one fifth"}}};
    for (const Word& word : kWords) {
        if (std::abs(ratio - word.value) < 1e-4) {
            return std::string(word.text);
        }
    }
    std::array<char, 32> digits{};
    const double rounded = std::round(ratio * 100.0) / 100.0;
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), rounded).ptr;
    return {digits.data(), end};
}

}  // namespace

std::string reasonText(const Reason& reason, const RuleBook& book, const LengthStyle& style) {
    const Rule& rule = book[reason.rule];
    const std::string& sentence = rule.sentence;
    std::string text;
    for (std::size_t i = 0; i < sentence.size();) {
        const std::size_t close = sentence[i] == '{' ? sentence.find('}', i) : std::string::npos;
        if (close == std::string::npos) {
            text += sentence[i++];
            continue;
        }
        const std::string_view field = std::string_view(sentence).substr(i + 1, close - i - 1);
        if (field == "a") {
            text += showLength(reason.a, style);
        } else if (field == "b") {
            text += showLength(reason.b, style);
        } else if (field == "value") {
            text += showLength(reason.value, style);
        } else if (field == "share") {
            text += rule.unit == RuleUnit::Length ? showLength(rule.length(), style)
                                                  : ratioText(rule.value);
        }
        i = close + 1;
    }
    return text;
}

}  // namespace shoulderline
