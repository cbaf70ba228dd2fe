#pragma once

#include "core/geometry/outline.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// The outline that a face of a part lies in as the maker shaped it: its face outline for the face
// and back side, its edge outline for the two edges. None for a plain rectangle, and for an end.
[[nodiscard]] const Outline* shapedOutline(const ResolvedPart& part, Face face);

// How far a hole stands out of the outline of the face that it is bored in, at its mouth or where
// it ends: the most; 0 where it stays in the wood. Millimetres, within 0.0005 of the hole's radius.
[[nodiscard]] double outOfOutline(const Outline& outline,
                                  const ResolvedHole& hole,
                                  Face face,
                                  bool isThrough);

}  // namespace shoulderline
