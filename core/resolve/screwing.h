#pragma once

#include <string>

#include "core/joint/joint_sizing.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Bores both parts of a joint that is screwed and gives it its sizes; what cannot be screwed comes
// back as one sentence, empty where all is well. `joint` is in ResolvedPiece::joints already.
[[nodiscard]] std::string placeScrews(std::size_t joint,
                                      const SizingGuide& guide,
                                      const StatedSizes& stated,
                                      ResolvedPiece& resolved);

}  // namespace shoulderline
