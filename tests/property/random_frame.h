#pragma once

#include <string>

#include "core/piece/piece.h"

namespace shoulderline::testing {

// "9/16 in".
[[nodiscard]] std::string sixteenths(int count);

// A frame of four posts, front and side rails, and arms, its sizes in sixteenths of an inch, drawn
// by RapidCheck.
[[nodiscard]] Piece randomFrame();

}  // namespace shoulderline::testing
