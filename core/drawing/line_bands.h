#pragma once

#include <vector>

#include "core/drawing/part_views.h"

namespace shoulderline {

// The lines without those hidden ones that, drawn at `scale`, would fill up to a band with a line
// beside them and tell nothing that it does not: the far lines of shoulders that are a little out
// of square. Of a visible and a hidden one the visible stays, of two hidden ones the longer. Lines
// of mortises and cuts stay: the room between them is what they tell.
[[nodiscard]] std::vector<PartLine> withoutBands(const std::vector<PartLine>& lines, double scale);

}  // namespace shoulderline
