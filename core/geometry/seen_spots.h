#pragma once

#include <span>
#include <vector>

#include "core/geometry/polyhedron.h"
#include "core/geometry/view.h"

namespace shoulderline {

// A place on a face of a solid that nothing lies before; millimetres in the view's plane.
struct SeenSpot {
    Vec2 at;
    int solid = 0;  // position in the span of solids
};

// Places spread over the faces in sight, some on each that is large enough to be pointed at, in the
// order of the solids.
[[nodiscard]] std::vector<SeenSpot> seenSpots(std::span<const Polyhedron> solids, const View& view);

}  // namespace shoulderline
