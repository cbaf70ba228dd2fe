#pragma once

#include <array>

#include "core/piece/words.h"

namespace shoulderline {

// All roles, in the order in which they are offered to choose from.
inline constexpr std::array<Role, 11> kRoles{Role::Post,
                                             Role::Rail,
                                             Role::Stretcher,
                                             Role::Stile,
                                             Role::Slat,
                                             Role::Spindle,
                                             Role::Arm,
                                             Role::Seat,
                                             Role::Panel,
                                             Role::Bracket,
                                             Role::Cleat};

}  // namespace shoulderline
