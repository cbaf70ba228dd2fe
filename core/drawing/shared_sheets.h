#pragma once

#include <vector>

#include "core/drawing/sheets.h"

namespace shoulderline {

// The kinds of part that have sheets: those whose sheets would be the same, of the same stock, are
// one, "front cleat and back cleat", with the parts of all of them.
[[nodiscard]] std::vector<PartKind> kindsOnSheets(const Piece&,
                                                  const ResolvedPiece&,
                                                  const TextMetrics&);

}  // namespace shoulderline
