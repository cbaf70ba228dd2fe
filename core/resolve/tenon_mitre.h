#pragma once

#include <functional>
#include <optional>

#include "core/measure/angle.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// The end of a tenon that is cut aslant, so that a neighbour's goes by.
struct TenonMitre {
    Face longer = Face::FaceSide;  // the sides of the part at which it is longest and shortest
    Face shorter = Face::BackSide;
    double longest = 0.0;  // millimetres from the shoulder
    double shortest = 0.0;
    Angle angle;  // of the cut, from square
};

// `reachOf` gives how far a point stands out past the shoulder, in millimetres. None for an end
// that is square.
[[nodiscard]] std::optional<TenonMitre> mitreOf(const TenonSolid& tenon,
                                                const std::function<double(const Vec3&)>& reachOf);

}  // namespace shoulderline
