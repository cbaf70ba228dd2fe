#pragma once

#include <optional>

#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Where hollows of two joints meet inside `part`: the part cut across there, hatched, its mortises
// dimensioned, a ring around the place. With one joint, where that one's mortise is. At the largest
// standard scale that keeps it about as large as a hand; an empty sheet where neither has a mortise
// in the part.
[[nodiscard]] Sheet meetingDrawing(const Piece& piece,
                                   const ResolvedPiece& resolved,
                                   std::size_t part,
                                   std::size_t joint,
                                   std::optional<std::size_t> otherJoint,
                                   const TextMetrics& metrics);

}  // namespace shoulderline
