#pragma once

#include <array>

#include "core/joint/grooved.h"
#include "core/resolve/relations.h"

namespace shoulderline {

// A panel with what its four edges have in their grooves: face edge, back edge, start end, far end
// of the panel as it is placed.
struct PlacedPanel {
    PlacedMember member;
    std::array<GroovedEdge, 4> edges;
    std::array<std::size_t, 4> neighbours{};  // of the four given, which lies at each edge
};

// The frame that a panel fills: its two edges and its two ends, in the order stated, with the
// maker's sizes for the joint of each.
struct PanelFrame {
    std::array<Neighbour, 4> around;
    std::array<StatedSizes, 4> stated;
};

// Where a panel lies that fills a frame, as large as the opening and its tongues. Empty, with a
// trouble at `place`, where the four do not stand around one opening.
[[nodiscard]] std::optional<PlacedPanel> placeFilling(const Part& part,
                                                      const Fills& fills,
                                                      const Section& section,
                                                      const PanelFrame& frame,
                                                      const SizingGuide& guide,
                                                      const Place& place,
                                                      Evaluation& evaluation);

}  // namespace shoulderline
