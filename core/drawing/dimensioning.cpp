#include "core/drawing/dimensioning.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/running_sizes.h"

namespace shoulderline {

namespace {

// Clear room along the line between a figure and any line or figure beside it, mm.
constexpr double kClearOfSizes = 1.0;
constexpr int kNotPlaced = std::numeric_limits<int>::max();

struct Interval {
    double low = 0.0;
    double high = 0.0;
};

bool overlaps(const Interval& a, const Interval& b, double clear) {
    return a.low < b.high + clear && b.low < a.high + clear;
}

// Where a size stands: on which row, and what it takes up there.
struct Spot {
    int row = 0;
    Interval line;  // the dimension line, with what runs past the arrows
    Interval figure;
    bool arrowsOutside = false;
};

struct Extension {
    double at = 0.0;
    int row = kNotPlaced;  // of the size it belongs to: it runs out to there
    std::size_t size = 0;
};

class Placer {
  public:
    Placer(const std::vector<SizeToPlace>& sizes,
           DimensionSide side,
           const DimensionStyle& style,
           const TextMetrics& metrics,
           const FigureRoom& room,
           const std::vector<double>& crossedBy)
        : sizes_(sizes),
          style_(style),
          metrics_(metrics),
          room_(room),
          figuresInwards_(side == DimensionSide::Below || side == DimensionSide::RightOf) {
        for (std::size_t i = 0; i < sizes.size(); ++i) {
            extensions_.push_back({sizes[i].from, kNotPlaced, i});
            extensions_.push_back({sizes[i].to, kNotPlaced, i});
        }
        for (const double at : crossedBy) {
            extensions_.push_back({at, kNotPlaced, sizes.size()});
        }
    }

    std::vector<Spot> place() {
        for (std::size_t i = 0; i < sizes_.size(); ++i) {
            spots_.push_back(spotFor(i));
            extensions_[2 * i].row = extensions_[2 * i + 1].row = spots_.back().row;
        }
        return std::move(spots_);
    }

  private:
    [[nodiscard]] Spot spotFor(std::size_t i) const {
        int lowest = 0;
        for (std::size_t k = 0; k < i; ++k) {
            if (sizes_[k].rank < sizes_[i].rank) {
                lowest = std::max(lowest, spots_[k].row + 1);
            }
        }
        int outermost = lowest;
        for (const Spot& spot : spots_) {
            outermost = std::max(outermost, spot.row);
        }
        for (int row = lowest; row <= outermost + 1; ++row) {
            if (const std::optional<Spot> spot = firstFree(candidates(row, i), i)) {
                return *spot;
            }
        }
        // Too many extension lines about: its own line runs on across them to where there is room.
        // On a row that nothing uses yet there is, past the outermost of them at the latest.
        for (int row = lowest;; ++row) {
            if (const std::optional<Spot> spot = firstFree(farCandidates(row, i), i)) {
                return *spot;
            }
        }
    }

    [[nodiscard]] std::optional<Spot> firstFree(const std::vector<Spot>& spots,
                                                std::size_t i) const {
        const auto spot =
            std::find_if(spots.begin(), spots.end(), [&](const Spot& s) { return isFree(s, i); });
        return spot == spots.end() ? std::nullopt : std::optional(*spot);
    }

    [[nodiscard]] std::vector<Spot> candidates(int row, std::size_t i) const {
        const SizeToPlace& size = sizes_[i];
        const double h = style_.height;
        const double width = metrics_.width(size.text, h, false);
        const double span = size.to - size.from;
        std::vector<Spot> spots;
        const bool roomForBoth = span >= width + 2.0 * h + 2.0 * kClearOfSizes;
        const double lead = roomForBoth ? h + kClearOfSizes : kClearOfSizes;
        const bool roomForFigure = span >= width + 2.0 * kClearOfSizes;
        if (roomForFigure) {
            const Interval line = roomForBoth ? Interval{size.from, size.to}
                                              : Interval{size.from - 2.0 * h, size.to + 2.0 * h};
            for (const double middle :
                 middlesWithin({size.from + lead, size.to - lead}, width, row, i)) {
                spots.push_back(
                    {row, line, {middle - width / 2.0, middle + width / 2.0}, !roomForBoth});
            }
        }
        const bool arrowsOutside = span < 3.0 * h;
        const double tail = arrowsOutside ? 2.0 * h : 0.0;
        const double beside = tail + kClearOfSizes;
        const Interval right{size.to + beside, size.to + beside + width};
        const Interval left{size.from - beside - width, size.from - beside};
        spots.push_back({row, {size.from - tail, right.high}, right, arrowsOutside});
        spots.push_back({row, {left.low, size.to + tail}, left, arrowsOutside});
        return spots;
    }

