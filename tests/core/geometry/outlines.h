#pragma once

#include "core/geometry/outline.h"

namespace shoulderline::testing {

// A square angle with legs of 30, 10 wide.
inline const Outline kAngle =
    Outline::polygon({{0, 0}, {30, 0}, {30, 10}, {10, 10}, {10, 30}, {0, 30}});

}  // namespace shoulderline::testing
