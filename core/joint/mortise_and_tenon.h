#pragma once

#include "core/joint/joint_sizing.h"

namespace shoulderline {

// Sizes a mortise and tenon: blind, through, stub or loose, with whatever it has besides.
// Thickness: a share of the part, taken to the nearest chisel (slats: what their cheek shoulders
// leave, taken to the next chisel down; a stub: as wide as its groove; twins: a smaller share
// each). Width: what the edge shoulders leave, capped by its ratio to the thickness but not under a
// share of the part (doubles: a share each). Length: a share of what it enters, within what leaves
// a floor (through: all of it and the projection). Sources: the rule book. The tenon stands in the
// middle (bare-faced: flush with the back side; haunched: past the haunch); a stated shoulder
// places it from that side, and of two stated ones across from one another the tenon is what they
// leave (a tenon stated as well, or shoulders that leave none, are told in `troubles`: then the
// shoulders decide, or the second one is left out). The mouth is as the tenon, or as stated about
// the tenon's middle.
[[nodiscard]] SizedJoint sizeMortiseAndTenon(const JointTask& task,
                                             const SizingGuide& guide,
                                             const StatedSizes& stated);
[[nodiscard]] JointCuts cutMortiseAndTenon(const JointTask& task,
                                           const SizedJoint& sized,
                                           const SizingGuide& guide);

// Length of a blind tenon and depth of its mortise, with the maker's own over them: for any joint
// that ends in the wood.
void sizeBlindLength(const JointTask& task,
                     const SizingGuide& guide,
                     const StatedSizes& stated,
                     SizedJoint& joint);

// The widest chisel not over `size`; the narrowest there is when all are over it.
[[nodiscard]] Length chiselWithin(std::span<const Length> rack, Length size);

}  // namespace shoulderline
