#pragma once

#include "core/piece/piece.h"
#include "core/resolve/resolved_piece.h"
#include "core/rules/rule_book.h"

namespace shoulderline {

// Works out everything that follows from `piece`: measures, placing, joints, their sizes, the cuts
// in both parts. Pure: the same input gives the same result. Never fails: what cannot be worked
// out is a Trouble at its place, and the rest resolves. `before`, what it was before a change, may
// be given for the sake of speed: nothing in the result hangs on it.
[[nodiscard]] ResolvedPiece resolve(const Piece& piece,
                                    const RuleBook& rules,
                                    const Workshop& workshop,
                                    const ResolvedPiece* before = nullptr);

}  // namespace shoulderline
