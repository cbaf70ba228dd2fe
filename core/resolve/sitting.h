#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/measure/angle.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// How one sits on a piece, as seen from the side: the straight board that would lie on its seat,
// and the one that would lean against the front of its back.
struct Sitting {
    Length seatHeight;                         // of the seat's front, above the floor
    Angle slope;                               // of the seat, down to its back
    std::optional<Angle> lean = std::nullopt;  // of the back from upright; none without a back
    std::vector<std::size_t> seat = {};        // the parts that the first lies on
    std::vector<std::size_t> back = {};        // the parts that the second touches

    // Between seat and back: 90 degrees, and what the back leans, less what the seat slopes.
    [[nodiscard]] std::optional<Angle> between() const;
};

// None for a piece that one does not sit on. A seat is a part of that role, or slats that lie on
// others and have a back behind them, with its top 250 to 650 mm above the floor and no more than
// 750 mm deep. A back is what stands at least 150 mm above the seat over its rear half and in its
// width: slats, spindles, panels, rails, stiles and posts.
[[nodiscard]] std::optional<Sitting> sittingOn(const ResolvedPiece& resolved);

// "seat 17 in high, slopes 3° to its back; back leans 12° from upright; 99° between them"
[[nodiscard]] std::string sittingText(const Sitting& sitting, const LengthStyle& style);

}  // namespace shoulderline
