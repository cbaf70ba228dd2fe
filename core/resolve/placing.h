#pragma once

#include <vector>

#include "core/resolve/evaluation.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// A joint that a relation asks for, before it is sized. Indices are those of PlacedPiece::parts.
struct JointSeed {
    std::size_t tenoned = 0;
    std::size_t mortised = 0;
    End end = End::Start;  // the end of the tenoned part
    JointKind kind = JointKind::Blind;
};

struct PlacedPiece {
    std::vector<ResolvedPart>
        parts;  // bodies only, frames in the piece's space; in the order stated
    std::vector<JointSeed> seeds;
};

// Places every part by its relation, each once the parts it refers to are placed; sets are laid
// out, pairs mirrored, assemblies placed within one another. A part that cannot be placed is a
// trouble at that part and is left out, as are those that refer to it.
[[nodiscard]] PlacedPiece placeParts(const Piece& piece, Evaluation& evaluation);

}  // namespace shoulderline
