#pragma once

#include <vector>

#include "core/drawing/sheets.h"
#include "core/resolve/set_up.h"

namespace shoulderline {

// Joints that are cut alike: between the same stated parts, the same tenon, the same mortise at the
// same distance from its face.
struct JointGroup {
    std::vector<std::size_t> joints;  // indices in ResolvedPiece::joints, the one drawn first
};
// Every joint that is cut, each in one group; those that rest on one another without a cut are left
// out.
[[nodiscard]] std::vector<JointGroup> jointGroups(const ResolvedPiece& resolved);

// The settings for all of a group: those of the first, without the stretch along the part where the
// others are cut elsewhere along theirs.
[[nodiscard]] std::vector<SetUp> setUpsOf(const ResolvedPiece& resolved, const JointGroup& group);
// The same in words, those for ends and mortises out of square first.
[[nodiscard]] std::vector<std::string> setUpLines(const Piece& piece,
                                                  const ResolvedPiece& resolved,
                                                  const JointGroup& group);

// The joints that differ, each drawn once with how many there are of it (see drawJoint) and its
// set-ups, as many to a sheet as go on it, with the cautions of the tools under them: at full size,
// a half, a quarter (a fifth for pieces in millimetres), the largest that leaves room for others;
// smaller where the paper asks for it. On the paper as `frame` holds it, or turned where that takes
// fewer sheets. `frame.number` is that of the first of these sheets (0 for none); `frame.scale` is
// passed over. No sheets for a piece without such joints.
[[nodiscard]] std::vector<Sheet> jointSheets(const Piece&,
                                             const ResolvedPiece&,
                                             const SheetFrame&,
                                             const TextMetrics&);

}  // namespace shoulderline
