#pragma once

#include <string>
#include <vector>

#include "core/joint/joint_sizing.h"

namespace shoulderline {

// One edge of a panel that is to stand in a groove.
struct GroovedTask {
    Length panelThickness;
    Length panelAcross;          // what the panel must fill, across its grain
    bool isAcrossGrain = false;  // whether the panel moves towards this edge
    Length memberThickness;      // of the grooved part, across the groove
    Length memberDepth;          // of the grooved part, behind the groove's mouth
};

// That edge by the rules, with the maker's own sizes over them. The tongue is as long as the groove
// is deep less the room at its bottom; the panel's face is rabbeted back by the depth of the groove
// where the panel is thicker than its tongue, so that it is clear of the groove's edge by the room.
struct GroovedEdge {
    Size tongueThickness;
    Size tongueLength;
    Size grooveWidth;
    Size grooveDepth;
    Size room;
    std::vector<std::string> troubles;

    [[nodiscard]] std::vector<FurtherSize> further() const;
    friend bool operator==(const GroovedEdge&, const GroovedEdge&) = default;
};

// Groove: a share of the grooved part taken to the nearest chisel, no wider than the panel is
// thick; about as deep as wide, twice the room at least, within what leaves a floor. Room: a share
// of the panel's width at edges that it moves towards, at its ends a little for an easy fit.
[[nodiscard]] GroovedEdge sizeGrooved(const GroovedTask& task,
                                      const SizingGuide& guide,
                                      const StatedSizes& stated);

// A board whose edge laps over the next one's, that it is tongued into.
struct TonguedTask {
    Length thickness;         // of the board with the tongue
    Length width;             // of it over its tongue
    Length laps;              // how far the two lap over one another
    Length groovedThickness;  // of the board with the groove
    Length groovedWidth;
};

// The tongue reaches into the next board as far as the two lap, in the middle of both; the groove
// is deeper by the room, and the board's faces stop short of the next one's edge by as much. The
// groove: a share of the grooved board taken to the nearest chisel. Room: as for a panel's edge.
[[nodiscard]] GroovedEdge sizeTongued(const TonguedTask& task,
                                      const SizingGuide& guide,
                                      const StatedSizes& stated);

}  // namespace shoulderline
