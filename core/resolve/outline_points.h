#pragma once

#include <optional>
#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// A point of a shaped side as it is stated, where it lies on the part: in the part's frame, on the
// face side (on an edge of the blank where the side is the face side or the back side).
struct OutlinePoint {
    Face side = Face::FaceEdge;
    std::size_t index = 0;  // in the stated side
    Vec3 at;
    Length along;  // from the start of the side, whatever it is stated from
    Length in;
    Vec3 alongWay;  // unit: the way that its place along the side grows
    Vec3 inWay;     // unit: into the wood
};

// The points of a part's shaped sides, side by side in the order stated; those that cannot be
// worked out are left out.
[[nodiscard]] std::vector<OutlinePoint> outlinePointsOf(const Piece& piece,
                                                        const ResolvedPiece& resolved,
                                                        const ResolvedPart& part);

// What a point is moved by at a time: 1/16 in, 0.5 mm.
[[nodiscard]] Length outlineStep(Unit unit);

// The stated part with that point moved `along` its side and `in` into the wood: lengths are stated
// anew, expressions get an offset. A point that is not there leaves it as it is.
[[nodiscard]] Part withPointMoved(
    const Piece& piece, std::size_t stated, Face side, std::size_t index, Length along, Length in);

}  // namespace shoulderline
