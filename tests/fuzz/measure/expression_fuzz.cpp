// Any bytes as expressions, one a line, of measures a to l that may mention one another. What
// comes out must be finite and in range; what is refused must point into its text.

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/length_text.h"
#include "core/measure/measures.h"

namespace {

using namespace shoulderline;

constexpr std::size_t kMostMeasures = 12;  // named a to l: m is a unit, and no name

void require(bool holds) {
    if (!holds) {
        std::abort();
    }
}

std::vector<NamedExpression> measuresOf(std::string_view text) {
    std::vector<NamedExpression> measures;
    while (measures.size() < kMostMeasures) {
        const std::size_t end = text.find('\n');
        const char name = static_cast<char>('a' + static_cast<char>(measures.size()));
        measures.push_back({std::string(1, name), std::string(text.substr(0, end))});
        if (end == std::string_view::npos) {
            break;
        }
        text.remove_prefix(end + 1);
    }
    return measures;
}

void checkValue(const Value& value) {
    if (const auto length = value.asLength()) {
        require(std::abs(length->mm()) <= kLongestLength.mm());
    }
    if (const auto number = value.asNumber()) {
        require(std::isfinite(*number));
    }
    require(value.checked().has_value());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    const auto measures = measuresOf(text);
    const auto table = MeasureTable::evaluateAll(measures, Unit::Inch);
    require(table.results().size() == measures.size());
    for (std::size_t i = 0; i < measures.size(); ++i) {
        const auto& value = table.results()[i].value;
        if (value) {
            checkValue(*value);
        } else {
            require(value.error().position <= measures[i].text.size());
            require(!value.error().message.empty() && value.error().where == measures[i].name);
        }
        // What a length field reads, an expression reads as the same length.
        const auto field = readLength(measures[i].text, Unit::Inch);
        if (field && measures[i].text.find("≈") == std::string::npos) {
            require(value.and_then([](const Value& v) { return v.asLength(); }) == field);
        }
    }
    return 0;
}
