#pragma once

#include <optional>

#include "core/piece/piece.h"
#include "core/resolve/evaluation.h"
#include "core/resolve/resolved_bend.h"

namespace shoulderline {

// The bow that `bend` gives a part whose blank is `size` large (length over the chord between its
// shoulders, width, thickness). What cannot be worked out is a trouble at `place`, and the part
// stays straight.
[[nodiscard]] std::optional<ResolvedBend> workOutBend(const Bend& bend,
                                                      const Vec3& size,
                                                      const RuleBook& rules,
                                                      const Place& place,
                                                      Evaluation& evaluation);

// The outline of the bent part as seen on its face edge, in (x, z) of the part: its two curved
// faces, its ends square to the chord at x = 0 and x = length.
[[nodiscard]] Outline bentEdge(const ResolvedBend& bend, double length, double thickness);

}  // namespace shoulderline
