#pragma once

#include "core/joint/joint_sizing.h"

namespace shoulderline {

// A member let in with its whole section; or housed: its housing runs across the whole face, or
// stops short of the face edge, where the member is notched around what is left.
[[nodiscard]] SizedJoint sizeLetIn(const JointTask& task,
                                   const SizingGuide& guide,
                                   const StatedSizes& stated);
[[nodiscard]] JointCuts cutLetIn(const JointTask& task, const SizedJoint& sized);

}  // namespace shoulderline
