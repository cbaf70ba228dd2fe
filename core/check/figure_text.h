#pragma once

#include <string>

#include "core/check/strength_model.h"

namespace shoulderline {

// A figure with `decimals` digits after the point, without zeros at its end ("0.8", "12").
[[nodiscard]] std::string figureText(double value, int decimals);

// An estimate to two or three digits, as its worth allows: "8.6", "105", "1230".
[[nodiscard]] std::string estimateText(double value);

// "226 to 401 N m"; the unit is left out where it is empty.
[[nodiscard]] std::string rangeText(const Range& range, const std::string& unit);

}  // namespace shoulderline
