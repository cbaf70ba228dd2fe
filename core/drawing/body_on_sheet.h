#pragma once

#include <optional>

#include "core/drawing/sheet.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// The top left corner of a part's body as a part drawing shows it on `face`, on the sheet; none
// where the drawing has no such view.
[[nodiscard]] std::optional<Vec2> bodyCornerOn(const Sheet& sheet,
                                               const ResolvedPart& part,
                                               Face face);

}  // namespace shoulderline
