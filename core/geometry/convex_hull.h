#pragma once

#include <vector>

#include "core/geometry/vec.h"

namespace shoulderline {

// The smallest convex polygon around `points`, counter-clockwise (Andrew's monotone chain).
[[nodiscard]] std::vector<Vec2> convexHull(std::vector<Vec2> points);

// Whether `p` lies in the convex polygon, counter-clockwise, or within `margin` of it.
[[nodiscard]] bool hullContains(const std::vector<Vec2>& hull, Vec2 p, double margin = 0.0);

}  // namespace shoulderline
