#pragma once

#include <array>

#include "core/drawing/sheet.h"

namespace shoulderline {

// The basic line types of ISO 128-2 that the drawings use: 01 continuous, 02 dashed,
// 04 long-dashed dotted, 05 long-dashed double-dotted.
enum class LineType { Continuous, Dashed, LongDashedDotted, LongDashedDoubleDotted };

// How a line is drawn: its width in millimetres on paper and its type.
struct LineStyle {
    double width = 0.25;
    LineType type = LineType::Continuous;
    friend bool operator==(const LineStyle&, const LineStyle&) = default;
};

// The style of each role, after ISO 128-2. Bold: line group 0.5 (wide 0.5 mm, narrow 0.25 mm), for
// drawings to scale. Medium: line group 0.35, for small pictures of the whole piece. Fine (outline
// 0.25 mm, the rest 0.18 mm): for full size, where the size is taken from the middle of the line
// itself.
[[nodiscard]] LineStyle lineStyle(LineRole role, LineGroup group);

// Lengths of the elements of broken lines as multiples of the width (ISO 128-20, table 2).
inline constexpr double kDashWidths = 12.0;
inline constexpr double kLongDashWidths = 24.0;
inline constexpr double kGapWidths = 3.0;
inline constexpr double kDotWidths = 0.5;

}  // namespace shoulderline
