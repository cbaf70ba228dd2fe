#pragma once

#include <vector>

#include "core/drawing/sheet.h"
#include "core/geometry/rect.h"

namespace shoulderline {

// A cut face on the sheet: what the rings enclose (even-odd) less what the hollows cover. Rings and
// hollows are closed, the last point not repeated; millimetres.
struct CutFace {
    std::vector<std::vector<Vec2>> rings;
    std::vector<std::vector<Vec2>> hollows;
};

// A stretch of a line.
struct Span {
    double from = 0.0;
    double to = 0.0;
};
// Where the line {p : dot(p, across) = at} runs inside the rings (even-odd), by its distances along
// `along`, ascending; both directions of unit length and at right angles.
[[nodiscard]] std::vector<Span> spansInside(const std::vector<std::vector<Vec2>>& rings,
                                            Vec2 along,
                                            Vec2 across,
                                            double at);

// Parallel fine lines over the face, `spacing` (> 0) apart, in `direction` from +x towards +y. They
// keep to the same lattice over the whole sheet, so that all faces of one part match. No line is
// shorter than 0.2 mm.
[[nodiscard]] std::vector<Op> hatch(const CutFace& face, Angle direction, double spacing);

// The corners of a rectangle as a ring.
[[nodiscard]] std::vector<Vec2> ringOf(const Rect& rect);

// How cut wood is hatched (common practice for joinery drawings): across the grain at 45 degrees,
// along it by lines that run with the grain.
inline constexpr double kHatchSpacing = 1.8;

}  // namespace shoulderline
