#pragma once

#include <optional>

#include "core/geometry/body.h"
#include "core/piece/piece.h"
#include "core/resolve/evaluation.h"
#include "core/resolve/resolved_bend.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// The bow that `bend` gives a part whose blank is `size` large (length over the chord between its
// shoulders, width, thickness). What cannot be worked out is a trouble at `place`, and the part
// stays straight.
[[nodiscard]] std::optional<ResolvedBend> workOutBend(const Bend& bend,
                                                      const Vec3& size,
                                                      const RuleBook& rules,
                                                      const Place& place,
                                                      Evaluation& evaluation);

// The outline of the bent part as seen on its face edge, in (x, z) of the part: its two curved
// faces, its ends square to the chord at x = 0 and x = length.
[[nodiscard]] Outline bentEdge(const ResolvedBend& bend, double length, double thickness);

// The shoulder at one end of the bent part, square to its middle line as that ends, with its
// leading corner on the chord's end: the plane in the part's own frame, its wood within. Between
// the bent faces no wood then stands past x = 0 or x = length.
[[nodiscard]] PlaneCut shoulderSquareToCurve(const ResolvedBend& bend,
                                             End end,
                                             double length,
                                             double thickness);

// How far a shoulder square to the curve stays open where it runs back from its leading corner:
// along the part, from one bent face to the other; zero at an end that is not cut so.
[[nodiscard]] double openAtShoulder(const ResolvedPart& part, End end);

}  // namespace shoulderline
