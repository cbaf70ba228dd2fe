#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheets.h"

namespace shoulderline {

// What a part's sheet says of it in words: the maker's own note; which end goes where; of a
// set how its members stand ("13 in all, 3/8 apart, the first and last as far from each front
// post"); what it lies on or against, what holds it there and where on it that is, where that is no
// joint with a mortise, with the screws as they are bought. What lies on others and has no stated
// fixing is told to be so. Of parts that are made alike but have several names, each by its name
// where they differ. A sentence each; none for a part whose views say all.
[[nodiscard]] std::vector<std::string> fixingNotes(const Piece& piece,
                                                   const ResolvedPiece& resolved,
                                                   const PartKind& kind);

}  // namespace shoulderline
