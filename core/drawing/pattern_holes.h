#pragma once

#include <string>
#include <vector>

#include "core/drawing/part_views.h"
#include "core/measure/length_text.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// What a pattern tells of the holes that are bored into the face it lies on, or into the one behind
// it: each kind once with what its outline does not show (diameter, depth, lean, slot, head) and
// where its mouths lie, along the part and from its edge `datum`. Holes of joints are told with
// their joints.
[[nodiscard]] std::vector<std::string> holeWordsOf(const ResolvedPart& part,
                                                   const PartView& view,
                                                   const std::string& datum,
                                                   const LengthStyle& style);

}  // namespace shoulderline
