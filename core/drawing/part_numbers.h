#pragma once

#include "core/drawing/piece_view.h"
#include "core/drawing/sheets.h"
#include "core/geometry/rect.h"

namespace shoulderline {

// Numbers in circles (item references) among the views of `drawn`, one for each kind of part (1 for
// the first of partKinds()), in whichever view has the best place, with a leader to a dot on a part
// of that kind at one of `spots` (on faces in sight, on the sheet) that lies clear of all lines and
// of other tips; where a kind has none, with an arrow at a line of it, a visible one if it can be.
// The circles keep within `area` and off every line and lettering of `drawn` and of one another.
// Kinds that have no line, or no place, have none.
[[nodiscard]] std::vector<Op> partNumbersOn(const ResolvedPiece& resolved,
                                            const std::vector<Op>& drawn,
                                            const std::vector<PartSpot>& spots,
                                            const Rect& area,
                                            const TextMetrics& metrics);

// Puts `drawing`, whose bounds these are, with its spots into the middle of `space`, numbered as
// above, and adds it to `ops`.
void addInMiddle(std::vector<Op> drawing,
                 const Rect& bounds,
                 const ResolvedPiece& resolved,
                 std::vector<PartSpot> spots,
                 const Rect& space,
                 const TextMetrics& metrics,
                 std::vector<Op>& ops);

}  // namespace shoulderline
