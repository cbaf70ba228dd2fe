#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// A size that the maker took at the bench, where the piece goes by it.
struct FoundSize {
    std::string of;    // "rail"; empty for a size of the joint itself
    std::string name;  // "thickness", "mortise width"
    Length found;
    std::optional<Length> before;  // what was stated, or the rule would give
};

// Width and thickness of a part, those that are as found.
[[nodiscard]] std::vector<FoundSize> foundIn(const ResolvedPart& part);
// What was found of the two members of a joint, and of the joint itself: its other sizes follow
// from these.
[[nodiscard]] std::vector<FoundSize> foundBehind(const ResolvedPiece& resolved, std::size_t joint);

// "front rail's thickness 13/16 (stated 7/8), mortise width 5/16 (by rule 1/4)"; lengths as `shown`
// tells them. Empty for none.
[[nodiscard]] std::string foundText(const std::vector<FoundSize>& found,
                                    const std::function<std::string(Length)>& shown);

}  // namespace shoulderline
