#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/geometry/box.h"

namespace shoulderline {

// The set operations of convex_solid.h for boxes stated in one and the same frame, by interval
// arithmetic on each axis. Boxes need some size on each axis.

// What both boxes share; empty when they only touch (overlap up to 1e-7 mm thick counts as
// touching).
[[nodiscard]] std::optional<Box> overlap(const Box& a, const Box& b);
// Shortest distance between the boxes; 0 where they touch or overlap.
[[nodiscard]] double distance(const Box& a, const Box& b);
// What is left of `a` without `b`: up to six boxes that share no volume.
[[nodiscard]] std::vector<Box> subtract(const Box& a, const Box& b);
// Volume covered by any of the boxes.
[[nodiscard]] double unionVolume(std::span<const Box> boxes);

}  // namespace shoulderline
