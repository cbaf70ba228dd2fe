#pragma once

#include "core/joint/joint_sizing.h"

namespace shoulderline {

// A bridle: stock in three equal parts (Fairham). At a corner the tenon goes into a slot open at
// the end of the other part; in the middle the other part keeps its middle third, which the slotted
// end of this one straddles. Needs parts in one plane: a mouth whose width runs along the other
// part.
[[nodiscard]] SizedJoint sizeBridle(const JointTask& task,
                                    const SizingGuide& guide,
                                    const StatedSizes& stated);
[[nodiscard]] JointCuts cutBridle(const JointTask& task, const SizedJoint& sized);

// A lap: half of each part's thickness, through the whole of the other part; at a corner, a tee or
// a cross alike. The half at the back side goes.
[[nodiscard]] SizedJoint sizeLap(const JointTask& task,
                                 const SizingGuide& guide,
                                 const StatedSizes& stated);
[[nodiscard]] JointCuts cutLap(const JointTask& task, const SizedJoint& sized);

}  // namespace shoulderline
