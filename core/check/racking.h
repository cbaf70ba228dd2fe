#pragma once

#include <cstddef>
#include <vector>

#include "core/check/sway_frame.h"
#include "core/resolve/resolved_piece.h"
#include "core/timber/species.h"

namespace shoulderline {

// Two ways that a frame can be pushed out of square in: across (x) and in depth (y).
enum class RackingWay { Across, InDepth };

// A level member between two posts, with the joints at its ends.
struct RackingMember {
    std::size_t part = 0;
    std::size_t fromJoint = 0;
    std::size_t toJoint = 0;
};

// A set of posts on the floor and the members between them that run one way: what stands against
// racking that way. Its joints' tenons stand upright, so that they are bent the strong way; members
// that lie flat are left out, which leaves more to the others.
struct RackingFrame {
    RackingWay way = RackingWay::Across;
    std::size_t body = 0;            // which of the bodies that joints hold together it belongs to
    std::vector<std::size_t> posts;  // parts, in order along the way
    std::vector<double> places;      // of their middles along the way, millimetres
    std::vector<RackingMember> members;
    SwayFrame sway;  // without forces, feet held; posts and members in the order above
};

// The racking frames of a piece, and for each part which body it belongs to (parts held together by
// joints, counted from 0). Stiffness from the published modulus of elasticity, 11,000 MPa where
// there is none.
struct RackingFrames {
    std::vector<RackingFrame> frames;
    std::vector<std::size_t> bodyOf;  // by part
    double floor = 0.0;               // level of the lowest post's foot
};
[[nodiscard]] RackingFrames rackingFrames(const Piece& piece,
                                          const ResolvedPiece& resolved,
                                          const SpeciesTable& species);

}  // namespace shoulderline
