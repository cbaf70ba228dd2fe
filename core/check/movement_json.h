#pragma once

#include <string>

#include "core/check/movement.h"

namespace shoulderline {

// What `shoulderline movement --json` prints, described by resources/schema/movement.schema.json.
// Final newline.
[[nodiscard]] std::string movementJson(const Piece& piece,
                                       const ResolvedPiece& resolved,
                                       const MovementReport& report);

// The same as text to read, members of a pair or set that move alike told once.
[[nodiscard]] std::string movementText(const Piece& piece,
                                       const ResolvedPiece& resolved,
                                       const MovementReport& report);

}  // namespace shoulderline
