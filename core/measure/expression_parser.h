#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/result.h"
#include "core/measure/unit.h"
#include "core/measure/value.h"

namespace shoulderline {

// One step of an expression in postfix order: operands first, each step taking its values from a
// stack and leaving one.
struct ExpressionStep {
    enum class Kind {
        Literal,
        Name,
        Negate,
        Add,
        Subtract,
        Multiply,
        Divide,
        Min,
        Max,
        Round,
        Sin,
        Cos,
        Tan
    };
    Kind kind = Kind::Literal;
    std::uint16_t position = 0;  // byte in the text, for errors
    std::uint16_t operand = 0;   // name: index in names; function: number of values
    Value value;                 // of a literal
};

// An expression ready to be worked out.
struct ExpressionCode {
    std::string text;
    std::vector<ExpressionStep> steps;
    std::vector<std::string> names;  // sorted, each once
};

// Reads an expression; expression.h states the language, the limits and the errors.
[[nodiscard]] Result<ExpressionCode> parseExpression(std::string_view text, Unit bare);

}  // namespace shoulderline
