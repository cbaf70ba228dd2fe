#pragma once

#include <optional>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// A rail and how far it is to be moved, towards the side that it gives way to.
struct WayGiven {
    std::size_t part = 0;  // index in Piece::parts
    Length by;             // above zero, to the next 1/32 in up
};

// What the rails that give way have to be moved from where they lie in `resolved`, so that at least
// the rule book's gap is left between their mortises and those of the part named. Nothing for one
// that clears it as it lies. A pair and a set are moved alike.
[[nodiscard]] std::vector<WayGiven> waysGiven(const Piece& piece, const ResolvedPiece& resolved);

// A direction as stated of a pair, for the one of the two that `part` is; and back again.
[[nodiscard]] Vec3 mirroredIfTwin(const ResolvedPart& part, Vec3 direction);

// `spans` stated so much further towards a side: its level where that is up or down, else how far
// it is set in. None where it has neither.
[[nodiscard]] std::optional<Spans> movedTowards(const Spans& spans, Side towards, Length by);

// The piece as it would be stated without rails that give way: each moved as far as it takes. None
// where none has to be moved.
[[nodiscard]] std::optional<Piece> withWayGiven(const Piece& piece, const ResolvedPiece& resolved);

}  // namespace shoulderline
