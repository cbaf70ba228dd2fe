#pragma once

#include "core/drawing/paper.h"

namespace shoulderline {

// The form that a laminated or steamed part is bent over, at full size: the curve of its face, the
// middle line and the far face of what lies on it, its middle, and the shoulder lines, with offsets
// from a straight base line at even stations and the springback that is allowed for. Needs a part
// with a bow that is bent. Lines of words are at most `widest` millimetres long.
[[nodiscard]] Sheet formPattern(
    const Piece&, const ResolvedPiece&, const ResolvedPart&, double widest, const TextMetrics&);

}  // namespace shoulderline
