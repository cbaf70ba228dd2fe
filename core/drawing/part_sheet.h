#pragma once

#include "core/drawing/sheets.h"

namespace shoulderline {

// partSheet() with the scale it came out at, and whether the drawing fits in its space there.
struct ScaledSheet {
    Sheet sheet;
    double scale = 1.0;
    bool fits = true;
};
[[nodiscard]] ScaledSheet scaledPartSheet(
    const Piece&, const ResolvedPiece&, const PartKind&, const SheetFrame&, const TextMetrics&);

}  // namespace shoulderline
