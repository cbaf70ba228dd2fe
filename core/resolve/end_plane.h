#pragma once

#include <optional>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Ends that are cut to a plane: a shoulder that follows a leaning post, one square to a curve.

// The plane that an end of a body is cut to, the body's wood within, in the part's own frame; none
// for an end left as the outline has it. Planes along the part shape its sides and are none.
[[nodiscard]] std::optional<HalfSpace> endPlaneOf(const Body& body, End end);

// Where the end's plane crosses the line along the part through (y, z) of its own frame; the
// blank's end where none cuts it. Millimetres.
[[nodiscard]] double endAt(const ResolvedPart& part, End end, double y, double z);

// The part's body along the arris of its face side and face edge, where a maker knifes its
// shoulders first: shorter than ResolvedPart::shoulderLength, which reaches over all corners, where
// they are slanted. A round part has no arris: all of it.
[[nodiscard]] Extent alongFaceArris(const ResolvedPart& part);

}  // namespace shoulderline
