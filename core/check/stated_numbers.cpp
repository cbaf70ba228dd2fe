#include "core/check/stated_numbers.h"

namespace shoulderline {

const MeasureTable& StatedNumbers::measures() {
    if (!measures_) {
        std::vector<NamedExpression> named;
        for (const Measure& measure : piece_.measures) {
            named.push_back({measure.name, measure.expression});
        }
        measures_ = MeasureTable::evaluateAll(named, piece_.unit);
    }
    return *measures_;
}

Result<double> StatedNumbers::number(const Statement& statement, double least, double most) {
    return Expression::parse(statement, piece_.unit)
        .and_then([&](const Expression& e) { return e.evaluate(measures().lookupFunction()); })
        .and_then([](const Value& value) { return value.asNumber(); })
        .and_then([&](double value) -> Result<double> {
            if (!(value >= least && value <= most)) {
                return fail(ErrorCode::OutOfRange,
                            "A number from " + std::to_string(static_cast<int>(least)) + " to " +
                                std::to_string(static_cast<int>(most)) + " is expected.");
            }
            return value;
        });
}

Result<Length> StatedNumbers::length(const Statement& statement) {
    return Expression::parse(statement, piece_.unit).and_then([&](const Expression& e) {
        return e.evaluateLength(measures().lookupFunction());
    });
}

}  // namespace shoulderline
