#pragma once

#include <span>

namespace shoulderline {

// What is known of bending wood. Lengths in millimetres.

// The share of its curvature that a stack of equal plies loses when it comes off the form: 1 / n^2,
// for plies >= 1. Plies slip on one another until the glue sets, then act as one beam; the relation
// is that of boatbuilders' forms (rise lost = rise / n^2) and follows from beam theory. It knows
// nothing of creep, set or moisture. One ply alone returns fully.
[[nodiscard]] double springbackShare(int plies);
// The same for plies of one species and unlike thicknesses (all > 0): the sum of the cubes over the
// cube of the sum.
[[nodiscard]] double springbackShare(std::span<const double> thicknesses);

// The radius over the thickness at which a dry ply reaches its bending strength on the surface:
// strain = thickness / (2 radius) = rupture / elasticity. Moduli in MPa, > 0. A bound, not an
// allowance: of clear, straight-grained wood, without any safety.
[[nodiscard]] double ruptureRadiusShare(double elasticityMpa, double ruptureMpa);

// The board that plies come from, sawn side by side off it: `thickness` through the plies as they
// lie in it, with `planing` taken off each face of a ply and a `kerf` between neighbours.
[[nodiscard]] double boardForPlies(int plies, double ply, double planing, double kerf);

}  // namespace shoulderline
