#pragma once

#include <algorithm>
#include <cmath>

namespace shoulderline {

// Points and directions. Coordinates are plain doubles in millimetres: the type says what they are.

struct Vec2 {
    double x = 0.0;
    double y = 0.0;

    friend bool operator==(const Vec2&, const Vec2&) = default;
    friend constexpr Vec2 operator+(Vec2 a, Vec2 b) { return {a.x + b.x, a.y + b.y}; }
    friend constexpr Vec2 operator-(Vec2 a, Vec2 b) { return {a.x - b.x, a.y - b.y}; }
    friend constexpr Vec2 operator*(Vec2 a, double k) { return {a.x * k, a.y * k}; }
};

[[nodiscard]] constexpr double dot(Vec2 a, Vec2 b) {
    return a.x * b.x + a.y * b.y;
}
// The z of the cross product: positive when b lies counter-clockwise of a.
[[nodiscard]] constexpr double cross(Vec2 a, Vec2 b) {
    return a.x * b.y - a.y * b.x;
}
[[nodiscard]] inline double norm(Vec2 a) {
    return std::hypot(a.x, a.y);
}

struct Vec3 {
    double x = 0.0;
    double y = 0.0;
    double z = 0.0;

    friend bool operator==(const Vec3&, const Vec3&) = default;
    friend constexpr Vec3 operator+(Vec3 a, Vec3 b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
    friend constexpr Vec3 operator-(Vec3 a, Vec3 b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
    friend constexpr Vec3 operator*(Vec3 a, double k) { return {a.x * k, a.y * k, a.z * k}; }
    constexpr Vec3 operator-() const { return {-x, -y, -z}; }

    // Coordinate by number: 0 is x, 1 is y, 2 is z.
    [[nodiscard]] constexpr double operator[](int axis) const {
        return axis == 0 ? x : (axis == 1 ? y : z);
    }
    [[nodiscard]] constexpr double& operator[](int axis) {
        return axis == 0 ? x : (axis == 1 ? y : z);
    }
};

[[nodiscard]] constexpr double dot(Vec3 a, Vec3 b) {
    return a.x * b.x + a.y * b.y + a.z * b.z;
}
[[nodiscard]] constexpr Vec3 cross(Vec3 a, Vec3 b) {
    return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
[[nodiscard]] inline double norm(Vec3 a) {
    return std::sqrt(dot(a, a));
}
// Unit vector along `a`; the zero vector stays zero.
[[nodiscard]] inline Vec3 normalised(Vec3 a) {
    const double n = norm(a);
    return n > 0.0 ? a * (1.0 / n) : a;
}

}  // namespace shoulderline
