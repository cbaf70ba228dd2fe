#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/check/neighbours.h"
#include "core/piece/edit.h"

namespace shoulderline {

// A rail moved from where it is stated, so that its mortise passes another hollow of its post.
struct RailMove {
    enum class Way { Raise, Lower, Across };
    Way way = Way::Raise;
    Length by;     // to the next 1/32 in up, above zero
    SetPart edit;  // states that the rail gives way, or anew its level or how far it is set in
    std::string givesWayTo = {};  // stated name; empty for a hollow that is no part's

    // "raise side rail by 1/4 in, giving way to front rail".
    [[nodiscard]] std::string text(const LengthStyle& style) const;
};

// The moves that leave `least` millimetres between the mortise `mine` of `post` and `other`: the
// shorter way up or down where the post stands and the rail has a level of its own, and each way
// across that leaves the rule book's wall beside the mortise. None for a member of a set, and for
// one that no relation places so.
[[nodiscard]] std::vector<RailMove> railMoves(const Piece& piece,
                                              const ResolvedPiece& resolved,
                                              const MortiseSolid& mine,
                                              const Cavity& other,
                                              const ResolvedPart& post,
                                              double least);

}  // namespace shoulderline
