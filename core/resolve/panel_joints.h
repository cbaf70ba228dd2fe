#pragma once

#include <span>

#include "core/resolve/placing.h"

namespace shoulderline {

// Cuts the groove of one edge of a panel into the part there, the rabbet that leaves its tongue
// into the panel, and adds the joint. The groove runs as far as the panel needs, and on over
// `also`, a stretch of the grooved part's length, where there is one.
// False where the two do not stand square to one another.
[[nodiscard]] bool placeGrooved(const JointSeed& seed,
                                const std::optional<Extent>& also,
                                ResolvedPiece& resolved);

// A part of the same frame that stands at one end of the groove: which (index in
// ResolvedPiece::parts), and the stretch of the grooved part's length that it covers, millimetres.
struct FrameCorner {
    std::size_t other = 0;
    Extent covers;
};
[[nodiscard]] std::vector<FrameCorner> cornersOf(const JointSeed& seed,
                                                 std::span<const JointSeed> seeds,
                                                 const ResolvedPiece& resolved);

// Which way two boards lap over one another, the first seen from its own frame; empty where they do
// not lie edge to edge in one plane with their lengths alike.
struct LappedEdges {
    bool atBackEdge = true;  // of the first, that the second begins at
    Length by;
};
[[nodiscard]] std::optional<LappedEdges> lappedEdges(const ResolvedPart& first,
                                                     const ResolvedPart& second);

// Cuts a tongue along that edge of the first and its groove into the second, and adds the joint.
// One sentence for each thing that cannot be.
[[nodiscard]] std::vector<std::string> placeTongued(std::size_t first,
                                                    std::size_t second,
                                                    const LappedEdges& edges,
                                                    const SizingGuide& guide,
                                                    const StatedSizes& stated,
                                                    ResolvedPiece& resolved);

// A cross lap between two parts that run through one another: cuts both and adds the joint. One
// sentence where it cannot be; empty where all is well.
[[nodiscard]] std::string placeCrossLap(std::size_t first,
                                        std::size_t second,
                                        const SizingGuide& guide,
                                        const StatedSizes& stated,
                                        ResolvedPiece& resolved);

}  // namespace shoulderline
