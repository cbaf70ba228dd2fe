#include <algorithm>
#include <cstddef>
#include <limits>
#include <vector>

#include "core/geometry/convex_solid.h"
#include "core/geometry/indices.h"

namespace shoulderline {

namespace {

struct Segment {
    Vec3 a;
    Vec3 b;
};

std::vector<Segment> edgesOf(const ConvexSolid& solid) {
    std::vector<Segment> edges;
    for (const ConvexSolid::Face& face : solid.faces()) {
        for (std::size_t i = 0; i < face.loop.size(); ++i) {
            const int from = face.loop[i];
            const int to = face.loop[i + 1 == face.loop.size() ? 0 : i + 1];
            if (from < to) {  // each edge runs the other way in its other face
                edges.push_back({solid.vertices()[asIndex(from)], solid.vertices()[asIndex(to)]});
            }
        }
    }
    return edges;
}

// Closest points of two segments: the lines' common perpendicular where it meets both, else the end
// that is nearest. Source: Ericson, Real-Time Collision Detection (2005), 5.1.9, from memory.
ClosestPoints between(const Segment& s, const Segment& t) {
    const Vec3 d1 = s.b - s.a;
    const Vec3 d2 = t.b - t.a;
    const Vec3 r = s.a - t.a;
    const double a = dot(d1, d1);
    const double e = dot(d2, d2);
    const double b = dot(d1, d2);
    const double c = dot(d1, r);
    const double f = dot(d2, r);
    const double square = a * e - b * b;
    // Nearly parallel: the clamping below finds a nearest pair from any start.
    double u = square > 1e-12 * a * e ? std::clamp((b * f - c * e) / square, 0.0, 1.0) : 0.0;
    double v = e > 0.0 ? (b * u + f) / e : 0.0;
    if (v < 0.0 || v > 1.0) {
        v = std::clamp(v, 0.0, 1.0);
        u = a > 0.0 ? std::clamp((b * v - c) / a, 0.0, 1.0) : 0.0;
    }
    const Vec3 onFirst = s.a + d1 * u;
    const Vec3 onSecond = t.a + d2 * v;
    return {norm(onFirst - onSecond), onFirst, onSecond};
}

// Whether the foot of the perpendicular from `p` lies in the face.
bool standsOver(const ConvexSolid& solid, const ConvexSolid::Face& face, Vec3 p) {
    for (std::size_t i = 0; i < face.loop.size(); ++i) {
        const Vec3 a = solid.vertices()[asIndex(face.loop[i])];
        const Vec3 b = solid.vertices()[asIndex(face.loop[i + 1 == face.loop.size() ? 0 : i + 1])];
        if (dot(cross(face.plane.normal, b - a), p - a) < 0.0) {
            return false;
        }
    }
    return true;
}

// The corner of `points` and the face of `solid` that are nearest; the point on `solid` is second.
ClosestPoints cornerToFace(const ConvexSolid& points, const ConvexSolid& solid) {
    ClosestPoints best{std::numeric_limits<double>::infinity(), {}, {}};
    for (const ConvexSolid::Face& face : solid.faces()) {
        for (const Vec3& p : points.vertices()) {
            // Solids that touch may reach into one another by their rounding.
            const double signedHeight = face.plane.height(p);
            const double height = std::max(signedHeight, 0.0);
            if (signedHeight >= -2.0 * kPlaneTolerance && height < best.distance &&
                standsOver(solid, face, p)) {
                best = {height, p, p - face.plane.normal * height};
            }
        }
    }
    return best;
}

}  // namespace

ClosestPoints distance(const ConvexSolid& a, const ConvexSolid& b) {
    if (const std::optional<ConvexSolid> common = intersection(a, b)) {
        const Vec3 middle = common->centroid();
        return {0.0, middle, middle};
    }
    ClosestPoints best = cornerToFace(a, b);
    const ClosestPoints other = cornerToFace(b, a);
    if (other.distance < best.distance) {
        best = {other.distance, other.onSecond, other.onFirst};
    }
    const std::vector<Segment> edgesOfB = edgesOf(b);
    for (const Segment& s : edgesOf(a)) {
        for (const Segment& t : edgesOfB) {
            const ClosestPoints pair = between(s, t);
            if (pair.distance < best.distance) {
                best = pair;
            }
        }
    }
    if (best.distance <= kPlaneTolerance) {
        return {0.0, best.onFirst, best.onFirst};
    }
    return best;
}

}  // namespace shoulderline
