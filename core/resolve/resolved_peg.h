#pragma once

#include <cstddef>

#include "core/measure/length.h"

namespace shoulderline {

// What the box of a peg mortise does not tell: a square hole as the maker stated it, and the square
// peg that fills it.
struct ResolvedPeg {
    std::size_t cut = 0;  // in Part::cuts
    Length side;          // of the square
    Length depth;         // into the wood; of one that goes through as thick as that is
    Length proud;         // how far the peg stands out of the face, >= 0

    friend bool operator==(const ResolvedPeg&, const ResolvedPeg&) = default;
};

}  // namespace shoulderline
