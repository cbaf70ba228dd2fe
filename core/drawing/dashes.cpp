#include "core/drawing/dashes.h"

#include <cmath>

namespace shoulderline {

namespace {

// Hidden edges under the length of ISO 128-21 (27 widths) would pass for visible ones if drawn
// whole: down to three elements of three widths they get two short dashes.
constexpr double kShortestDashed = 9.0;

struct Pattern {
    double dash = 0.0;
    int dots = 0;
};

Pattern patternOf(LineType type) {
    switch (type) {
        case LineType::Dashed:
            return {kDashWidths, 0};
        case LineType::LongDashedDotted:
            return {kLongDashWidths, 1};
        case LineType::LongDashedDoubleDotted:
            return {kLongDashWidths, 2};
        case LineType::Continuous:
            break;
    }
    return {};
}

}  // namespace

std::vector<DrawnStretch> drawnStretches(double length, const LineStyle& style) {
    const Pattern pattern = patternOf(style.type);
    const double d = style.width;
    const double between = d * (kGapWidths * (pattern.dots + 1) + kDotWidths * pattern.dots);
    const double shortest = 2.0 * pattern.dash * d + between;
    if (style.type == LineType::Dashed && length < shortest && length >= kShortestDashed * d) {
        const double half = (length - between) / 2.0;
        return {{0.0, half}, {half + between, length}};
    }
    if (style.type == LineType::Continuous || d <= 0.0 || length < shortest) {
        return {{0.0, length}};
    }
    const double period = pattern.dash * d + between;
    const double periods = std::max(1.0, std::round((length - pattern.dash * d) / period));
    const double dash = (length - between * periods) / (periods + 1.0);

    std::vector<DrawnStretch> stretches;
    double at = 0.0;
    for (int i = 0; i <= static_cast<int>(periods); ++i) {
        stretches.push_back({at, at + dash});
        at += dash;
        for (int dot = 0; dot < pattern.dots; ++dot) {
            at += kGapWidths * d;
            if (i < static_cast<int>(periods)) {
                stretches.push_back({at, at + kDotWidths * d});
            }
            at += kDotWidths * d;
        }
        at += kGapWidths * d;
    }
    stretches.back().to = length;
    return stretches;
}

std::vector<DrawnLine> drawnLines(const std::vector<Vec2>& points, const LineStyle& style) {
    std::vector<DrawnLine> lines;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const Vec2 run = points[i + 1] - points[i];
        const double length = norm(run);
        if (length <= 0.0) {
            continue;
        }
        for (const DrawnStretch& stretch : drawnStretches(length, style)) {
            lines.push_back({points[i] + run * (stretch.from / length),
                             points[i] + run * (stretch.to / length)});
        }
    }
    return lines;
}

}  // namespace shoulderline
