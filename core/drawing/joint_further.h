#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/piece/piece.h"
#include "core/resolve/small_parts.h"

namespace shoulderline {

// "haunch length 3/8, horn 1", and the loose tenon or the wedges that it takes; empty where it has
// no more sizes than every joint. Where plugs sit under a shaped face, how deep their holes are
// bored in the blank, and how long they are. A tongue's length is told in its groove and from its
// own shoulder, the width of a tusk tenon's wedge in its slot and where it is widest. A mortise
// that is cut in the square blank tells its depth from there.
[[nodiscard]] std::string furtherSizes(const Piece& piece,
                                       const ResolvedPiece& resolved,
                                       const std::vector<SmallPart>& smalls,
                                       std::size_t joint);

// How long a panel's tongue is from the shoulder of the rabbet that leaves it, which stays clear of
// the groove's mouth; none where no rabbet is cut for the joint.
[[nodiscard]] std::optional<Length> tongueFromShoulder(const ResolvedPart& panel,
                                                       std::size_t joint);

}  // namespace shoulderline
