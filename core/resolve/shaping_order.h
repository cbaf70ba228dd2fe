#pragma once

#include <cstddef>

#include "core/resolve/resolved_piece.h"
#include "core/resolve/set_up.h"

namespace shoulderline {

// Which joints are cut in the square blank of a part that is sawn to a taper or a curve, and which
// once it is shaped. Common practice: in the blank, since the fence needs flat faces.

// Whether an outline takes wood from the part's blank, by saw or plane.
[[nodiscard]] bool isSawnToShape(const ResolvedPart& part);
// Whether that face of the blank is one that an outline takes wood from.
[[nodiscard]] bool isSawnAway(const ResolvedPart& part, Face face);
// Whether what the joint takes from that part is cut in its square blank: not where the shaping
// takes more off over the mortise than it is deep, or a bit would not reach.
[[nodiscard]] bool isCutBeforeShaping(const ResolvedPiece& resolved,
                                      std::size_t joint,
                                      std::size_t part);

// Whether the stop for a mortise in that part is set along its tool, which leans with it, and not
// square to the face: not where wood is sawn off it
// only later.
[[nodiscard]] bool isStoppedAlongTool(const ResolvedPiece& resolved,
                                      std::size_t part,
                                      const MortiseSolid& mortise);

// Marks a set-up in a shaped part as one that comes after the shaping, with the straight stretch of
// the outline that the mouth lies on.
void layOnShape(SetUp& setUp, const ResolvedPart& part, const MortiseSolid& mortise);

}  // namespace shoulderline
