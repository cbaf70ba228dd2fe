#pragma once

#include <utility>
#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// A size of a joint under its name in lists of sizes: "tenon thickness", "plug depth".
using NamedSize = std::pair<const char*, const Size*>;

// Those sizes of a joint that have reasons: of its tenon, of its mortise, then further ones. They
// point into `joint`.
[[nodiscard]] std::vector<NamedSize> namedSizes(const ResolvedJoint& joint);

}  // namespace shoulderline
