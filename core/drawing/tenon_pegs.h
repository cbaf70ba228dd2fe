#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drawing/part_views.h"
#include "core/drawing/sheet.h"
#include "core/piece/piece.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// A hole for a square peg of the mortised part that goes through the tenon of a joint. It is cut
// with the joint together, so that it is none of the tenoned part's own cuts.
struct TenonPeg {
    Box hole;  // within the tenon, in the frame of the mortised part; millimetres
    Box peg;   // driven home, likewise
    Length side;
    Face face = Face::FaceSide;  // of the mortised part, that it goes in by
};
[[nodiscard]] std::vector<TenonPeg> pegsThroughTenonOf(const ResolvedPiece& resolved,
                                                       std::size_t joint);

// "2 peg mortises 3/16 square through the tenon, with the joint together"; none where there are
// none.
[[nodiscard]] std::optional<std::string> tenonPegsText(const Piece& piece,
                                                       const ResolvedPiece& resolved,
                                                       std::size_t joint);

// Those holes on the tenons of a part, as the view of one face shows them; none on an end. `scale`
// of drawing to wood, from the view's corner.
[[nodiscard]] std::vector<Op> tenonPegLines(const ResolvedPiece& resolved,
                                            std::size_t part,
                                            const PartView& view,
                                            double scale);

}  // namespace shoulderline
