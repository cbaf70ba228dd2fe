#pragma once

#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/result.h"
#include "core/measure/unit.h"
#include "core/measure/value.h"

namespace shoulderline {

struct ExpressionCode;

// Gives the value of a measure by its name, or says why there is none.
using Lookup = std::function<Result<Value>(std::string_view name)>;

// Arithmetic over lengths, angles, numbers and measures, with dimensions checked. An immutable
// value, cheap to copy.
//
//   expression   + - * / and brackets, with × and ÷ for * and /; a sign may stand before a value
//   literals     as literal.h reads them: 16 1/2 in   5-3/8"   9/16   419 mm   1' 4 1/2"   12°
//   names        seat height - rail thickness / 2; measure_name.h says what a name is
//   functions    min(a, b, ...)   max(a, b, ...)   round(a, step)   sin(a)   cos(a)   tan(a)
//
// How what could be read two ways is read:
//   - `16-1/2` without spaces, whole numbers with the fraction under one, is sixteen and a half;
//     `16 - 1/2` is fifteen and a half, and so is `16 -1/2`. U+2212 always subtracts.
//   - `3/4 in`, without spaces, is three quarters of an inch; `x / 3/4 in` is refused (put
//   brackets);
//     without a unit `x/3/4` divides from left to right.
//   - a comma between digits is a decimal sign, but inside a function's brackets it is refused:
//     min(1.5, 2) has a space after its comma.
//   - a number without a unit is bare: see Value.
//   - units stand only after numbers: `seat in` is a name.
class Expression {
  public:
    // Reads `text` (at most 1000 bytes, brackets and signs nested at most 60 deep); bare numbers
    // that become lengths are in `bare`. Errors: EmptyText, BadText, OutOfRange (a literal over
    // 1 km); position is the byte of the first wrong character.
    [[nodiscard]] static Result<Expression> parse(std::string_view text, Unit bare);

    [[nodiscard]] const std::string& text() const;
    // The measures it mentions, sorted, each once.
    [[nodiscard]] const std::vector<std::string>& names() const;

    // The value, with each name looked up. Errors are those of Value's arithmetic and of `lookup`;
    // position is the operator, function or name at fault.
    [[nodiscard]] Result<Value> evaluate(const Lookup& lookup) const;
    // The value as what is wanted: see Value::asLength, asAngle and asCount.
    [[nodiscard]] Result<Length> evaluateLength(const Lookup& lookup) const;
    [[nodiscard]] Result<Angle> evaluateAngle(const Lookup& lookup) const;
    [[nodiscard]] Result<int> evaluateCount(const Lookup& lookup) const;

  private:
    explicit Expression(std::shared_ptr<const ExpressionCode> code) : code_(std::move(code)) {}
    std::shared_ptr<const ExpressionCode> code_;
};

}  // namespace shoulderline
