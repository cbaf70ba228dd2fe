#pragma once

#include <string>

#include "core/piece/piece.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Every measure, part, screw and joint with all sizes and reasons as one JSON object, described by
// resources/schema/sizes.schema.json. Lengths in millimetres rounded to 1e-6, stable names and
// order, final newline. A part's origin is the corner of its finished size, tenons included, where
// start end, face edge and face side meet; its size along `axes` from there is length, width and
// thickness. A mortise's from_end is measured from the start end of its part's body.
[[nodiscard]] std::string sizesJson(const Piece& piece, const ResolvedPiece& resolved);

}  // namespace shoulderline
