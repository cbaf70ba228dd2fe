#pragma once

#include <optional>
#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// The wood behind a mouth, along the way into it: where the face lies there and where the part
// ends, from the plane of the blank's face; millimetres. Where the part is shaped or cut away the
// face is the deepest of it under the mouth, and the far one the nearest (for a through tenon the
// farthest).
struct WoodThere {
    double face = 0.0;
    double far = 0.0;
};

// How far from a point the first wood of a body lies along a line through it, which begins a long
// way before; below zero where it lies before the point. None where the line misses.
[[nodiscard]] std::optional<double> firstWood(const BodySolids& wood, Vec3 from, Vec3 way);

// `mouth` and the result in the frame of the joint's end (x into the wood), `inMortised` that frame
// in the part's. None where some of the mouth has no wood behind it at all.
[[nodiscard]] std::optional<WoodThere> woodBehind(const ResolvedPart& mortised,
                                                  const Frame& inMortised,
                                                  const Box& mouth,
                                                  bool isThrough);

// How far the reference face across a mortise is cut away beside it, in the middle of the mouth and
// at half of the mortise's depth. `mortise` in the part's own frame, entered along the axis `into`;
// `across` is 1 where it is measured from the face edge, 2 from the face side. What is shaped to a
// taper or a curve is marked out from the straight blank before; a rabbet leaves a face to mark
// from.
[[nodiscard]] Length referenceIn(const ResolvedPart& mortised,
                                 const Box& mortise,
                                 int into,
                                 int across);

// Whether a bore or a notch begins, at its middle, where the part's shape has taken the wood away:
// it is then cut, and its depth told, from the face of the blank. Of a bent part, which is cut once
// it is bent, none does.
[[nodiscard]] bool beginsInWaste(const ResolvedPart& part, const ResolvedCut& cut);

// Whether the reference face that places across a part are measured from (`across` 1: the face
// edge, 2: the face side) is shaped away at `along` from the part's start, millimetres: places are
// then told from the face of the blank. Of a bent part, which is marked out once it is bent, it is
// not.
[[nodiscard]] bool isReferenceShapedAway(const ResolvedPart& part, int across, double along);

}  // namespace shoulderline
