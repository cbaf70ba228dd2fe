#pragma once

#include <vector>

#include "core/resolve/evaluation.h"

namespace shoulderline {

// A set laid out along an axis: the low edge of each member, ascending, and the gap between them.
struct SetLayout {
    std::vector<double> lows;  // millimetres
    Length gap;
};

// Lays out members of `width` between `low` and `high` (millimetres) as `spacing` asks: with equal
// gaps, or at a pitch with the set in the middle. Empty, with a trouble, where they do not fit or
// nothing says how many.
[[nodiscard]] SetLayout layOut(const Spacing& spacing,
                               double low,
                               double high,
                               Length width,
                               const Place& place,
                               Evaluation& evaluation);

}  // namespace shoulderline
