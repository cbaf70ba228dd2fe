#pragma once

#include "core/drawing/sheets.h"
#include "core/geometry/rect.h"

namespace shoulderline {

// Numbers in circles (item references) among the views of `drawn`, one for each kind of part (1 for
// the first of partKinds()), with a leader to a line of a part of that kind, a visible one where
// there is one, in whichever view has the best place. The circles keep within `area` and off every
// line and lettering of `drawn` and of one another. Kinds that have no line, or no place, have
// none.
[[nodiscard]] std::vector<Op> partNumbersOn(const ResolvedPiece& resolved,
                                            const std::vector<Op>& drawn,
                                            const Rect& area,
                                            const TextMetrics& metrics);

}  // namespace shoulderline
