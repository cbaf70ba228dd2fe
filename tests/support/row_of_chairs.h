#pragma once

#include "core/piece/piece.h"

namespace shoulderline::testing {

// `count` of the sample armchair behind one another as one piece, 60 parts and 106 joints each:
// large pieces for measuring and for tests of growth.
[[nodiscard]] Piece rowOfChairs(int count);

}  // namespace shoulderline::testing
