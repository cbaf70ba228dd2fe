#pragma once

#include <optional>
#include <span>

#include "core/geometry/body.h"
#include "core/geometry/polyhedron.h"

namespace shoulderline {

// What of `solid`, convex or not, lies in the half-space: faces that it crosses are cut, and the
// cut is closed by as many new faces as the plane meets separate pieces of wood. Empty when nothing
// thicker than kPlaneTolerance is left, or where the plane opens a ring-shaped cut, which a
// Polyhedron's faces cannot hold. Smooth edges stay smooth.
[[nodiscard]] std::optional<Polyhedron> cutByPlane(const Polyhedron& solid, const HalfSpace& keeps);

// Marks as smooth the edges between faces that lie in planes of one and the same curved surface.
void markSmooth(Polyhedron& solid, std::span<const PlaneCut> planes);

}  // namespace shoulderline
