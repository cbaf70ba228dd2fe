#pragma once

#include <optional>
#include <vector>

#include "core/geometry/convex_solid.h"
#include "core/geometry/outline.h"
#include "core/geometry/polyhedron.h"

namespace shoulderline {

// Whether every line across the length (parallel to y) meets the outline in one stretch at most,
// and its long sides do not step across it.
[[nodiscard]] bool isPlainAlongLength(const FlatOutline& outline);

// What the prism over `face` (x, y), without end in z, shares with the prism over `edge` (x, z),
// without end in y. Both outlines counter-clockwise and plain along the length. Empty when they
// share nothing.
[[nodiscard]] std::optional<Polyhedron> sharedByOutlines(const FlatOutline& face,
                                                         const FlatOutline& edge);

// The same, or for no `edge` the prism over `face` from z = 0 to `thickness`, in convex pieces that
// share no volume; `face` may be any proper outline, `edge` too.
[[nodiscard]] std::vector<ConvexSolid> convexPieces(const FlatOutline& face,
                                                    double thickness,
                                                    const FlatOutline* edge);

}  // namespace shoulderline
