#include "core/drawing/dashes.h"

#include <algorithm>
#include <cmath>

namespace shoulderline {

namespace {

// Broken lines under the lengths of ISO 128-21 would pass for edges in sight if drawn whole. Hidden
// ones (27 widths) get two short dashes, down to two dots with a gap between. Double-dotted ones
// (58 widths) get one period with shorter dashes, to the standard's short dash of 6 widths; under
// that, while its gaps are half of theirs, the same in proportion; then they are as hidden ones.
constexpr double kShortestDashed = 5.0;
constexpr double kShortDashWidths = 6.0;
constexpr double kLeastProportion = 0.5;

struct DashPattern {
    double dash = 0.0;
    int dots = 0;
};

DashPattern patternOf(LineType type) {
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

// A dash, a gap, two dots and a gap between, a gap and a dash: the whole of a double-dotted line
// that is too short for its pattern; empty for one that is shorter than half of that.
std::vector<DrawnStretch> shortDoubleDotted(double length, double d) {
    const double dots = (3.0 * kGapWidths + 2.0 * kDotWidths) * d;
    const double whole = 2.0 * kShortDashWidths * d + dots;
    const double proportion = std::min(1.0, length / whole);
    if (proportion < kLeastProportion) {
        return {};
    }
    const double dash = (length - proportion * dots) / 2.0;
    const double gap = proportion * kGapWidths * d;
    const double dot = proportion * kDotWidths * d;
    const double first = dash + gap;
    const double second = first + dot + gap;
    return {{0.0, dash}, {first, first + dot}, {second, second + dot}, {length - dash, length}};
}

}  // namespace

std::vector<DrawnStretch> drawnStretches(double length, const LineStyle& style) {
    const DashPattern pattern = patternOf(style.type);
    const double d = style.width;
    const double between = d * (kGapWidths * (pattern.dots + 1) + kDotWidths * pattern.dots);
    const double shortest = 2.0 * pattern.dash * d + between;
    const bool isDoubleDotted = style.type == LineType::LongDashedDoubleDotted;
    if (isDoubleDotted && length < shortest && d > 0.0) {
        if (std::vector<DrawnStretch> one = shortDoubleDotted(length, d); !one.empty()) {
            return one;
        }
    }
    if ((style.type == LineType::Dashed || isDoubleDotted) && length < shortest &&
        length >= kShortestDashed * d) {
        const double half = (length - kGapWidths * d) / 2.0;
        return {{0.0, half}, {length - half, length}};
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

namespace {

// The stretch of the run, whose pieces end at `ends` along it.
void addStretch(const std::vector<Vec2>& run,
                const std::vector<double>& ends,
                const DrawnStretch& stretch,
                std::vector<DrawnLine>& lines) {
    for (std::size_t i = 0; i + 1 < run.size(); ++i) {
        const double start = i == 0 ? 0.0 : ends[i - 1];
        const double from = std::max(stretch.from, start);
        const double to = std::min(stretch.to, ends[i]);
        if (to > from) {
            const Vec2 way = (run[i + 1] - run[i]) * (1.0 / (ends[i] - start));
            lines.push_back({run[i] + way * (from - start), run[i] + way * (to - start)});
        }
    }
}

// Whether the run comes back to where it began, without a corner there.
bool isClosedCurve(const std::vector<Vec2>& run) {
    constexpr double kSame = 1e-6;  // mm
    if (run.size() < 4 || norm(run.front() - run.back()) > kSame) {
        return false;
    }
    const Vec2 before = run.back() - run[run.size() - 2];
    const Vec2 on = run[1] - run.front();
    return std::abs(std::atan2(cross(before, on), dot(before, on))) <= kMostTurn;
}

// As many equal dashes as nearly have the length of the pattern's, each with half a gap before it
// and after.
std::vector<DrawnStretch> stretchesRound(double length, const LineStyle& style) {
    constexpr double kFewest = 4.0;
    constexpr double kMostGap = 0.35;  // of a dash with its gap
    const double gap = kGapWidths * style.width;
    const double period = kDashWidths * style.width + gap;
    const double count = std::max(kFewest, std::round(length / period));
    const double each = length / count;
    const double half = std::min(gap, kMostGap * each) / 2.0;
    std::vector<DrawnStretch> stretches;
    for (int i = 0; i < static_cast<int>(count); ++i) {
        stretches.push_back({each * i + half, each * (i + 1) - half});
    }
    return stretches;
}

void addRun(const std::vector<Vec2>& run, const LineStyle& style, std::vector<DrawnLine>& lines) {
    std::vector<double> ends;
    double length = 0.0;
    for (std::size_t i = 0; i + 1 < run.size(); ++i) {
        length += norm(run[i + 1] - run[i]);
        ends.push_back(length);
    }
    const bool isRound = style.type == LineType::Dashed && isClosedCurve(run);
    for (const DrawnStretch& stretch :
         isRound ? stretchesRound(length, style) : drawnStretches(length, style)) {
        addStretch(run, ends, stretch, lines);
    }
}

}  // namespace

std::vector<DrawnLine> drawnLines(const std::vector<Vec2>& points, const LineStyle& style) {
    std::vector<DrawnLine> lines;
    std::vector<Vec2> run;
    for (const Vec2 point : points) {
        if (!run.empty() && norm(point - run.back()) <= 0.0) {
            continue;
        }
        if (run.size() > 1) {
            const Vec2 before = run.back() - run[run.size() - 2];
            const Vec2 on = point - run.back();
            if (std::abs(std::atan2(cross(before, on), dot(before, on))) > kMostTurn) {
                addRun(run, style, lines);
                run = {run.back()};
            }
        }
        run.push_back(point);
    }
    if (run.size() > 1) {
        addRun(run, style, lines);
    }
    return lines;
}

}  // namespace shoulderline
