#pragma once

#include <string>
#include <vector>

#include "core/piece/piece.h"
#include "core/resolve/small_parts.h"

namespace shoulderline {

// "haunch length 3/8, horn 1", and the loose tenon or the wedges that it takes; empty where it has
// no more sizes than every joint. Where plugs sit under a shaped face, how deep their holes are
// bored in the blank, and how long they are.
[[nodiscard]] std::string furtherSizes(const Piece& piece,
                                       const ResolvedPiece& resolved,
                                       const std::vector<SmallPart>& smalls,
                                       std::size_t joint);

}  // namespace shoulderline
