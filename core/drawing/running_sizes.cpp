#include "core/drawing/running_sizes.h"

#include <algorithm>
#include <limits>

#include "core/drawing/dimension_parts.h"

namespace shoulderline {

namespace {

constexpr double kStepAside = 3.0;       // mm out in which an extension line steps aside
constexpr double kToFigure = 0.8;        // from its foot to the figure
constexpr double kBetweenRunning = 1.6;  // clear between figures side by side
constexpr double kFromLine = 1.0;        // and between a figure and a line that passes
constexpr double kSamePlace = 0.001;     // mm

struct Figure {
    double wanted = 0.0;  // middle of its breadth along the view
    double half = 0.0;    // of its breadth
    double at = 0.0;
};

// A stretch between two lines that pass, and the figures in it.
struct Stretch {
    double low = -std::numeric_limits<double>::infinity();
    double high = std::numeric_limits<double>::infinity();

    [[nodiscard]] double room() const { return high - low - 2.0 * kFromLine; }
};

std::vector<Stretch> stretchesBetween(std::vector<double> lines) {
    std::sort(lines.begin(), lines.end());
    std::vector<Stretch> stretches(1);
    for (const double line : lines) {
        stretches.back().high = line;
        stretches.push_back({line, std::numeric_limits<double>::infinity()});
    }
    return stretches;
}

// Figures first to last (one past the end) pushed apart in equal shares about where they want to
// be, and kept within the stretch, which has room for them.
void spread(std::vector<Figure>& figures, std::size_t first, std::size_t last, const Stretch& in) {
    struct Run {
        std::size_t first;
        double start;  // low end of its first figure
        double length;
        double wish;  // sum over its figures of where each wants the run to start
        int count;
    };
    const auto clamped = [&](double start, double length) {
        return std::min(std::max(start, in.low + kFromLine), in.high - kFromLine - length);
    };
    std::vector<Run> runs;
    for (std::size_t i = first; i < last; ++i) {
        const double breadth = 2.0 * figures[i].half;
        const double start = figures[i].wanted - figures[i].half;
        runs.push_back({i, clamped(start, breadth), breadth, start, 1});
        while (runs.size() > 1) {
            const Run& b = runs.back();
            Run& a = runs[runs.size() - 2];
            const double shift = a.length + kBetweenRunning;
            if (a.start + shift <= b.start) {
                break;
            }
            a.wish += b.wish - shift * b.count;
            a.count += b.count;
            a.length = shift + b.length;
            a.start = clamped(a.wish / a.count, a.length);
            runs.pop_back();
        }
    }
    for (std::size_t r = 0; r < runs.size(); ++r) {
        double low = runs[r].start;
        const std::size_t end = r + 1 < runs.size() ? runs[r + 1].first : last;
        for (std::size_t i = runs[r].first; i < end; ++i) {
            figures[i].at = low + figures[i].half;
            low += 2.0 * figures[i].half + kBetweenRunning;
        }
    }
}

// Each figure in the stretch that it wants to stand in, or where that is full in the next.
bool setOut(std::vector<Figure>& figures, const std::vector<Stretch>& stretches) {
    std::size_t next = 0;
    for (std::size_t s = 0; s < stretches.size(); ++s) {
        const Stretch& stretch = stretches[s];
        const std::size_t first = next;
        double taken = 0.0;
        while (next < figures.size() &&
               (s + 1 == stretches.size() || figures[next].wanted < stretch.high - kSamePlace)) {
            const double breadth =
                2.0 * figures[next].half + (next > first ? kBetweenRunning : 0.0);
            if (taken + breadth > stretch.room()) {
                break;
            }
            taken += breadth;
            ++next;
        }
        spread(figures, first, next, stretch);
    }
    return next == figures.size();
}

}  // namespace

std::optional<RunningRow> placeRunning(std::vector<SizeToPlace> sizes,
                                       std::vector<double> lines,
                                       double edge,
                                       double out,
                                       const DimensionStyle& style,
                                       const TextMetrics& metrics) {
    std::stable_sort(sizes.begin(), sizes.end(), [](const SizeToPlace& a, const SizeToPlace& b) {
        return a.to < b.to;
    });
    lines.push_back(sizes.front().from);
    std::vector<Figure> figures;
    std::vector<TextLayout> layouts;
    double longest = 0.0;
    for (const SizeToPlace& size : sizes) {
        layouts.push_back(layOutText(size.text, style.height, false, metrics));
        figures.push_back({size.to, (layouts.back().ascent + layouts.back().descent) / 2.0, 0.0});
        longest = std::max(longest, layouts.back().width);
    }
    if (!setOut(figures, stretchesBetween(lines))) {
        return std::nullopt;
    }
    const double foot = out + kRunningOverrun + kStepAside;
    RunningRow row;
    row.reach = foot + kToFigure + longest;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        const SizeToPlace& size = sizes[i];
        const TextLayout& layout = layouts[i];
        DimensionOp op;
        op.from = {size.from, edge + size.fromDepth};
        op.to = {size.to, edge + size.toDepth};
        op.lineFrom = {size.from, edge - out};
        op.lineTo = {size.to, edge - out};
        op.textAt = {figures[i].at + (layout.ascent - layout.descent) / 2.0,
                     edge - foot - kToFigure - layout.width / 2.0};
        op.text = size.text;
        op.height = style.height;
        op.isTurned = true;
        op.value = size.value;
        op.of = size.of;
        // An arrow needs its length clear of the place before and of the circle at the origin.
        const double before = i > 0 ? sizes[i - 1].to : size.from + kOriginRadius;
        op.running = Running{{figures[i].at, edge - foot},
                             i + 1 == sizes.size(),
                             size.to - before < style.height + kOriginRadius};
        row.ops.emplace_back(BeginGroup{size.subject, size.of});
        row.ops.emplace_back(std::move(op));
        row.ops.emplace_back(EndGroup{});
    }
    return row;
}

}  // namespace shoulderline
