#pragma once

#include <vector>

#include "core/geometry/vec.h"

namespace shoulderline {

// One side of a line that runs inside an outline in a plane: the side of the outline that it
// follows, the unit direction out of the wood across that, and how far inside it lies (> 0).
struct InsetSide {
    Vec3 from;
    Vec3 to;
    Vec3 out;
    double reach = 0.0;
};

// `corners` are where each side of the inset meets the next: as many as sides where these are a
// loop, corner k before side k; else one more. Where the outline bends so tightly that a side is
// overtaken by its neighbours (it would run backwards), it is dropped, and the corners at its ends
// come to where these meet. False where sides at an open end are overtaken, or nothing is left.
// `normal` is the plane's. Millimetres.
[[nodiscard]] bool dropOvertaken(const std::vector<InsetSide>& sides,
                                 Vec3 normal,
                                 std::vector<Vec3>& corners);

}  // namespace shoulderline
