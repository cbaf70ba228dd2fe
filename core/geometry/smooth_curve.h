#pragma once

#include <span>
#include <vector>

#include "core/geometry/outline.h"

namespace shoulderline {

// A smooth curve through `points` (at least one, no two neighbours in one place) made of circular
// arcs, two between each pair of neighbours, that run on into one another without a corner. The
// direction at a point is that of the circle through it and its two neighbours; at the first and
// the last point that of the circle through the three at that end. Every given point is in the
// result, in order; the last vertex has no bulge. Two points give the straight line between them,
// points on one line that line. The arcs between two points are the biarc with both arms alike
// (K. M. Bolton, Biarc curves, Computer-Aided Design 7(2), 1975; the citation is from memory).
[[nodiscard]] std::vector<OutlineVertex> smoothCurve(std::span<const Vec2> points);

}  // namespace shoulderline
