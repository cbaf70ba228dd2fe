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

// The joints that differ, drawn apart and together, several to a sheet where they fit; drawings are
// reduced where they would not fit else, and to lettering of 2.5 mm where that saves paper, and say
// at which scale they are. `frame.number` is that of the first of these sheets (0 for none);
// `frame.scale` is passed over. No sheets for a piece without such joints.
[[nodiscard]] std::vector<Sheet> jointSheets(const Piece&,
                                             const ResolvedPiece&,
                                             const SheetFrame&,
                                             const TextMetrics&);

}  // namespace shoulderline
