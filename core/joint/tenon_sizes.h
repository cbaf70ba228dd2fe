#pragma once

#include "core/joint/joint_sizing.h"

namespace shoulderline {

// The sizes of a tenon one by one, by the rules, before the maker's own are put over them.

// Slats and spindles are let in: their shoulders and lengths are small ones.
[[nodiscard]] bool isLetIn(Role role);

[[nodiscard]] Size tenonThickness(const JointTask& task, const SizingGuide& guide);
// The shoulder at each edge that the rule book asks of such a part.
[[nodiscard]] Size edgeShoulder(const TenonedSection& section, const SizingGuide& guide);
[[nodiscard]] Size tenonWidth(const TenonedSection& section,
                              Length thickness,
                              const Size& edgeShoulder,
                              const SizingGuide& guide);

// Length and projection of a through tenon and depth of its mortise, with the maker's own over
// them; sizeBlindLength() in mortise_and_tenon.h is the same for one that ends in the wood.
void sizeThrough(SizedJoint& joint,
                 const JointTask& task,
                 const SizingGuide& guide,
                 const StatedSizes& stated);

}  // namespace shoulderline
