#pragma once

#include <string>
#include <string_view>

#include "core/measure/angle.h"
#include "core/measure/result.h"

namespace shoulderline {

// The widest angle that is read or computed, either side of zero: ten turns.
inline constexpr Angle kWidestAngle = Angle::degrees(3600);

// Reads an angle: 104°, 104 deg, 12.5, 7 1/2°, 12° 30', 12° 30' 15". A number without a unit is
// degrees. A sign (+ - −) may stand before it. The text must be one angle and nothing else.
// Errors: EmptyText, BadText, WrongDimension (a length), OutOfRange (over ten turns); position is
// the byte where the reading stopped.
[[nodiscard]] Result<Angle> readAngle(std::string_view text);

// Shows an angle in degrees to the nearest tenth, the decimal only when needed: 104°, 12.5°, −7°.
[[nodiscard]] std::string showAngle(Angle angle);

}  // namespace shoulderline
