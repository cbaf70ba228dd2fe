#pragma once

#include <vector>

#include "core/drawing/sheet.h"

namespace shoulderline {

// A break from `a` to `b`: a straight line with a zigzag in its middle, running over the outline at
// both ends (ISO 128-2, 01.1).
[[nodiscard]] Stroke breakLine(Vec2 a, Vec2 b);

// A ring of which a side that lies on such a line follows its zigzag; closed, the last point not
// repeated. As it was where no side lies there.
[[nodiscard]] std::vector<Vec2> brokenOff(const std::vector<Vec2>& ring, const Stroke& line);

}  // namespace shoulderline
