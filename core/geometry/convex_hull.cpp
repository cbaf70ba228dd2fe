#include "core/geometry/convex_hull.h"

namespace shoulderline {

std::vector<Vec2> convexHull(std::vector<Vec2> points) {
    std::sort(points.begin(), points.end(), [](Vec2 a, Vec2 b) {
        return a.x != b.x ? a.x < b.x : a.y < b.y;
    });
    std::vector<Vec2> hull;
    for (int pass = 0; pass < 2; ++pass) {
        const std::size_t start = hull.size();
        for (const Vec2& p : points) {
            while (hull.size() >= start + 2 &&
                   cross(hull.back() - hull[hull.size() - 2], p - hull.back()) <= 0.0) {
                hull.pop_back();
            }
            hull.push_back(p);
        }
        hull.pop_back();
        std::reverse(points.begin(), points.end());
    }
    return hull;
}

bool hullContains(const std::vector<Vec2>& hull, Vec2 p, double margin) {
    for (std::size_t i = 0; i < hull.size(); ++i) {
        const Vec2 side = hull[(i + 1) % hull.size()] - hull[i];
        if (cross(side, p - hull[i]) < -margin * norm(side)) {
            return false;
        }
    }
    return !hull.empty();
}

}  // namespace shoulderline
