#pragma once

#include "core/geometry/vec.h"

namespace shoulderline {

// An axis-aligned box in some frame; millimetres. Valid when min <= max on every axis.
struct Box {
    Vec3 min;
    Vec3 max;

    friend bool operator==(const Box&, const Box&) = default;
    [[nodiscard]] constexpr Vec3 size() const { return max - min; }
    [[nodiscard]] constexpr Vec3 centre() const { return (min + max) * 0.5; }
    [[nodiscard]] constexpr double volume() const {
        const Vec3 s = size();
        return s.x * s.y * s.z;
    }
    // Whether the boxes share a point once each is grown by `margin` / 2 (touching counts).
    [[nodiscard]] constexpr bool meets(const Box& o, double margin = 0.0) const {
        for (int i = 0; i < 3; ++i) {
            if (min[i] > o.max[i] + margin || o.min[i] > max[i] + margin) {
                return false;
            }
        }
        return true;
    }
    // Whether `o` lies inside this box, allowing it to stand out by `margin`.
    [[nodiscard]] constexpr bool holds(const Box& o, double margin = 0.0) const {
        for (int i = 0; i < 3; ++i) {
            if (o.min[i] < min[i] - margin || o.max[i] > max[i] + margin) {
                return false;
            }
        }
        return true;
    }
    // The smallest box around both.
    [[nodiscard]] static constexpr Box around(const Box& a, const Box& b) {
        Box r = a;
        for (int i = 0; i < 3; ++i) {
            r.min[i] = std::min(a.min[i], b.min[i]);
            r.max[i] = std::max(a.max[i], b.max[i]);
        }
        return r;
    }
};

}  // namespace shoulderline
