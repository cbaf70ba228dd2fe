#pragma once

#include <vector>

#include "core/drawing/sheets.h"

namespace shoulderline {

// Joints that are cut alike: the same kinds of parts, the same tenon and mortise.
struct JointGroup {
    std::vector<std::size_t> joints;  // indices in ResolvedPiece::joints, the one drawn first
};
// Every joint that is cut, each in one group; those that rest on one another without a cut are left
// out.
[[nodiscard]] std::vector<JointGroup> jointGroups(const ResolvedPiece& resolved);

// The joints that differ, each drawn once with how many there are of it (see drawJoint), as many to
// a sheet as go on it: at full size, a half, a quarter (a fifth for pieces in millimetres), the
// largest that leaves room for others; smaller where the paper asks for it. On the
// paper as `frame` holds it, or turned where that takes fewer sheets. `frame.number` is that
// of the first of these sheets (0 for none); `frame.scale` is passed over. No sheets for a piece
// without such joints.
[[nodiscard]] std::vector<Sheet> jointSheets(const Piece&,
                                             const ResolvedPiece&,
                                             const SheetFrame&,
                                             const TextMetrics&);

}  // namespace shoulderline
