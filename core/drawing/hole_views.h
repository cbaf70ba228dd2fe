#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/drawing/part_views.h"
#include "core/geometry/hidden_lines.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Holes as stated that their boxes do not tell: bores that tilt, slotted and countersunk screw
// holes.

// The lines of such a hole as a view of the part shows them, tied to `solid`: its mouths seen, the
// rest hidden.
void addHoleEdges(const ResolvedPart& part,
                  const ResolvedCut& cut,
                  const PartView& view,
                  int solid,
                  std::vector<ViewEdge>& edges);

// Shortens the lines among `edges` from `first` on, those of bores and notches, to where they lie in
// the part's wood or in its tenons: what they took out of the blank before it was shaped is not
// there to be seen.
void keepToWood(const ResolvedPart& part,
                const PartView& view,
                std::size_t first,
                std::vector<ViewEdge>& edges);

// What a note says of a hole as stated besides where it is: "bore ⌀3/8, through", "slot 1/4 × 1/2
// along the part", "counterbore ⌀1/2, 3/8 deep, with a plug", "leans 10°, 1 in 5.7, ...".
[[nodiscard]] std::vector<std::string> holeLines(const ResolvedPart& part,
                                                 const ResolvedCut& cut,
                                                 const std::string& times,
                                                 const LengthStyle& style);

// Likewise of a peg mortise: "peg mortise 3/8 square, 1 deep", "peg stands 1/16 proud", and where
// it pins a tenon "through the tenon, the joint together".
[[nodiscard]] std::vector<std::string> pegLines(const ResolvedPart& part,
                                                const ResolvedCut& cut,
                                                const std::string& times,
                                                const LengthStyle& style);

// Whether both are made alike but for where they are.
[[nodiscard]] bool isMadeAlike(const ResolvedHole& a, const ResolvedHole& b);

}  // namespace shoulderline
