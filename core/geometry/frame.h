#pragma once

#include "core/geometry/box.h"
#include "core/geometry/vec.h"
#include "core/measure/angle.h"

namespace shoulderline {

// A rigid placement: an origin and three unit directions at right angles, given in the outer
// frame. Right-handed, or left-handed for the mirror twin of a part. Millimetres.
struct Frame {
    Vec3 origin;
    Vec3 x{1, 0, 0};
    Vec3 y{0, 1, 0};
    Vec3 z{0, 0, 1};

    friend bool operator==(const Frame&, const Frame&) = default;

    [[nodiscard]] constexpr Vec3 axis(int i) const { return i == 0 ? x : (i == 1 ? y : z); }
    // From this frame's coordinates to the outer ones: a point, a direction.
    [[nodiscard]] constexpr Vec3 toOuter(Vec3 p) const { return origin + directionToOuter(p); }
    [[nodiscard]] constexpr Vec3 directionToOuter(Vec3 d) const {
        return x * d.x + y * d.y + z * d.z;
    }
    // From outer coordinates to this frame's: a point, a direction.
    [[nodiscard]] constexpr Vec3 toLocal(Vec3 p) const { return directionToLocal(p - origin); }
    [[nodiscard]] constexpr Vec3 directionToLocal(Vec3 d) const {
        return {dot(d, x), dot(d, y), dot(d, z)};
    }
    [[nodiscard]] constexpr bool isRightHanded() const { return dot(cross(x, y), z) > 0.0; }

    // `inner`, stated in this frame, restated in the outer frame.
    [[nodiscard]] constexpr Frame compose(const Frame& inner) const {
        return {toOuter(inner.origin),
                directionToOuter(inner.x),
                directionToOuter(inner.y),
                directionToOuter(inner.z)};
    }
    // The mirror image in the plane x = 0 of the outer frame. Left-handed if this is right-handed.
    [[nodiscard]] constexpr Frame mirroredInX() const {
        constexpr auto flip = [](Vec3 v) { return Vec3{-v.x, v.y, v.z}; };
        return {flip(origin), flip(x), flip(y), flip(z)};
    }
    // The smallest outer axis-aligned box around `local`, a box in this frame.
    [[nodiscard]] Box outerBounds(const Box& local) const;

    // Turned about the outer x, then y, then z axis (each right-hand rule), then moved to `origin`.
    [[nodiscard]] static Frame turned(Vec3 origin, Angle aboutX, Angle aboutY, Angle aboutZ);
};

}  // namespace shoulderline
