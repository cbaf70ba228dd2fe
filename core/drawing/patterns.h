#pragma once

#include <string>
#include <vector>

#include "core/drawing/paper.h"

namespace shoulderline {

// The outline of a shaped part at full size, to be cut out or pricked through: the blank, the
// outline with its arcs, the middle lines, tenons, mortises and bored holes with their sizes and
// leans, and offsets from the blank's straight edge at even stations, for laying out by hand with a
// rule and a batten.
struct Pattern {
    std::string name;  // "arm, face side"
    Sheet drawing;
};

// One for each outline of the part that is not a plain rectangle: over its face side, and over its
// back edge; of a bent part also its form; none for a part that is a plain box.
[[nodiscard]] std::vector<Pattern> patternsOf(const Piece&,
                                              const ResolvedPiece&,
                                              const PartKind&,
                                              const TextMetrics&);

// The stations at which offsets are given along a part `length` long: at whole steps of an interval
// that makers use (1/2 in to 12 in, or 10 mm to 250 mm), at most 33, and at the far end;
// millimetres, ascending from 0.
[[nodiscard]] std::vector<double> stationsAlong(double length, Unit unit);

// The patterns of all shaped parts, tiled like the parts. No pages for a piece without any.
[[nodiscard]] PrintJob patternsJob(const Piece&,
                                   const ResolvedPiece&,
                                   const Paper&,
                                   const TileOptions&,
                                   const std::string& date,
                                   const TextMetrics&);

}  // namespace shoulderline
