#pragma once

#include <string>
#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// One size that a change moved. For parts and joints by their names, as both may come and go.
struct Moved {
    std::string subject;               // the part, or the joint
    std::string size;                  // "tenon thickness", "shoulder length"
    std::optional<Length> before;      // none for what is new
    std::optional<Length> after;       // none for what is gone
    std::optional<std::size_t> part;   // in the new piece
    std::optional<std::size_t> joint;  // in the new piece
    friend bool operator==(const Moved&, const Moved&) = default;
};

// Every size of every part and joint that differs by more than kLengthTolerance, in the order of
// the new piece; then what is gone. Members of a pair or set that moved alike are told once:
// `subject` is then the stated name. A part or joint that is new or gone is told by its length
// alone.
[[nodiscard]] std::vector<Moved> ripple(const ResolvedPiece& before, const ResolvedPiece& after);

}  // namespace shoulderline
