#pragma once

#include <span>

#include "core/joint/mortise_and_tenon.h"
#include "core/resolve/evaluation.h"
#include "core/resolve/placing.h"

namespace shoulderline {

// Makes the joints that the relations ask for and those that the maker adds: kinds and sizes by
// rule with the maker's own over them, their places in both parts, and the cuts. Parts get their
// tenons, mortises and lengths over tenons; `resolved.parts` must be placed already.
void joinParts(const Piece& piece,
               std::span<const JointSeed> seeds,
               const SizingGuide& guide,
               Evaluation& evaluation,
               ResolvedPiece& resolved);

}  // namespace shoulderline
