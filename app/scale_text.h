#pragma once

#include <string_view>

#include "core/measure/result.h"

namespace shoulderline {

// A scale as drawings give it: 1:1, 1:5, 2:1; "fit" is 0, the largest standard scale that fits.
// Drawing to wood. Errors: BadText.
[[nodiscard]] Result<double> readScale(std::string_view text);

}  // namespace shoulderline
