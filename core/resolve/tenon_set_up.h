#pragma once

#include <vector>

#include "core/resolve/set_up.h"

namespace shoulderline {

// The settings that one joint's tenon is made with, in the order of work: cheeks by a fence from
// the reference faces, then the shoulders by a stop from the end, as deep as each side asks, then
// what a haunch needs, and the shoulders pared last (common practice). None where the joint has no
// tenon of its own part's wood.
[[nodiscard]] std::vector<SetUp> tenonSetUpsOf(const ResolvedPiece& resolved, std::size_t joint);

}  // namespace shoulderline
