#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"
#include "core/geometry/outline.h"
#include "core/measure/length_text.h"

namespace shoulderline {

// Puts small letters beside the arcs of an outline that is drawn at full size from (0, 0) in `ops`,
// and gives the list of them, line by line: radius, and where the centre lies along the part and
// from its edge `datum` (negative: on this side of it). Centres near the outline are marked by a
// cross. Nothing for an outline of straight lines.
[[nodiscard]] std::vector<std::string> addArcLetters(const Outline& outline,
                                                     const std::string& datum,
                                                     const LengthStyle& style,
                                                     const TextMetrics& metrics,
                                                     std::vector<Op>& ops);

}  // namespace shoulderline
