#pragma once

#include <vector>

#include "core/drawing/sheet.h"
#include "core/piece/words.h"

namespace shoulderline {

// Whether a part's drawing shows that face.
[[nodiscard]] bool showsFace(const std::vector<Op>& drawing, Face face);

// What the joiner's marks mean that are on a part's drawing, and no others: in so many columns from
// `corner` on the sheet, at the left of a title block.
[[nodiscard]] std::vector<Op> legendOf(const std::vector<Op>& drawing,
                                       Vec2 corner,
                                       int columns = 1);

}  // namespace shoulderline
