#pragma once

#include <string>

#include "core/measure/length_text.h"
#include "core/resolve/resolved_easing.h"

namespace shoulderline {

struct SizeWriter;

// What is taken off, in a few words: "chamfer 3/8", "round-over R 1/4", "cove R 1/4", "pyramid 3/4
// high"; of two reaches the first is into the face named first, at an end across it.
[[nodiscard]] std::string easingText(const ResolvedEasing& easing, const LengthStyle& lengths);

// On the face side: a note for each easing that the part has, and from the start end to where a
// stopped one begins and ends.
void addEasingSizes(SizeWriter& writer);

}  // namespace shoulderline
