#pragma once

#include <string>
#include <vector>

#include "core/measure/length_text.h"
#include "core/rules/rule_book.h"
#include "core/rules/size_state.h"

namespace shoulderline {

// One link in the chain that made a size: the rule, the lengths it started from, what it gave.
// Kept as data; reasonText() puts it into words in the maker's units.
struct Reason {
    RuleId rule = RuleId::Stated;
    Length a;
    Length b;
    Length value;
    friend bool operator==(const Reason&, const Reason&) = default;
};

// A size with how it came to be. The last reason's value is the size.
struct Size {
    Length value;
    SizeState state = SizeState::ByRule;
    std::vector<Reason> reasons;
    friend bool operator==(const Size&, const Size&) = default;
};

// The reason as one clause for the maker ("one third of the 1 1/8 stock is 3/8"): the rule's
// sentence with {a}, {b} and {value} shown in `style` and {share} as the rule's figure.
[[nodiscard]] std::string reasonText(const Reason&, const RuleBook&, const LengthStyle& style);

}  // namespace shoulderline
