#pragma once

#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// The cuts of a part as they are made: grooves of one section that run into one another along the
// part, as those of two panels past the rail between them, are one groove, named for all. The
// others stay as they are, in their order.
[[nodiscard]] std::vector<ResolvedCut> groovesJoined(const std::vector<ResolvedCut>& cuts);

}  // namespace shoulderline
