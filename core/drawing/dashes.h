#pragma once

#include <vector>

#include "core/drawing/line_style.h"

namespace shoulderline {

// A stretch of a line that is drawn, by its distances from the line's start; millimetres.
struct DrawnStretch {
    double from = 0.0;
    double to = 0.0;
    friend bool operator==(const DrawnStretch&, const DrawnStretch&) = default;
};

// The stretches of a line `length` long (>= 0) that `style` draws, ascending. A broken line begins
// and ends with a dash: the dashes are stretched to fit, gaps and dots keep their lengths; one too
// short for its pattern is drawn whole (ISO 128-21), but a dashed one of 5 widths or more as two
// short dashes, so that it still tells what is hidden, and a double-dotted one as two shorter
// dashes with two dots between, in proportion where it is shorter still, so that it does not pass
// for an edge. A continuous line is one stretch.
[[nodiscard]] std::vector<DrawnStretch> drawnStretches(double length, const LineStyle& style);

// How far two pieces of a curve may turn from one to the next; more is a corner.
inline constexpr double kMostTurn = 0.45;  // radians

// Each run of `points` between corners cut so along it, as pairs of ends. A closed curve that is
// dashed is divided evenly, into four dashes at least, so that a small hidden hole stays round.
struct DrawnLine {
    Vec2 a;
    Vec2 b;
    friend bool operator==(const DrawnLine&, const DrawnLine&) = default;
};
[[nodiscard]] std::vector<DrawnLine> drawnLines(const std::vector<Vec2>& points,
                                                const LineStyle& style);

}  // namespace shoulderline
