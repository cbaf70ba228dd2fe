#include "core/geometry/smooth_curve.h"

#include <cmath>

namespace shoulderline {

namespace {

constexpr double kStraight = 1e-9;  // radians between a chord and a tangent that count as none

Vec2 unit(Vec2 v) {
    const double length = norm(v);
    return length > 0.0 ? v * (1.0 / length) : v;
}

// The angle from `a` to `b`, counter-clockwise, in (-pi, pi].
double angleBetween(Vec2 a, Vec2 b) {
    return std::atan2(cross(a, b), dot(a, b));
}

// Direction at `at`, the middle or an end of three points on a circle run through in order. The
// tangent makes with the chord to a neighbour half of the angle that the arc to it turns.
enum class Where { First, Middle, Last };
Vec2 tangentOf(Vec2 a, Vec2 b, Vec2 c, Where where) {
    const Vec2 first = b - a;
    const Vec2 second = c - b;
    const double turn = angleBetween(first, second);
    // The chords a-b and b-c turn by half of both arcs' angles together; each arc's share is the
    // inscribed angle over its chord.
    const double overFirst = std::abs(angleBetween(b - c, a - c));
    const double overSecond = std::abs(angleBetween(b - a, c - a));
    const double sense = turn < 0.0 ? -1.0 : 1.0;
    const auto turned = [](Vec2 v, double by) {
        return Vec2{v.x * std::cos(by) - v.y * std::sin(by),
                    v.x * std::sin(by) + v.y * std::cos(by)};
    };
    switch (where) {
        case Where::First:
            return unit(turned(first, -sense * overFirst));
        case Where::Middle:
            return unit(turned(first, sense * overFirst));
        case Where::Last:
            break;
    }
    return unit(turned(second, sense * overSecond));
}

// The bulge of an arc over `chord` that sets out along `tangent`.
double bulgeFrom(Vec2 tangent, Vec2 chord) {
    const double angle = angleBetween(tangent, chord);
    return std::abs(angle) < kStraight ? 0.0 : std::tan(angle / 2.0);
}

// Where the two arcs from p (along s) to q (along t) meet.
Vec2 meetingPoint(Vec2 p, Vec2 s, Vec2 q, Vec2 t) {
    const Vec2 way = q - p;
    const Vec2 sum = s + t;
    const double spread = 2.0 * (1.0 - dot(s, t));
    const double along = dot(way, sum);
    const double arm = spread > 1e-12
                           ? (std::sqrt(along * along + spread * dot(way, way)) - along) / spread
                           : dot(way, way) / (2.0 * std::max(along, 1e-12));
    return (p + q + (s - t) * arm) * 0.5;
}

}  // namespace

std::vector<OutlineVertex> smoothCurve(std::span<const Vec2> points) {
    const std::size_t n = points.size();
    std::vector<OutlineVertex> curve;
    if (n < 3) {
        for (const Vec2 p : points) {
            curve.push_back({p, 0.0});
        }
        return curve;
    }
    std::vector<Vec2> tangents(n);
    tangents.front() = tangentOf(points[0], points[1], points[2], Where::First);
    tangents.back() = tangentOf(points[n - 3], points[n - 2], points[n - 1], Where::Last);
    for (std::size_t i = 1; i + 1 < n; ++i) {
        tangents[i] = tangentOf(points[i - 1], points[i], points[i + 1], Where::Middle);
    }
    for (std::size_t i = 0; i + 1 < n; ++i) {
        const Vec2 p = points[i];
        const Vec2 q = points[i + 1];
        const double start = bulgeFrom(tangents[i], q - p);
        const double end = -bulgeFrom(tangents[i + 1], q - p);
        if (std::abs(start - end) < kStraight) {
            curve.push_back({p, start});  // one arc does
            continue;
        }
        const Vec2 middle = meetingPoint(p, tangents[i], q, tangents[i + 1]);
        curve.push_back({p, bulgeFrom(tangents[i], middle - p)});
        curve.push_back({middle, -bulgeFrom(tangents[i + 1], q - middle)});
    }
    curve.push_back({points[n - 1], 0.0});
    return curve;
}

}  // namespace shoulderline
