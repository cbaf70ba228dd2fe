#include "core/measure/expression.h"

#include <utility>

#include "core/measure/expression_parser.h"

namespace shoulderline {

namespace {

using Kind = ExpressionStep::Kind;

Result<Value> trigonometric(Kind kind, const Value& value) {
    return value.asAngle().and_then([&](Angle angle) -> Result<Value> {
        if (kind == Kind::Sin) {
            return Value::number(angle.sin());
        }
        if (kind == Kind::Cos) {
            return Value::number(angle.cos());
        }
        return Value::quotient(Value::number(angle.sin()), Value::number(angle.cos()));
    });
}

Result<Value> combined(Kind kind, const Value& a, const Value& b) {
    switch (kind) {
        case Kind::Add:
            return Value::sum(a, b);
        case Kind::Subtract:
            return Value::difference(a, b);
        case Kind::Multiply:
            return Value::product(a, b);
        case Kind::Divide:
            return Value::quotient(a, b);
        case Kind::Min:
            return Value::smaller(a, b);
        case Kind::Max:
            return Value::larger(a, b);
        case Kind::Round:
            return Value::rounded(a, b);
        case Kind::Literal:
        case Kind::Name:
        case Kind::Negate:
        case Kind::Sin:
        case Kind::Cos:
        case Kind::Tan:
            break;
    }
    return a;
}

// How many values a step takes from the stack.
std::size_t operandCount(const ExpressionStep& step) {
    switch (step.kind) {
        case Kind::Literal:
        case Kind::Name:
            return 0;
        case Kind::Negate:
        case Kind::Sin:
        case Kind::Cos:
        case Kind::Tan:
            return 1;
        case Kind::Add:
        case Kind::Subtract:
        case Kind::Multiply:
        case Kind::Divide:
            return 2;
        case Kind::Min:
        case Kind::Max:
        case Kind::Round:
            break;
    }
    return step.operand;
}

Result<Value> takeStep(const ExpressionStep& step,
                       const std::vector<Value>& stack,
                       const ExpressionCode& code,
                       const Lookup& lookup) {
    const auto operand = [&](std::size_t fromFirst) {
        return stack[stack.size() - operandCount(step) + fromFirst];
    };
    switch (step.kind) {
        case Kind::Literal:
            return step.value;
        case Kind::Name:
            return lookup(code.names[step.operand]);
        case Kind::Negate:
            return operand(0).negated();
        case Kind::Sin:
        case Kind::Cos:
        case Kind::Tan:
            return trigonometric(step.kind, operand(0));
        case Kind::Add:
        case Kind::Subtract:
        case Kind::Multiply:
        case Kind::Divide:
        case Kind::Min:
        case Kind::Max:
        case Kind::Round:
            break;
    }
    Result<Value> value = operand(0);
    for (std::size_t i = 1; i < operandCount(step) && value; ++i) {
        value = combined(step.kind, *value, operand(i));
    }
    return value;
}

}  // namespace

Result<Expression> Expression::parse(std::string_view text, Unit bare) {
    return parseExpression(text, bare).map([](ExpressionCode code) {
        return Expression(std::make_shared<const ExpressionCode>(std::move(code)));
    });
}

const std::string& Expression::text() const {
    return code_->text;
}

const std::vector<std::string>& Expression::names() const {
    return code_->names;
}

Result<Value> Expression::evaluate(const Lookup& lookup) const {
    std::vector<Value> stack;
    stack.reserve(code_->steps.size());
    for (const ExpressionStep& step : code_->steps) {
        Result<Value> value = takeStep(step, stack, *code_, lookup);
        if (!value) {
            Error error = std::move(value.error());
            error.position = step.position;
            return tl::unexpected(std::move(error));
        }
        stack.resize(stack.size() - operandCount(step));
        stack.push_back(*value);
    }
    return stack.back();
}

Result<Length> Expression::evaluateLength(const Lookup& lookup) const {
    return evaluate(lookup).and_then([](const Value& value) { return value.asLength(); });
}

Result<Angle> Expression::evaluateAngle(const Lookup& lookup) const {
    return evaluate(lookup).and_then([](const Value& value) { return value.asAngle(); });
}

Result<int> Expression::evaluateCount(const Lookup& lookup) const {
    return evaluate(lookup).and_then([](const Value& value) { return value.asCount(); });
}

}  // namespace shoulderline
