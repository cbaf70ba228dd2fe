#pragma once

#include "core/drawing/joint_drawing.h"

namespace shoulderline {

// A joint without a tenon in section: a panel's edge in its groove, a cross lap cut both ways, a
// butt through its first dowel or screw; both parts hatched, the cut dimensioned. Top left
// anywhere.
[[nodiscard]] std::vector<Op> cutJointOps(const Piece& piece,
                                          const ResolvedPiece& resolved,
                                          std::size_t joint,
                                          const JointStyle& style,
                                          const TextMetrics& metrics);

// How wide such a drawing is, in millimetres of wood.
[[nodiscard]] double widthOfCutJoint(const ResolvedPiece& resolved, std::size_t joint);

}  // namespace shoulderline
