#pragma once

#include <string_view>

#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"
#include "core/measure/length_text.h"

namespace shoulderline {

// The name of the group that a break's lines and words stand in.
inline constexpr std::string_view kBreakGroup = "left out";

// A full-size drawing made shorter: stretches along it in which nothing is drawn but level lines
// that run through are left out, in whole inches or centimetres, and break lines stand there with
// how much is missing. Dimensions keep their figures, and their lines run on across the break.
// Stretches that would shorten it by less than 40 mm stay.
[[nodiscard]] Sheet withPlainLeftOut(const Sheet& drawing,
                                     const LengthStyle& style,
                                     const TextMetrics& metrics);

}  // namespace shoulderline
