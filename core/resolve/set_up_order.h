#pragma once

#include <string>
#include <vector>

#include "core/resolve/set_up.h"

namespace shoulderline {

// What is to be known before any of these settings: for each part once, whether its joints are cut
// before it is shaped, after it, or once it is bent, with the reason.
[[nodiscard]] std::vector<std::string> orderTexts(const std::vector<SetUp>& setUps,
                                                  const ResolvedPiece& resolved,
                                                  const LengthStyle& style);

}  // namespace shoulderline
