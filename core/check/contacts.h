#pragma once

#include <functional>
#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Two parts that touch, or run through one another.
struct Contact {
    std::size_t first = 0;
    std::size_t second = 0;
    double depth = 0.0;  // how far they run into one another: the least extent of what both fill; 0
                         // where they only touch. Millimetres
    double volume = 0.0;  // of what both fill, cubic millimetres
};

// Every pair of parts whose bodies touch or share space, and every tenon that runs into a third
// part, found with a spatial index. Touching within 0.01 mm counts; two parts that `mayTouch` are
// passed over where they only touch, which saves looking at them closely.
[[nodiscard]] std::vector<Contact> contactsOf(
    const ResolvedPiece& resolved,
    const std::function<bool(std::size_t first, std::size_t second)>& mayTouch = nullptr);

}  // namespace shoulderline
