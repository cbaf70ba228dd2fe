#pragma once

#include <optional>
#include <vector>

#include "core/drawing/dimensioning.h"

namespace shoulderline {

// Sizes from one origin on one line over a view (running dimensions, ISO 129-1): a circle at the
// origin, an arrow at each place, the figure upright past the end of its extension line, stepped
// aside where neighbours or the lines at `lines` (places along the view) crowd it.
struct RunningRow {
    std::vector<Op> ops;
    double reach = 0.0;  // out from the edge, to the end of the longest figure; millimetres
};

// On a line `out` from the view's upper edge at y = `edge`. None where the figures find no room
// between the lines.
[[nodiscard]] std::optional<RunningRow> placeRunning(std::vector<SizeToPlace> sizes,
                                                     std::vector<double> lines,
                                                     double edge,
                                                     double out,
                                                     const DimensionStyle& style,
                                                     const TextMetrics& metrics);

}  // namespace shoulderline
