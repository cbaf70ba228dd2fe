#pragma once

#include "core/drawing/free_space.h"
#include "core/drawing/paper.h"
#include "core/drawing/tiles.h"

namespace shoulderline {

// What tells how the tile is joined to its neighbours, in the coordinates of `page`, whose origin
// and printable area are set. Where the next tile follows to the right or under it, a chain line to
// cut along; where it goes on from one at its left or over it, a fine line that the cut edge of
// that one is glued to. Both lines lie in the middle of the overlap, at the same place of the
// drawing, and both tiles bear the same crosses in circles, half of each on the piece that is cut.
// `space` is what the drawing leaves free, in its own coordinates.
[[nodiscard]] std::vector<Op> seamsOf(const TileGrid& grid,
                                      int row,
                                      int column,
                                      const Page& page,
                                      const FreeSpace& space,
                                      const TextMetrics& metrics);

}  // namespace shoulderline
