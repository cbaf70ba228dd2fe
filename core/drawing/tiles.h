#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/drawing/paper.h"

namespace shoulderline {

// Room that the furniture of a full-size page keeps for itself inside the margins: under the
// drawing for captions and the bar along the sheet, at its right for the bar up the sheet;
// millimetres.
inline constexpr double kCaptionStrip = 15.0;
inline constexpr double kBarStrip = 7.0;

// How much of the overlap is left on either side of a cut, at least, to be glued; millimetres.
inline constexpr double kGluedEdge = 4.0;

// How a drawing is laid over sheets of one paper, all the same way up.
struct TileGrid {
    Vec2 page;            // as it is held
    Rectangle printable;  // of every page, without the furniture's strips
    int columns = 1;
    int rows = 1;
    double overlap = 0.0;
    Vec2 start;  // point of the drawing at the first tile's printable.min
    // How far from the middle of the overlap each cut lies; none where all lie there.
    std::vector<double> columnShifts = {};
    std::vector<double> rowShifts = {};

    [[nodiscard]] int count() const { return columns * rows; }
    [[nodiscard]] Vec2 room() const { return printable.max - printable.min; }
    // Point of the drawing at the tile's printable.min.
    [[nodiscard]] Vec2 origin(int row, int column) const {
        const Vec2 step = room() - Vec2{overlap, overlap};
        return start + Vec2{step.x * column, step.y * row};
    }
    // The lines to cut along, in the drawing: between columns `i` and `i + 1`, and between rows.
    [[nodiscard]] double cutAfterColumn(int i) const {
        return origin(0, i + 1).x + overlap / 2.0 + shiftOf(columnShifts, i);
    }
    [[nodiscard]] double cutAfterRow(int i) const {
        return origin(i + 1, 0).y + overlap / 2.0 + shiftOf(rowShifts, i);
    }

  private:
    [[nodiscard]] static double shiftOf(const std::vector<double>& shifts, int i) {
        return shifts.empty() ? 0.0 : shifts[static_cast<std::size_t>(i)];
    }
};

// Places of the drawing that no cut should come near: shoulders, ends of mortises; and what none
// should run through, from where to where: lettering.
struct PlacesToKeepWhole {
    std::vector<double> x;
    std::vector<double> y;
    std::vector<std::pair<double, double>> acrossX = {};
    std::vector<std::pair<double, double>> acrossY = {};
};

// The grid that takes the fewest sheets, upright or lying, unless the options say which; lying
// where both take as many. Where it covers more than the drawing, it is shifted so that the cuts
// run through as little lettering as can be and keep the farthest from `places`, up to 10 mm; else
// the drawing is in its middle. Each cut moves within the overlap for the same reasons.
[[nodiscard]] TileGrid tileGrid(Vec2 drawing,
                                const Paper& paper,
                                const TileOptions& options,
                                const PlacesToKeepWhole& places = {});

// How wide a line of words may be so that there is room for it between two cuts wherever they lie
// within the overlap, on sheets held as the options have it, else upright; at least 40 mm.
[[nodiscard]] double widestBetweenCuts(const Paper& paper, const TileOptions& options);

// A drawing that goes on one sheet only when it lies along the diagonal: a long and narrow one.
struct Diagonal {
    Vec2 page;
    Rectangle printable;
    Vec2 origin;  // as of Page
    Angle turn;
};
[[nodiscard]] std::optional<Diagonal> diagonalOn(Vec2 drawing,
                                                 const Paper& paper,
                                                 const TileOptions& options);

// "B2": rows by letters (A to Z, then AA, AB), columns by numbers from 1.
[[nodiscard]] std::string tileName(int row, int column);

}  // namespace shoulderline
