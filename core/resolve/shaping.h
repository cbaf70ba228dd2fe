#pragma once

#include <vector>

#include "core/joint/joint_sizing.h"
#include "core/resolve/evaluation.h"
#include "core/resolve/known_solids.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// The body that `shape` makes of a blank `size` large (length, width, thickness), in the part's
// frame, worked to `section` first. What cannot be worked out, or bounds no wood, is a trouble at
// `place`, and the blank comes back whole.
[[nodiscard]] Body shapedBody(const Shape& shape,
                              SectionForm section,
                              const Vec3& size,
                              const Place& place,
                              Evaluation& evaluation);

// Takes the easings of `part` off the arrises of the resolved part's body, tells them there and
// works its solids out. One that cannot be worked out or made is a trouble at `place`, with the
// largest that can, and is left out.
void easeArrises(const Part& part,
                 const Place& place,
                 const KnownSolids& known,
                 Evaluation& evaluation,
                 ResolvedPart& resolved);

// The cuts of a part whose blank is `size` large; what cannot be worked out, or lies outside the
// blank, is a trouble at `place` and left out.
[[nodiscard]] std::vector<ResolvedCut> workOutCuts(const std::vector<CutStatement>& cuts,
                                                   const Vec3& size,
                                                   const Place& place,
                                                   const SizingGuide& guide,
                                                   Evaluation& evaluation);

}  // namespace shoulderline
