#pragma once

#include "core/drawing/free_space.h"
#include "core/drawing/part_sections.h"
#include "core/drawing/part_style.h"

namespace shoulderline {

// The section cut, hatched and dimensioned, seen from the far end, its body's top left corner at
// (0, 0), `scale` of drawing to wood.
[[nodiscard]] std::vector<Op> sectionOps(const PartSection& section,
                                         const Piece& piece,
                                         const ResolvedPiece& resolved,
                                         std::size_t part,
                                         double scale,
                                         const PartStyle& style,
                                         const TextMetrics& metrics);

// placeSizes(), farther out where figures or lines would run into those that are `placed` round a
// corner of the same view.
[[nodiscard]] std::vector<Op> placeClearOf(const std::vector<Op>& placed,
                                           std::vector<SizeToPlace> sizes,
                                           DimensionSide side,
                                           double edge,
                                           const DimensionStyle& style,
                                           const TextMetrics& metrics,
                                           const FigureRoom& room);

// Takes from the view of an end, whose tenons are shown cut, what lies on their own ends beyond the
// cut: the edges of eased and pointed ones; one that stands askew is shown by its foot. `ops` at
// `scale`, from the view's corner.
void removeCutOffEnds(const ResolvedPart& part,
                      const PartView& view,
                      double scale,
                      std::vector<Op>& ops);

// Hatching over the tenons of an end and what else is cut with them, as the end's view shows them.
[[nodiscard]] std::vector<Op> tenonHatching(const ResolvedPart& part,
                                            const PartView& view,
                                            double scale);

}  // namespace shoulderline
