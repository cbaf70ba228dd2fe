#pragma once

#include "core/joint/joint_sizing.h"
#include "core/resolve/evaluation.h"

namespace shoulderline {

// The sizes that the maker states for a joint, worked out; none for a null statement. What cannot
// be worked out is a trouble at the joint, and left out.
[[nodiscard]] StatedSizes statedSizesOf(const JointStatement* statement, Evaluation& evaluation);

}  // namespace shoulderline
