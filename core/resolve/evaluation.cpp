#include "core/resolve/evaluation.h"

#include "core/measure/expression.h"

namespace shoulderline {

namespace {

// A sentence for the list of findings: "width: there is no measure 'x'".
std::string sentence(std::string_view what, const Error& error) {
    return std::string(what) + ": " + error.message;
}

}  // namespace

void Evaluation::trouble(const Place& place, std::string message, RuleId rule) {
    Trouble trouble;
    trouble.rule = rule;
    trouble.place = std::string(place.kind) + " '" + std::string(place.name) + "'";
    trouble.message = std::move(message);
    trouble.part = place.part;
    troubles_.push_back(std::move(trouble));
}

std::optional<Length> Evaluation::length(const Statement& statement,
                                         const Place& place,
                                         std::string_view what,
                                         std::optional<Length> ifEmpty) {
    if (statement.empty()) {
        if (!ifEmpty) {
            trouble(place, std::string(what) + " is not stated");
        }
        return ifEmpty;
    }
    const Result<Expression> expression = Expression::parse(statement, unit_);
    if (!expression) {
        trouble(place, sentence(what, expression.error()));
        return std::nullopt;
    }
    const Result<Length> value = expression->evaluateLength(measures_.lookupFunction());
    if (!value) {
        trouble(place, sentence(what, value.error()));
        return std::nullopt;
    }
    return *value;
}

std::optional<Length> Evaluation::size(const Statement& statement,
                                       const Place& place,
                                       std::string_view what,
                                       std::optional<Length> ifEmpty) {
    const std::optional<Length> value = length(statement, place, what, ifEmpty);
    if (value && *value < kLengthTolerance) {
        trouble(place, std::string(what) + " is not above zero");
        return std::nullopt;
    }
    return value;
}

std::optional<Angle> Evaluation::angle(const Statement& statement,
                                       const Place& place,
                                       std::string_view what) {
    if (statement.empty()) {
        return Angle();
    }
    const Result<Expression> expression = Expression::parse(statement, unit_);
    const Result<Angle> value = expression ? expression->evaluateAngle(measures_.lookupFunction())
                                           : Result<Angle>(tl::unexpected(expression.error()));
    if (!value) {
        trouble(place, sentence(what, value.error()));
        return std::nullopt;
    }
    return *value;
}

std::optional<double> Evaluation::ratio(const Statement& statement,
                                        const Place& place,
                                        std::string_view what) {
    constexpr double kGreatestRatio = 1000.0;
    const Result<Expression> expression = Expression::parse(statement, unit_);
    const Result<Value> value = expression ? expression->evaluate(measures_.lookupFunction())
                                           : Result<Value>(tl::unexpected(expression.error()));
    const Result<double> number =
        value ? value->asNumber() : Result<double>(tl::unexpected(value.error()));
    if (!number) {
        trouble(place, sentence(what, number.error()));
        return std::nullopt;
    }
    if (*number < 0 || *number > kGreatestRatio) {
        trouble(place, std::string(what) + " is outside 0 to 1000");
        return std::nullopt;
    }
    return *number;
}

std::optional<int> Evaluation::count(const Statement& statement,
                                     const Place& place,
                                     std::string_view what) {
    const Result<Expression> expression = Expression::parse(statement, unit_);
    const Result<int> value = expression ? expression->evaluateCount(measures_.lookupFunction())
                                         : Result<int>(tl::unexpected(expression.error()));
    if (!value) {
        trouble(place, sentence(what, value.error()));
        return std::nullopt;
    }
    if (*value < 1 || *value > kMostInSet) {
        trouble(place,
                std::string(what) + " is " + std::to_string(*value) + "; from 1 to " +
                    std::to_string(kMostInSet) + " is expected");
        return std::nullopt;
    }
    return *value;
}

}  // namespace shoulderline
