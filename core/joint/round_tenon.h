#pragma once

#include "core/joint/joint_sizing.h"

namespace shoulderline {

// A round tenon in a bored hole: its diameter a share of the thinner way of the part, taken to the
// nearest bit; in the middle of the part; as long as a blind tenon. Thickness, width and diameter
// are one and the same; a stated thickness or diameter decides.
[[nodiscard]] SizedJoint sizeRoundTenon(const JointTask& task,
                                        const SizingGuide& guide,
                                        const StatedSizes& stated);
[[nodiscard]] JointCuts cutRoundTenon(const JointTask& task, const SizedJoint& sized);

}  // namespace shoulderline
