#pragma once

#include "core/geometry/convex_solid.h"

namespace shoulderline {

// The cylinder that fits into `box`, its axis along axis 0 x, 1 y or 2 z of the box's frame, whose
// two other sides are alike: facets inside it, within kArcSagitta.
[[nodiscard]] ConvexSolid cylinderIn(const Box& box, int axis);

// How many facets stand for a circle of `radius` (> 0, millimetres) within kArcSagitta.
[[nodiscard]] int circleFacets(double radius);

}  // namespace shoulderline
