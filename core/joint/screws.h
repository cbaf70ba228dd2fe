#pragma once

#include <functional>

#include "core/joint/joint_sizing.h"

namespace shoulderline {

// Two parts that lie on one another, both as boxes in the frame of the one that the screws go
// through.
struct ScrewTask {
    Box through;
    Box into;
    bool isPlugged = false;  // heads sunk, under plugs
    // How far the wood of the first lies in from its box under a hole's mouth, which goes in along
    // an axis of the frame in the given way; millimetres. Not there for a part that fills its box;
    // none where there is no wood behind it.
    std::function<std::optional<double>(const Box& mouth, int axis, double way)> woodIn = nullptr;
};

// A row of screws along the middle of the longer way of what the two share, through the whole of
// the first and into the second: the clearance holes in the one, the pilot holes in the other.
struct ScrewedButt {
    std::vector<FurtherSize> further;  // diameter of the screw, depth of its pilot hole; plugs
    std::vector<JointBore> clearance;  // in the frame of the task
    std::vector<JointBore> plugs;      // counterbores
    std::vector<JointBore> pilot;
    std::string trouble;  // one sentence where there is no screwing them; then nothing else
};

// Diameter: a share of the part that is held, where it is thinnest; depth: some diameters into the
// other, within what leaves a floor; one screw where they share little, else one for each 150 mm,
// two at least. Plug: some screw diameters wide, to the nearest bit; sunk a share of that where the
// part is thinnest, at most half of it, and elsewhere as much deeper as the part is thicker, so
// that screws of one length serve (common practice).
[[nodiscard]] ScrewedButt screwButt(const ScrewTask& task,
                                    const SizingGuide& guide,
                                    const StatedSizes& stated);

// A wood screw as it is sold: its gauge number, 0 for none of those in the table, and its length.
struct SoldScrew {
    int gauge = 0;
    Length length;
};
// The thickest of the gauges No. 4 to No. 14 (even numbers) that goes through a clearance hole of
// `diameter`, and the longest by steps of 1/4 in (`inInches`) or 5 mm that is not longer than
// `reach`, from under its head to the foot of its pilot hole. No gauge where the hole is smaller
// than the first or more than a gauge wider than the last. Shank of No. N: 0.060 in + N x 0.013 in
// (table of American wood screws); a hole counts as wide enough that is up to 0.003 in under that,
// as the charts bore 7/64 in for No. 4 and 3/16 in for No. 10. Steps of length: common practice.
[[nodiscard]] SoldScrew soldScrew(Length diameter, Length reach, bool inInches);

}  // namespace shoulderline
