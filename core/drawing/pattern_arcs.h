#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"
#include "core/geometry/outline.h"
#include "core/measure/length_text.h"

namespace shoulderline {

// Small letters beside the arcs of an outline drawn at full size from (0, 0), and under what is
// `drawn` the list of them: radius, and where the centre lies along the part and from its edge
// `datum` (negative: on this side of it). Centres near the outline are marked by a cross. Nothing
// for an outline of straight lines.
[[nodiscard]] std::vector<Op> arcNotes(const Outline& outline,
                                       const std::string& datum,
                                       const LengthStyle& style,
                                       const std::vector<Op>& drawn,
                                       const TextMetrics& metrics);

}  // namespace shoulderline
