#pragma once

#include <vector>

#include "core/geometry/vec.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// How far each part moves, in the piece's space, for a picture of the piece pulled apart;
// millimetres, by ResolvedPiece::parts. The rule, along each of the piece's axes by itself:
// - a joint comes apart along its own direction, taken as the axis nearest to it: the tenoned part
//   moves off the mortised one until the tenon is out and `clearance` besides (twice that between
//   different assemblies, so that what is glued up together stays together);
// - parts joined across the axis move together along it, so that tenons stay in line with their
//   mortises; one that only rests on others stays over their middle;
// - where both cannot be (two rails on one post with slats between them), the part with the fewest
//   joints across the axis is let go, and lies as near to its place as the first allows.
// Parts whose joints can never come apart so (each of two let into the other) move together. Parts
// without joints stay.
[[nodiscard]] std::vector<Vec3> pulledApart(const ResolvedPiece& resolved, double clearance);

// The clearance that suits a picture of the piece: a twentieth of its greatest extent.
[[nodiscard]] double pictureClearance(const ResolvedPiece& resolved);

// How far a joint's tenon must move before it is out of its mortise; 0 where none is cut.
[[nodiscard]] double lengthOfEntry(const ResolvedPiece& resolved, std::size_t joint);

}  // namespace shoulderline
