#pragma once

#include "core/joint/joint_sizing.h"

namespace shoulderline {

// A dowelled butt: dowels in a row along the width, their diameter a share of the part, taken to
// the nearest bit; some diameters deep in each part, within what leaves a floor. One dowel in a
// part too narrow for two at three diameters apart, else one for each four diameters of width.
[[nodiscard]] SizedJoint sizeDowels(const JointTask& task,
                                    const SizingGuide& guide,
                                    const StatedSizes& stated);
[[nodiscard]] JointCuts cutDowels(const JointTask& task, const SizedJoint& sized);

}  // namespace shoulderline
