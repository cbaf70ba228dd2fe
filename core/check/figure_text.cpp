#include "core/check/figure_text.h"

#include <array>
#include <charconv>
#include <cmath>

namespace shoulderline {

std::string figureText(double value, int decimals) {
    const double steps = std::pow(10.0, decimals);
    const double rounded = std::round(value * steps) / steps;
    std::array<char, 64> digits{};
    const auto end = std::to_chars(digits.data(),
                                   digits.data() + digits.size(),
                                   rounded == 0.0 ? 0.0 : rounded,
                                   std::chars_format::fixed,
                                   decimals)
                         .ptr;
    std::string text(digits.data(), end);
    if (text.find('.') != std::string::npos) {
        while (text.back() == '0') {
            text.pop_back();
        }
        if (text.back() == '.') {
            text.pop_back();
        }
    }
    return text;
}

std::string estimateText(double value) {
    constexpr double kThreeDigits = 1000.0;
    if (std::abs(value) >= kThreeDigits) {
        return figureText(std::round(value / 10.0) * 10.0, 0);
    }
    return figureText(value, std::abs(value) < 10.0 ? (std::abs(value) < 1.0 ? 2 : 1) : 0);
}

std::string rangeText(const Range& range, const std::string& unit) {
    const std::string low = estimateText(range.low);
    const std::string high = estimateText(range.high);
    return (low == high ? low : low + " to " + high) + (unit.empty() ? "" : " " + unit);
}

}  // namespace shoulderline
