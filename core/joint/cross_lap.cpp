#include "core/joint/cross_lap.h"

#include "core/geometry/box_solids.h"
#include "core/joint/size_chain.h"

namespace shoulderline {

CrossLap crossLap(const CrossLapTask& task, const SizingGuide& guide, const StatedSizes& stated) {
    CrossLap lap;
    const std::optional<Box> shared = overlap(task.first, task.second);
    if (task.secondAlong == 0 || !shared) {
        lap.trouble = "the two do not run through one another, so they are not lapped";
        return lap;
    }
    const int through = 3 - task.secondAlong;  // neither runs along it: 0 is the first's
    const Length depth = Length::mm(shared->size()[through]);
    Size half = shareOf(depth, RuleId::CrossHalf, guide);
    state(half, stated[SizeName::LapDepth]);
    if (half.value >= depth - kLengthTolerance) {
        lap.trouble = "the lap would cut the first part through";
        return lap;
    }
    const bool fromHigh =
        task.second.centre()[through] >= task.first.centre()[through] - kLengthTolerance.mm();
    lap.outOfFirst = *shared;
    lap.outOfSecond = *shared;
    if (fromHigh) {
        const double split = shared->max[through] - half.value.mm();
        lap.outOfFirst.min[through] = split;
        lap.outOfFirst.max[through] = task.first.max[through];
        lap.outOfSecond.max[through] = split;
        lap.outOfSecond.min[through] = task.second.min[through];
    } else {
        const double split = shared->min[through] + half.value.mm();
        lap.outOfFirst.max[through] = split;
        lap.outOfFirst.min[through] = task.first.min[through];
        lap.outOfSecond.min[through] = split;
        lap.outOfSecond.max[through] = task.second.max[through];
    }
    if (through == 1) {
        lap.firstFace = fromHigh ? Face::BackEdge : Face::FaceEdge;
    } else {
        lap.firstFace = fromHigh ? Face::BackSide : Face::FaceSide;
    }
    lap.further.push_back({SizeName::LapDepth, std::move(half)});
    return lap;
}

}  // namespace shoulderline
