#pragma once

#include <optional>
#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Two mortises inside one part that meet, or leave less wood between them than the rule book asks.
struct Meeting {
    std::size_t part = 0;
    std::size_t first = 0;  // joints
    std::size_t second = 0;
    std::optional<Box>
        overlap;        // what both take, in the part's frame; none where wood is left between
    double wall = 0.0;  // wood left between them at the thinnest; 0 where they meet. Millimetres
};

// Every such meeting in `part`, exact for the boxes that the mortises are.
[[nodiscard]] std::vector<Meeting> meetingsIn(const ResolvedPiece& resolved, std::size_t part);

}  // namespace shoulderline
