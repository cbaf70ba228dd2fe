#pragma once

#include <vector>

#include "core/resolve/set_up.h"

namespace shoulderline {

// How the mortised part of a bridle or a half lap is sawn open, from the solid that is taken away
// there; `work` of each says what it is. At an end of the part its cheeks from the end and the
// shoulder across; farther in it is a trench across. The waste goes last (common practice).
[[nodiscard]] std::vector<SetUp> openJointSetUps(const ResolvedPiece& resolved,
                                                 std::size_t part,
                                                 const MortiseSolid& open);

// A trench across a part, sawn at both its sides and pared: what is cut out of it is `box`, open to
// `face`.
[[nodiscard]] std::vector<SetUp> trenchSetUps(std::size_t part,
                                              Face face,
                                              const Box& box,
                                              const std::string& work);

}  // namespace shoulderline
