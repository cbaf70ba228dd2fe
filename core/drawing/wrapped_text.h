#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"

namespace shoulderline {

// `text` broken between words into lines at most `width` wide at that lettering height; a word
// that is wider has a line of its own, and a fraction stays with its whole number, a bracket with
// its size. Lines after the first begin with `indent`.
[[nodiscard]] std::vector<std::string> wrapText(const std::string& text,
                                                double width,
                                                double height,
                                                const TextMetrics& metrics,
                                                const std::string& indent = {});

// Lines under one another, the top of the first at (0, 0).
[[nodiscard]] std::vector<Op> linesOfText(const std::vector<std::string>& lines, double height);
[[nodiscard]] double heightOfLines(std::size_t count, double height);

}  // namespace shoulderline
