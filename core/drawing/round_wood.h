#pragma once

#include <optional>
#include <vector>

#include "core/geometry/convex_solid.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Hollows in parts that are turned round or worked eight-sided. They are set out from the blank,
// but open where the wood is.

// What of a hollow lies in the wood of such a part, in the part's frame; none where the part is
// square in section or shaped, whose hollows open on the faces of the blank, and where nothing of
// the hollow lies in the wood.
[[nodiscard]] std::optional<ConvexSolid> withinRound(const ResolvedPart& part,
                                                     const ConvexSolid& hollow);

// The corners of the mouth that looks towards `outward` (a unit vector), of what withinRound()
// gave; none where it has no mouth there.
[[nodiscard]] std::vector<Vec3> mouthTowards(const ConvexSolid& inRound, Vec3 outward);

}  // namespace shoulderline
