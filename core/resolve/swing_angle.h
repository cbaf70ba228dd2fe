#pragma once

#include <optional>

#include "core/measure/angle.h"

namespace shoulderline {

// A back that turns about a pivot and leans on the front upper edge of a bar. Millimetres, in the
// plane square to the pivot: `behind` and `above` place the edge from the pivot, `back` is how far
// the back's rear face lies behind the pivot when it stands upright. Angles are from upright,
// leaning back positive.

// The lean at which the rear face meets the edge. In the triangle of pivot, edge and the foot of
// the perpendicular from the pivot onto the rear face, the sides at the pivot are the distance to
// the edge and `back`, so that by the law of cosines cos(angle there) = back / distance. None where
// the edge is nearer to the pivot than the rear face ever comes, or the back would lean past
// level or forward.
[[nodiscard]] std::optional<Angle> leanAgainst(double behind, double above, double back);

// How far behind the pivot the edge stands for that lean, from 0 to under 90 degrees.
[[nodiscard]] double behindAt(Angle lean, double above, double back);

// How far up the back, from the pivot, the edge meets it.
[[nodiscard]] double contactAt(double behind, double above, Angle lean);

}  // namespace shoulderline
