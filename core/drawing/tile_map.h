#pragma once

#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"
#include "core/drawing/tiles.h"
#include "core/geometry/rect.h"

namespace shoulderline {

// The drawing's outlines small in the middle of `room`, with the cuts and the names of the tiles.
[[nodiscard]] std::vector<Op> tileMap(const TileGrid& grid,
                                      const Sheet& drawing,
                                      const Rect& room,
                                      const TextMetrics&);

}  // namespace shoulderline
