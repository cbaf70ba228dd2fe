#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet.h"

namespace shoulderline {

// Both hands of a pair over one another, small: the face side drawn, and its mirror image.
struct PairDrawing {
    std::vector<Op> drawn;  // the face side as it is drawn, its body's top left corner at (0, 0)
    double length = 0.0;    // of the body, on the sheet
    double height = 0.0;
    std::string drawnHand;  // "right"; may be empty
    std::string otherHand;
};
[[nodiscard]] std::vector<Op> pairOps(const PairDrawing& pair, double lettering);

// Ops without lettering, mirrored about the upright line at x = `at`.
[[nodiscard]] std::vector<Op> mirrored(std::vector<Op> ops, double at);

}  // namespace shoulderline
