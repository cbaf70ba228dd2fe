#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/measure/length_text.h"
#include "core/piece/piece.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Which end of the part goes where, "left end into front post; right end into back post": of one
// that is joined at both ends and is not the same turned about, by stated names, or where these are
// one by hand. None for any other.
[[nodiscard]] std::optional<std::string> endsInto(const ResolvedPiece& resolved, std::size_t part);

// Where a part stands that no mortise, lap or screw places, on what it is glued to:
// "top 2 below the top of front rail", "midway from front to back on front post"; in the directions
// that its touching others does not fix and in which both lie square. Pairs by the outer or inner
// side, away from and towards the middle plane of the piece. A sentence each.
[[nodiscard]] std::vector<std::string> placesOnOthers(const ResolvedPiece& resolved,
                                                      std::size_t part,
                                                      const LengthStyle& style);

// How far a part that lies on others stands out past them, each way: "stands out past them 50 at
// the left and the right, 35 at the front and the back". None for one of a pair, whose hands
// differ, for one of a set, where one of them does not lie square, and where it stands out nowhere.
[[nodiscard]] std::optional<std::string> overhangs(const Piece& piece,
                                                   const ResolvedPiece& resolved,
                                                   std::size_t part);

}  // namespace shoulderline
