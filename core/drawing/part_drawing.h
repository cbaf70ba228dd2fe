#pragma once

#include "core/drawing/part_layout.h"
#include "core/drawing/part_style.h"
#include "core/drawing/part_views.h"
#include "core/drawing/sheets.h"

namespace shoulderline {

// A part's drawing in a style of one's own, its views, ends and sections each drawn by itself: they
// can be set out on paper in one way after another. `lines` are those of the first part of the
// kind: for one drawing after another they are worked out once.
[[nodiscard]] PartDrawingBlocks drawBlocks(const Piece&,
                                           const ResolvedPiece&,
                                           const PartKind&,
                                           const PartStyle&,
                                           PartLines& lines,
                                           const TextMetrics&);

// These in projection on a sheet that is as large as they need.
[[nodiscard]] Sheet setInProjection(
    PartDrawingBlocks blocks, const Piece&, const PartKind&, const PartStyle&, const TextMetrics&);

// The same set wherever they find room, on as many sheets of `room` as they need. Empty where one
// of them alone is larger than that.
[[nodiscard]] std::vector<Sheet> setOnSheets(PartDrawingBlocks blocks,
                                             const Piece&,
                                             const PartKind&,
                                             const PartStyle&,
                                             Vec2 room,
                                             const TextMetrics&);

}  // namespace shoulderline
