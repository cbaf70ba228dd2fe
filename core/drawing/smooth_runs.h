#pragma once

#include <vector>

#include "core/drawing/sheet.h"

namespace shoulderline {

// Hidden strokes of one piece each that run on smoothly, as the facets of a curve do, made into one
// stroke within each group, so that its dashes run on along the curve: a facet by itself is too
// short for any and would be drawn whole.
[[nodiscard]] std::vector<Op> withHiddenRunsJoined(std::vector<Op> ops);

}  // namespace shoulderline
