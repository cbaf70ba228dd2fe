#include "core/drawing/break_line.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace shoulderline {

Stroke breakLine(Vec2 a, Vec2 b) {
    constexpr double kOverrun = 3.0;
    const double length = norm(b - a);
    const Vec2 along = (b - a) * (length > 0.0 ? 1.0 / length : 0.0);
    const Vec2 across{-along.y, along.x};
    const Vec2 middle = (a + b) * 0.5;
    const double zig = std::min(2.5, length / 6.0);
    return {{a - along * kOverrun,
             middle - along * zig,
             middle - along * (zig * 0.5) + across * zig,
             middle + along * (zig * 0.5) - across * zig,
             middle + along * zig,
             b + along * kOverrun},
            LineRole::Dimension};
}

std::vector<Vec2> brokenOff(const std::vector<Vec2>& ring, const Stroke& line) {
    constexpr double kOnLine = 1e-6;
    const Vec2 start = line.points.front();
    const Vec2 way = line.points.back() - start;
    const double length = norm(way);
    const auto isOn = [&](Vec2 p) { return std::abs(cross(way, p - start)) < kOnLine * length; };
    const auto along = [&](Vec2 p) { return dot(p - start, way) / length; };
    std::vector<Vec2> broken;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Vec2 a = ring[i];
        const Vec2 b = ring[(i + 1) % ring.size()];
        broken.push_back(a);
        std::vector<Vec2> zigzag(std::next(line.points.begin()), std::prev(line.points.end()));
        if (along(b) < along(a)) {
            std::reverse(zigzag.begin(), zigzag.end());
        }
        const bool goesIn =
            isOn(a) && isOn(b) && std::all_of(zigzag.begin(), zigzag.end(), [&](Vec2 p) {
                return along(p) > std::min(along(a), along(b)) &&
                       along(p) < std::max(along(a), along(b));
            });
        if (goesIn) {
            broken.insert(broken.end(), zigzag.begin(), zigzag.end());
        }
    }
    return broken;
}

}  // namespace shoulderline
