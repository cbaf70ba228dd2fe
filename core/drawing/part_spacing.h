#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/piece/piece.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// How the members of a set stand: how many, how far apart, how far the outer ones are from what the
// set lies between, and from which side they are numbered; lengths in the piece's style. None for a
// part that is of no set, or alone in it.
[[nodiscard]] std::optional<std::string> spacingNote(const Piece& piece,
                                                     const ResolvedPiece& resolved,
                                                     std::size_t part);

// The members of the set that a part is of, as they stand, itself among them; of a pair those of
// its hand. Indices in ResolvedPiece::parts.
[[nodiscard]] std::vector<std::size_t> membersOfSet(const ResolvedPiece& resolved,
                                                    std::size_t part);

// "front rail, back rail and side rail".
[[nodiscard]] std::string namesInARow(const std::vector<std::string>& names);

}  // namespace shoulderline
