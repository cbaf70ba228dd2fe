#pragma once

#include <optional>
#include <span>

#include "core/geometry/box.h"
#include "core/geometry/polyhedron.h"

namespace shoulderline {

// What is left of `blank` without the hollows, all boxes of one frame, as one solid whose drawn
// edges are its real ones; millimetres. Hollows may reach out of the blank and into one another.
// None where nothing is left, or where two corners of what is left touch in an edge alone.
[[nodiscard]] std::optional<Polyhedron> carvedBox(const Box& blank, std::span<const Box> hollows);

}  // namespace shoulderline
