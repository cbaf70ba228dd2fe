#pragma once

#include <array>

#include "core/resolve/relations.h"

namespace shoulderline {

// Runs each end of a member that lies square, along the axis `along` of its assembly's space, on or
// back to the face that it meets, where that is shaped: its box and length change, and an end whose
// shoulder follows the face at an angle gets its plane. The face itself is cut level, where that is
// the fit, with the joint.
void fitToShapes(ShoulderFit fit,
                 const std::array<Neighbour, 2>& ends,
                 int along,
                 PlacedMember& member);

}  // namespace shoulderline
