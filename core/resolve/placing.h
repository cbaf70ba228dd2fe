#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/joint/grooved.h"
#include "core/resolve/evaluation.h"
#include "core/resolve/known_solids.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// What stands in the grooves at the four edges of a panel: its face edge, back edge, start end and
// far end.
using GroovedEdges = std::array<GroovedEdge, 4>;

// A joint that a relation asks for, before it is sized. Indices are those of PlacedPiece::parts.
struct JointSeed {
    std::size_t tenoned = 0;
    std::size_t mortised = 0;
    End end = End::Start;  // the end of the tenoned part
    JointKind kind = JointKind::Blind;
    // Of a panel: all four edges, and which of them this joint is at.
    std::optional<GroovedEdges> grooved = std::nullopt;
    std::size_t edge = 0;
};

struct PlacedPiece {
    std::vector<ResolvedPart>
        parts;  // bodies only, frames in the piece's space; in the order stated
    std::vector<JointSeed> seeds;
    std::vector<ResolvedSwing> swings;
};

// Places every part by its relation, each once the parts it refers to are placed; sets are laid
// out, pairs mirrored, assemblies placed within one another; those that swing as at their station.
// A part that cannot be placed is a trouble at that part and is left out, as are those that refer
// to it.
[[nodiscard]] PlacedPiece placeParts(const Piece& piece,
                                     const SizingGuide& guide,
                                     const KnownSolids& known,
                                     Evaluation& evaluation);

}  // namespace shoulderline
