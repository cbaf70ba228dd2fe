#pragma once

#include "core/geometry/vec.h"

namespace shoulderline {

// A rectangle with sides along the axes of a plane; millimetres. Valid when min <= max on both
// axes.
struct Rect {
    Vec2 min;
    Vec2 max;

    friend bool operator==(const Rect&, const Rect&) = default;
    [[nodiscard]] constexpr Vec2 size() const { return max - min; }
    // Grows to take in `p`.
    constexpr void include(Vec2 p) {
        min = {std::min(min.x, p.x), std::min(min.y, p.y)};
        max = {std::max(max.x, p.x), std::max(max.y, p.y)};
    }
};

}  // namespace shoulderline
