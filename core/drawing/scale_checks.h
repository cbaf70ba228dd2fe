#pragma once

#include <vector>

#include "core/drawing/sheet.h"
#include "core/geometry/rect.h"

namespace shoulderline {

// Marks to check a print by ruler; true size, so only for pages printed at 100 %.

inline constexpr double kCheckLength = 100.0;  // mm
inline constexpr double kCheckInches = 4.0;

// A bar along the sheet from `left`: 100 mm in tens over the line; under it, with `inInches`, 4 in
// in quarters.
[[nodiscard]] std::vector<Op> checkBar(Vec2 left, bool inInches);
// The same upwards from `foot`, in millimetres only.
[[nodiscard]] std::vector<Op> uprightCheckBar(Vec2 foot);

// A square of 100 mm from its top left corner with its diagonal and what to do with it; with
// `inInches` one of 4 in round it, 1.6 mm larger.
[[nodiscard]] std::vector<Op> checkSquare(Vec2 corner, bool inInches);
// What checkSquare() covers.
[[nodiscard]] Vec2 checkSquareSize(bool inInches);

}  // namespace shoulderline
