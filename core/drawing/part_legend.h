#pragma once

#include <vector>

#include "core/drawing/sheet.h"

namespace shoulderline {

// Whether a part's drawing shows its face side.
[[nodiscard]] bool showsFaceSide(const std::vector<Op>& drawing);

// What the joiner's marks mean that are on a part's drawing, one under another from `corner` on the
// sheet, at the left of a title block.
[[nodiscard]] std::vector<Op> legendOf(const std::vector<Op>& drawing, Vec2 corner);

}  // namespace shoulderline
