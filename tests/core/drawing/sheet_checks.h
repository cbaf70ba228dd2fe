#pragma once

#include <string>
#include <vector>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"

namespace shoulderline::testing {

// The widths of the lettering that every drawing is made with.
inline const LetteringMetrics kMetrics;

// Every place on the sheet where lettering lies on the ink of a line, as wide as it is drawn, on an
// arrow or other lettering, in words; lines of the role Construction too. Judged by Boost.Geometry
// on boxes and segments, apart from the code under test.
[[nodiscard]] std::vector<std::string> overlapsOn(const Sheet& sheet, const TextMetrics& metrics);

// The dimensions of one kind ("mortise length"), and all lettering that is not a dimension's.
[[nodiscard]] std::vector<DimensionOp> dimensionsOf(const Sheet& sheet, const std::string& of);
[[nodiscard]] std::vector<std::string> wordsOn(const Sheet& sheet);

}  // namespace shoulderline::testing
