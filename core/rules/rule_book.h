#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/result.h"
#include "core/rules/rule.h"

namespace shoulderline {

// The rules by which joints are sized and judged: one row for every RuleId.
class RuleBook {
  public:
    // Reads a rule book (JSON text; see resources/rules/). Every RuleId must have one row with its
    // sentence, source and, where it has a figure, a finite figure of at least zero.
    // Errors: BadFile with the place and what was expected.
    [[nodiscard]] static Result<RuleBook> read(std::string_view json);

    [[nodiscard]] const Rule& operator[](RuleId id) const {
        return rules_[static_cast<std::size_t>(id)];
    }
    // This book with the figure of one rule replaced by the maker's own (millimetres, or a plain
    // ratio). The range widens to hold it.
    [[nodiscard]] RuleBook with(RuleId id, double value) const;

  private:
    std::array<Rule, kRuleCount> rules_;
};

// What the shop has: chisels by width and bits, ascending, and the grid that sizes by rule are
// taken to.
struct Workshop {
    std::vector<Length> inchRack;
    std::vector<Length> millimetreRack;
    std::vector<Length> inchBits;  // for round holes
    std::vector<Length> millimetreBits;
    Length inchGrid;
    Length millimetreGrid;

    // Reads resources/rules/workshop.json. Errors: BadFile.
    [[nodiscard]] static Result<Workshop> read(std::string_view json);
};

}  // namespace shoulderline
