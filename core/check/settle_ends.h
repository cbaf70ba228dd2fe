#pragma once

#include "core/check/settle.h"

namespace shoulderline {

// What settle() does without moving a rail: the ends of the tenons alone.
[[nodiscard]] Settlement settleEnds(const Piece& piece, const Workbench& bench);

}  // namespace shoulderline
