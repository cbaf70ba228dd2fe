#pragma once

#include "core/drawing/fraction_text.h"
#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"
#include "core/geometry/rect.h"

namespace shoulderline {

// A dimension taken apart into what is drawn: extension lines (kExtensionGap from the part,
// kExtensionOverrun past the line), the dimension line (on past arrows that stand outside, and
// under a figure that does), arrowheads, figure.
struct DimensionParts {
    std::vector<Stroke> strokes;
    std::vector<Fill> arrows;
    TextOp figure;
};
[[nodiscard]] DimensionParts partsOf(const DimensionOp& dimension, const TextMetrics& metrics);

// Filled arrowheads 15 degrees wide, as long as the figures are high (ISO 129-1).
[[nodiscard]] Fill arrowhead(Vec2 tip, Vec2 towards, double length);

inline constexpr double kExtensionGap = 1.0;      // mm, common practice
inline constexpr double kExtensionOverrun = 2.0;  // mm: eight times the line width
inline constexpr double kRunningOverrun = 1.0;    // past the line of running dimensions
inline constexpr double kOriginRadius =
    1.0;  // of the circle that they begin at: eight line widths across
inline constexpr double kFigureClearance = 0.8;  // mm between figure and dimension line

// What lettering covers on the sheet.
[[nodiscard]] Rect boundsOf(const TextOp& text, const TextMetrics& metrics);

// What an arc covers.
[[nodiscard]] Rect boundsOf(const ArcOp& arc);

// What the ops cover, lines by their middles; all zero for none.
[[nodiscard]] Rect boundsOf(const std::vector<Op>& ops, const TextMetrics& metrics);

// `ops` moved by `by`.
void move(std::vector<Op>& ops, Vec2 by);
// `more` after `ops`.
void append(std::vector<Op>& ops, std::vector<Op> more);

}  // namespace shoulderline