    // Middles for a figure `width` wide within `room`, clear of the extension lines that cross the
    // row: the one nearest to the middle of the room first.
    [[nodiscard]] std::vector<double> middlesWithin(const Interval& room,
                                                    double width,
                                                    int row,
                                                    std::size_t i) const {
        std::vector<double> cuts{room.low - kClearOfSizes, room.high + kClearOfSizes};
        for (const Extension& extension : extensions_) {
            if (crosses(extension, row, i) && extension.at > room.low && extension.at < room.high) {
                cuts.push_back(extension.at);
            }
        }
        std::sort(cuts.begin(), cuts.end());
        const double wanted = (room.low + room.high) / 2.0;
        std::vector<double> middles;
        for (std::size_t k = 0; k + 1 < cuts.size(); ++k) {
            const double low = cuts[k] + kClearOfSizes + width / 2.0;
            const double high = cuts[k + 1] - kClearOfSizes - width / 2.0;
            if (low <= high) {
                middles.push_back(std::clamp(wanted, low, high));
            }
        }
        std::sort(middles.begin(), middles.end(), [&](double a, double b) {
            return std::abs(a - wanted) < std::abs(b - wanted);
        });
        return middles;
    }

    // Whether an extension line passes through where figures of `row` stand.
    [[nodiscard]] bool crosses(const Extension& extension, int row, std::size_t i) const {
        if (extension.size == i) {
            return false;
        }
        return extension.row == kNotPlaced || extension.row >= (figuresInwards_ ? row - 1 : row);
    }

    [[nodiscard]] bool isFree(const Spot& spot, std::size_t i) const {
        const SizeToPlace& size = sizes_[i];
        if (spot.figure.low < room_.low || spot.figure.high > room_.high) {
            return false;
        }
        for (const Extension& extension : extensions_) {
            if (crosses(extension, spot.row, i) &&
                overlaps(spot.figure, {extension.at, extension.at}, kClearOfSizes * 0.99)) {
                return false;
            }
        }
        // Its own extension lines, where the figure stands beside them.
        for (const double at : {size.from, size.to}) {
            if (overlaps(spot.figure, {at, at}, kClearOfSizes * 0.49)) {
                return false;
            }
        }
        for (std::size_t k = 0; k < spots_.size(); ++k) {
            const Spot& other = spots_[k];
            if (other.row == spot.row &&
                (overlaps(spot.line, other.line, -1e-6) ||
                 overlaps(spot.figure, other.figure, 2.0 * kClearOfSizes))) {
                return false;
            }
            const bool reaches =
                figuresInwards_ ? other.row <= spot.row + 1 : other.row <= spot.row;
            for (const double at : {size.from, size.to}) {
                if (reaches && overlaps(other.figure, {at, at}, kClearOfSizes * 0.49)) {
                    return false;
                }
            }
        }
        return true;
    }

    // The figure past one extension line after another to either side, the nearest first.
    [[nodiscard]] std::vector<Spot> farCandidates(int row, std::size_t i) const {
        const SizeToPlace& size = sizes_[i];
        const double width = metrics_.width(size.text, style_.height, false);
        const bool arrowsOutside = size.to - size.from < 3.0 * style_.height;
        const double tail = arrowsOutside ? 2.0 * style_.height : 0.0;
        std::vector<Spot> spots;
        for (const Extension& extension : extensions_) {
            if (extension.at >= size.to) {
                const double low = std::max(extension.at, size.to + tail) + kClearOfSizes;
                spots.push_back(
                    {row, {size.from - tail, low + width}, {low, low + width}, arrowsOutside});
            }
            if (extension.at <= size.from) {
                const double high = std::min(extension.at, size.from - tail) - kClearOfSizes;
                spots.push_back(
                    {row, {high - width, size.to + tail}, {high - width, high}, arrowsOutside});
            }
        }
        std::stable_sort(spots.begin(), spots.end(), [](const Spot& a, const Spot& b) {
            return a.line.high - a.line.low < b.line.high - b.line.low;
        });
        return spots;
    }

