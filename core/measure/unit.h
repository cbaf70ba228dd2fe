#pragma once

#include "core/measure/length.h"

namespace shoulderline {

// What a bare number means in a piece: the unit that its maker works in.
enum class Unit { Inch, Millimetre };

// `amount` of `unit` as a length.
[[nodiscard]] constexpr Length lengthOf(double amount, Unit unit) {
    return unit == Unit::Inch ? Length::inches(amount) : Length::mm(amount);
}

// The longest length that is read or computed, either side of zero: one kilometre. Nothing built of
// wood comes near it, and doubles hold a nanometre at that size.
inline constexpr Length kLongestLength = Length::mm(1e6);

}  // namespace shoulderline
