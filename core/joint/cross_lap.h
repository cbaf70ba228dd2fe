#pragma once

#include <string>
#include <vector>

#include "core/joint/joint_sizing.h"

namespace shoulderline {

// Two parts that run on through one another, both as boxes in the frame of the first, whose length
// runs along axis 0; the second's along `secondAlong`, another one.
struct CrossLapTask {
    Box first;
    Box second;
    int secondAlong = 1;
};

// What is cut out of each, in the frame of the task: together all of what both would fill.
struct CrossLap {
    std::vector<FurtherSize> further;  // how deep the cut in the first is
    Box outOfFirst;
    Box outOfSecond;
    Face firstFace = Face::BackSide;  // of the first, that its cut is open to
    std::string trouble;              // one sentence where they do not cross; then nothing else
};

// Half of the depth that both share goes out of each, along the axis that neither runs along: out
// of the first at the side that the second lies to, or comes in from its back side or back edge
// where they lie flush. Sources: Fairham, Woodwork Joints, halved joints.
[[nodiscard]] CrossLap crossLap(const CrossLapTask& task,
                                const SizingGuide& guide,
                                const StatedSizes& stated);

}  // namespace shoulderline