    const std::vector<SizeToPlace>& sizes_;
    const DimensionStyle& style_;
    const TextMetrics& metrics_;
    const FigureRoom& room_;
    const bool figuresInwards_;
    std::vector<Extension> extensions_;
    std::vector<Spot> spots_;
};

// From (along, out) beside the view to the sheet.
Vec2 onSheet(double along, double out, DimensionSide side, double edge) {
    switch (side) {
        case DimensionSide::Above:
            return {along, edge - out};
        case DimensionSide::Below:
            return {along, edge + out};
        case DimensionSide::LeftOf:
            return {edge - out, along};
        case DimensionSide::RightOf:
            return {edge + out, along};
    }
    return {};
}

DimensionOp opFor(const SizeToPlace& size,
                  const Spot& spot,
                  DimensionSide side,
                  double edge,
                  double out,
                  const DimensionStyle& style,
                  const TextMetrics& metrics) {
    const bool isTurned = side == DimensionSide::LeftOf || side == DimensionSide::RightOf;
    DimensionOp op;
    op.from = onSheet(size.from, -size.fromDepth, side, edge);
    op.to = onSheet(size.to, -size.toDepth, side, edge);
    op.lineFrom = onSheet(size.from, out, side, edge);
    op.lineTo = onSheet(size.to, out, side, edge);
    op.textAt = onSheet((spot.figure.low + spot.figure.high) / 2.0, out, side, edge);
    // The figure stands clear over its line, its fraction's denominator too.
    const double lift =
        kFigureClearance + layOutText(size.text, style.height, false, metrics).descent;
    op.textAt = op.textAt - (isTurned ? Vec2{lift, 0.0} : Vec2{0.0, lift});
    op.text = size.text;
    op.height = style.height;
    op.isTurned = isTurned;
    op.arrowsOutside = spot.arrowsOutside;
    op.value = size.value;
    op.of = size.of;
    return op;
}

// Sizes in rows, the first `firstOut` from the edge; `crossedBy` are places along it that lines of
// dimensions farther out pass through.
struct Rows {
    std::vector<Op> ops;
    int count = 0;
};
struct Beside {
    DimensionSide side;
    double edge;
    const DimensionStyle& style;
    const TextMetrics& metrics;
    const FigureRoom& room;
};
Rows inRows(const std::vector<SizeToPlace>& sizes,
            const Beside& beside,
            double firstOut,
            const std::vector<double>& crossedBy) {
    const std::vector<Spot> spots =
        Placer(sizes, beside.side, beside.style, beside.metrics, beside.room, crossedBy).place();
    Rows rows;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        const double out = firstOut + beside.style.next * spots[i].row;
        rows.count = std::max(rows.count, spots[i].row + 1);
        rows.ops.push_back(BeginGroup{sizes[i].subject, sizes[i].of});
        rows.ops.push_back(
            opFor(sizes[i], spots[i], beside.side, beside.edge, out, beside.style, beside.metrics));
        rows.ops.push_back(EndGroup{});
    }
    return rows;
}

void addEnds(const std::vector<SizeToPlace>& sizes, std::vector<double>& places) {
    for (const SizeToPlace& size : sizes) {
        places.push_back(size.from);
        places.push_back(size.to);
    }
}

// Running dimensions on a line of their own, between the short sizes and those over all.
std::optional<std::vector<Op>> withRunning(const std::vector<SizeToPlace>& sizes,
                                           const Beside& beside) {
    std::vector<SizeToPlace> inner;
    std::vector<SizeToPlace> running;
    std::vector<SizeToPlace> outer;
    for (const SizeToPlace& size : sizes) {
        (size.mayRun ? running : size.rank > 0 ? outer : inner).push_back(size);
    }
    std::vector<double> outerEnds;
    addEnds(outer, outerEnds);
    std::vector<double> crossing = outerEnds;
    addEnds(running, crossing);
    Rows rows = inRows(inner, beside, beside.style.first, crossing);
    // The circle at the origin reaches back towards the figures before it.
    const double past = rows.count > 0 ? kOriginRadius : 0.0;
    const double out = beside.style.first + beside.style.next * rows.count + past;
    const std::optional<RunningRow> row =
        placeRunning(running, outerEnds, beside.edge, out, beside.style, beside.metrics);
    if (!row) {
        return std::nullopt;
    }
    Rows over = inRows(outer, beside, row->reach + 1.0, {});
    rows.ops.insert(rows.ops.end(), row->ops.begin(), row->ops.end());
    rows.ops.insert(rows.ops.end(), over.ops.begin(), over.ops.end());
    return std::move(rows.ops);
}

}  // namespace

std::vector<Op> placeSizes(std::vector<SizeToPlace> sizes,
                           DimensionSide side,
                           double edge,
                           const DimensionStyle& style,
                           const TextMetrics& metrics,
                           const FigureRoom& room) {
    constexpr int kFewestRunning = 4;
    std::erase_if(sizes, [](const SizeToPlace& size) { return size.to - size.from < 0.001; });
    std::stable_sort(sizes.begin(), sizes.end(), [](const SizeToPlace& a, const SizeToPlace& b) {
        const auto microns = [](const SizeToPlace& size) {
            return std::llround((size.to - size.from) * 1000.0);
        };
        return a.rank != b.rank ? a.rank < b.rank : microns(a) < microns(b);
    });
    const Beside beside{side, edge, style, metrics, room};
    const auto runs = std::count_if(
        sizes.begin(), sizes.end(), [](const SizeToPlace& size) { return size.mayRun; });
    if (side == DimensionSide::Above && runs >= kFewestRunning) {
        if (std::optional<std::vector<Op>> ops = withRunning(sizes, beside)) {
            return std::move(*ops);
        }
    }
    return inRows(sizes, beside, style.first, {}).ops;
}

}  // namespace shoulderline
