#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/rules/rule_book.h"

namespace shoulderline {

// The tool of a set-up with the size of what cuts, where its row in the rule book has a place for
// it: "3/8 hollow chisel, in the mortiser"; without a size "hollow chisel, in the mortiser".
[[nodiscard]] std::string toolText(const RuleBook& rules,
                                   RuleId tool,
                                   const std::string& cutter = {});
// Whether it has that place.
[[nodiscard]] bool namesCutter(const RuleBook& rules, RuleId tool);

// "hollow chisel, in the mortiser: clamp the work ..."
[[nodiscard]] std::string cautionText(const RuleBook& rules, RuleId tool);
// The cautions of several tools, one each.
[[nodiscard]] std::vector<std::string> cautionTexts(const RuleBook& rules,
                                                    const std::set<RuleId>& tools);

}  // namespace shoulderline
