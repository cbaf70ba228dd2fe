#pragma once

#include <array>
#include <optional>

#include "core/geometry/convex_solid.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Shoulders on faces that are shaped: an arched edge, a cloud lift, a sawn curve.

// Whether a part is shaped to an outline that is no plain rectangle. Eased arrises, ends cut to an
// angle and a section that is not square are no such shape.
[[nodiscard]] bool isShaped(const ResolvedPart& part);

// The end of a member over the part that it meets: `corner` of its section on the plane of that
// part's blank, the unit way on into the wood, and the section's two sides from the corner; in the
// space of `frame`, where the part stands.
struct EndOver {
    const ResolvedPart* part = nullptr;
    Frame frame;
    Vec3 corner;
    Vec3 way;
    std::array<Vec3, 2> sides;
};

// How a straight shoulder lies on the wood under an end. It runs with the wood between the end's
// sides, a plane that touches it and cuts none of it away.
struct ShoulderOnFace {
    HalfSpace plane;        // the member within; in the space of the part's frame
    double reach = 0.0;     // from the blank's plane on to the plane's furthest corner, millimetres
    double deepest = 0.0;   // ... to the deepest wood under the end: where a level cut goes to
    double open = 0.0;      // between the shoulder and the wood, at most
    bool isSquare = false;  // the plane lies square to the way
};

// None where the wood lies on the blank's plane all under the end, or the end has no wood under it.
[[nodiscard]] std::optional<ShoulderOnFace> shoulderOn(const EndOver& end);

}  // namespace shoulderline
