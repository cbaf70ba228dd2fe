#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/expression.h"
#include "core/measure/result.h"
#include "core/measure/unit.h"
#include "core/measure/value.h"

namespace shoulderline {

// A measure as stated: its name, and the expression that gives it.
struct NamedExpression {
    std::string name;
    std::string text;

    friend bool operator==(const NamedExpression&, const NamedExpression&) = default;
};

// A measure worked out. A failed one has the error's `where` set to its name and `position` to the
// byte in its text.
struct MeasureResult {
    std::string name;  // tidied, see tidyName
    Result<Value> value;
    std::vector<std::string> dependsOn;  // the measures its text mentions, sorted, each once
};

// All measures of a piece, worked out together. A measure whose whole value is bare counts as a
// length in the piece's unit, and where another expression mentions it, as the bare number that it
// is: `slats` stated as 5 is a count in `slats * slat width`. Immutable.
class MeasureTable {
  public:
    MeasureTable() = default;

    // Works out every measure. One that fails does not stop the others. Errors: those of
    // Expression; BadText for a name that is none or is taken already (the first one stands);
    // Cycle for measures that hang on one another, naming them in order; a measure that hangs on a
    // failed one carries that one's code and names it.
    [[nodiscard]] static MeasureTable evaluateAll(const std::vector<NamedExpression>& measures,
                                                  Unit bare);

    // In the order stated.
    [[nodiscard]] const std::vector<MeasureResult>& results() const { return results_; }

    // The measure of this (tidy) name. Errors: UnknownName; for one that failed, its code and a
    // sentence that names it.
    [[nodiscard]] Result<Value> lookup(std::string_view name) const;

    // The same as a function, to evaluate expressions with; valid as long as the table.
    [[nodiscard]] Lookup lookupFunction() const;

  private:
    std::vector<MeasureResult> results_;
    std::map<std::string, std::size_t, std::less<>> indexes_;  // of the results, by name
};

}  // namespace shoulderline
