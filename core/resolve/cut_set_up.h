#pragma once

#include <cstddef>
#include <vector>

#include "core/resolve/set_up.h"

namespace shoulderline {

// Of a cut into `face`: the reference face across it, how far the cut lies from there (`byMiddle`:
// its middle, as for a bit), its depth, and where along the part it begins and ends.
void setFence(SetUp& setUp, Face face, const Box& box, bool byMiddle);

// The settings for what a joint cuts into one of its parts besides mortises: bores, grooves,
// rabbets, slots, kerfs, the trenches of a cross lap.
[[nodiscard]] std::vector<SetUp> cutSetUps(const ResolvedPiece& resolved,
                                           std::size_t joint,
                                           std::size_t part);

}  // namespace shoulderline
