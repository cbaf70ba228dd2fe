#pragma once

#include <vector>

#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"
#include "core/piece/piece.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// The parts by kind as a table: number (1 for the first of partKinds()), name, quantity, length,
// width and thickness, stock; a part with horns is as long as with them, and says so. Under them,
// without numbers, what the joints take besides: loose tenons, wedges, pins, dowels, plugs. Its top
// left corner is at (0, 0).
[[nodiscard]] std::vector<Op> partsList(const Piece& piece,
                                        const ResolvedPiece& resolved,
                                        const TextMetrics& metrics);

}  // namespace shoulderline
