#pragma once

#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Whether an end's line on this side of the part is out of square, so that the side must be shown.
[[nodiscard]] bool isAngledOn(const ResolvedPart& part, Face side);

// Side faces that a part's drawing shows, from the top of the sheet down, as the part is rolled
// about its length: the face side, and every other face that mortises enter or that cuts start on
// (through cuts are set out on the opposite face where that is shown anyway); of a bent part also
// the edge that shows its bow.
[[nodiscard]] std::vector<Face> facesToShow(const ResolvedPart& part, bool isThirdAngle);

// Whether the sizes of a cut stand on this face.
[[nodiscard]] bool isSetOutOn(const ResolvedPart& part, const ResolvedCut& cut, Face face);

// The face that a part's sheet and its set-ups tell a cut from: that which it enters, or for what
// goes straight through the one behind, as above.
[[nodiscard]] Face setOutFace(const ResolvedPart& part, const ResolvedCut& cut);

}  // namespace shoulderline
