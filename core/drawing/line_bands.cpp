#include "core/drawing/line_bands.h"

#include <algorithm>
#include <cmath>

namespace shoulderline {

namespace {

constexpr double kBand = 0.9;       // mm on the sheet, between the middles of two lines
constexpr double kParallel = 0.03;  // sine of the angle between them

// Whether all of `line` runs beside `other`, nearer than a band is wide.
bool runsBeside(const PartLine& line, const PartLine& other, double scale) {
    const Vec2 along = other.b - other.a;
    const double length = norm(along);
    const Vec2 way = line.b - line.a;
    if (length < 1e-9 || std::abs(cross(way, along)) > kParallel * norm(way) * length) {
        return false;
    }
    const auto isBeside = [&](Vec2 p) {
        const Vec2 from = p - other.a;
        const double at = dot(from, along) / length;
        const double off = std::abs(cross(from, along)) / length;
        const double band = kBand / scale;
        return off < band && at > -band && at < length + band;
    };
    return isBeside(line.a) && isBeside(line.b);
}

}  // namespace

std::vector<PartLine> withoutBands(const std::vector<PartLine>& lines, double scale) {
    const auto lengthOf = [](const PartLine& line) { return norm(line.b - line.a); };
    std::vector<PartLine> kept;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const PartLine& line = lines[i];
        const auto tellsAll = [&](std::size_t k) {
            const PartLine& other = lines[k];
            const bool isStronger = other.isVisible || lengthOf(other) > lengthOf(line) + 1e-9 ||
                                    (std::abs(lengthOf(other) - lengthOf(line)) <= 1e-9 && k < i);
            return k != i && other.isShoulder && isStronger && runsBeside(line, other, scale);
        };
        bool isTold = false;
        for (std::size_t k = 0; k < lines.size() && line.isShoulder && !line.isVisible; ++k) {
            isTold = isTold || tellsAll(k);
        }
        if (!isTold) {
            kept.push_back(line);
        }
    }
    return kept;
}

}  // namespace shoulderline
