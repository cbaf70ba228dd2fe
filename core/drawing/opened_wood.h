#pragma once

#include <optional>

#include "core/geometry/polyhedron.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Whether a hollow of the part's frame is open on two neighbouring sides of its blank, as a lap, a
// trench or a rabbet is: a mouth on one face does not tell what it looks like.
[[nodiscard]] bool isOpenAcrossArris(const ResolvedPart& part, const Box& hollow);

// The body, in the part's frame, less the hollows that are so, as it looks before its mates are in.
// None for a part that has none of them, or whose body or hollows are no boxes.
[[nodiscard]] std::optional<Polyhedron> openedWood(const ResolvedPart& part);

}  // namespace shoulderline
