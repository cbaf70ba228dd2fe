#pragma once

#include <string_view>

#include <nlohmann/json_fwd.hpp>

#include "core/measure/result.h"

namespace shoulderline {

// Bounds on a file from a stranger, far over any real piece.
inline constexpr std::size_t kLargestFile = 32u << 20;  // bytes
inline constexpr int kDeepestNesting = 24;
inline constexpr std::size_t kMostValues = 2'000'000;

// Reads JSON text with those bounds. Refused, with the place where that is known and what was
// expected: text over the bounds, text that is not UTF-8, text cut short or otherwise not JSON
// (with line and column), an object with the same name twice, numbers that are no finite double.
// Errors: BadFile.
[[nodiscard]] Result<nlohmann::ordered_json> readJson(std::string_view text);

}  // namespace shoulderline
