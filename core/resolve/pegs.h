#pragma once

#include <optional>
#include <vector>

#include "core/resolve/evaluation.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// A peg mortise in a blank `size` large, millimetres: a box square to its face, its place that of
// its middle. None where it cannot be worked out, which is a trouble at `place`: no side is stated,
// it lies outside the wood, or its peg would end below the face.
[[nodiscard]] std::optional<ResolvedCut> workOutPegMortise(const CutStatement& cut,
                                                           const Vec3& size,
                                                           const Place& place,
                                                           Evaluation& evaluation);

// The peg driven home, in the frame of its part: it fills its mortise and stands proud of the face
// that this enters. `cut` is a peg mortise.
[[nodiscard]] Box pegIn(const ResolvedCut& cut);

// Whether a peg mortise crosses a tenon's mortise, from a face at right angles to the one that the
// tenon enters and within the length of the tenon: its peg then pins that joint.
[[nodiscard]] bool pinsTenon(const ResolvedCut& cut, const MortiseSolid& mortise);

// The joints, indices in ResolvedPiece::joints, whose tenons the peg of a peg mortise of `part`
// pins; each once. The hole through such a tenon is cut with the joint together and is not among
// the cuts of the tenoned part.
[[nodiscard]] std::vector<std::size_t> pinnedBy(const ResolvedPart& part, const ResolvedCut& cut);

}  // namespace shoulderline
