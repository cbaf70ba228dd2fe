#pragma once

#include <string>
#include <vector>

#include "core/piece/piece.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// A height above the floor that a maker looks for on the elevations.
struct KeyHeight {
    double at = 0.0;   // millimetres
    std::string name;  // "seat height"
    std::string word;  // lettered before its figure: "seat"; empty for none
};

// Of what is sat on (sittingOn()), of the tops of arms and of boards that lie across the grain of
// the piece (shelves, seats, tops), by the part's name; and those that the maker has named: lines
// of the rod of heights that a measure alone puts there, six at most. Each height once, ascending.
[[nodiscard]] std::vector<KeyHeight> keyHeights(const Piece& piece, const ResolvedPiece& resolved);

}  // namespace shoulderline
