#pragma once

#include <array>
#include <optional>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// A place along a part, as a member meets it there: the middle of its section, the way it runs
// there, and the section's two other directions (of the part's width and thickness, square to the
// way it runs) with half its size along each. Points and unit directions in the space of `frame`.
struct Station {
    double along = 0.0;  // in the part's own frame
    Vec3 middle;
    Vec3 direction;
    std::array<Vec3, 2> across;
    std::array<double, 2> half{};
};

// What the part's outline on its face side has across at `x` along it, from the face edge; at its
// ends what it has there.
[[nodiscard]] Extent widthAt(const ResolvedPart& part, double x);

// The station at `x` along the part (its own frame), which may lie beyond its ends. A shaped part
// has the section that its outlines have there.
[[nodiscard]] Station stationAt(const ResolvedPart& part, const Frame& frame, double x);

// The station whose middle has the coordinate `at` on `axis` (0 x, 1 y, 2 z) of the space of
// `frame`; none where the part runs across that axis.
[[nodiscard]] std::optional<Station> stationOn(const ResolvedPart& part,
                                               const Frame& frame,
                                               int axis,
                                               double at);

// Where a line enters a part's body: the point, and the way out of the wood there (unit), in the
// space of `frame`. The line runs through `through` along `direction` (unit); wood behind
// `through` is not looked at. None where it misses the wood.
struct EnteredFace {
    Vec3 point;
    Vec3 outward;
    double depth = 0.0;  // of wood along the line
};
[[nodiscard]] std::optional<EnteredFace> enteredFace(const ResolvedPart& part,
                                                     const Frame& frame,
                                                     Vec3 through,
                                                     Vec3 direction);

}  // namespace shoulderline
