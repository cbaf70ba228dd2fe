#pragma once

#include <span>
#include <vector>

#include "core/geometry/rect.h"
#include "core/geometry/vec.h"

namespace shoulderline {

// What is left of a rectangle when `notches` are cut out of it: one ring, counter-clockwise with y
// up, the last point not repeated. Empty where that is nothing, has a hole or falls apart.
[[nodiscard]] std::vector<Vec2> notchedRect(const Rect& rect, std::span<const Rect> notches);

}  // namespace shoulderline
