#pragma once

#include <string>

#include "core/piece/piece.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Every measure, part, screw and joint with all sizes and reasons, as sizesJson() has them, as text
// to read: a block for each kind of thing, lengths in the piece's style.
[[nodiscard]] std::string sizesText(const Piece& piece, const ResolvedPiece& resolved);

}  // namespace shoulderline
