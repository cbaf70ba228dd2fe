#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"
#include "core/geometry/view.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// What a part covers in a view, millimetres of the view's plane, y UP.
struct SwungOutline {
    std::size_t part = 0;  // index in ResolvedPiece::parts
    std::vector<Vec2> ring;
};

// A back that swings at one of its stations, as an elevation from its side shows it: what leans and
// the bar, where the piece does not stand so.
struct SwungView {
    std::string name;  // of the station
    Angle lean;
    Vec2 top;  // highest point of what leans
    std::vector<SwungOutline> outlines;
};

// All stations of the backs that swing, in order; none in a view that does not look along their
// pivots.
[[nodiscard]] std::vector<SwungView> swungViews(const ResolvedPiece& resolved, const View& view);

// The outlines at `scale`, the origin of the view at (0, 0) and y turned DOWN, each in a group of
// its part. Lines as for extreme positions (ISO 128-2, 05.1).
[[nodiscard]] std::vector<Op> swungOps(const ResolvedPiece& resolved,
                                       const std::vector<SwungView>& stations,
                                       double scale);

// "reading 18°" upright above each station's top, parted where tops are close, with lines to them.
[[nodiscard]] std::vector<Op> stationLabels(const std::vector<SwungView>& stations,
                                            double scale,
                                            const TextMetrics& metrics);

}  // namespace shoulderline
