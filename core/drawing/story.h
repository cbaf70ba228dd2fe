#pragma once

#include "core/drawing/paper.h"

namespace shoulderline {

// A story stick at full size, to be cut out and glued to a stick: the part's ends and shoulders
// across the strip, and for every face that mortises enter a lane along it with the ends of its
// mortises, each with the name of what goes into it.
[[nodiscard]] Sheet storyStrip(const ResolvedPiece&, const PartKind&, const TextMetrics&);

// The strips of all kinds of parts, as many to a sheet as go on it, tiled like the parts.
[[nodiscard]] PrintJob storyJob(const Piece&,
                                const ResolvedPiece&,
                                const Paper&,
                                const TileOptions&,
                                const std::string& date,
                                const TextMetrics&);

}  // namespace shoulderline
