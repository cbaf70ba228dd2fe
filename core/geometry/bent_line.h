#pragma once

#include <span>
#include <vector>

#include "core/geometry/outline.h"

namespace shoulderline {

// A circular arc over a chord, millimetres and radians. `rise` is how far its middle stands off the
// chord, `angle` the angle between the radii to its ends.
struct ArcOverChord {
    double chord = 0.0;
    double rise = 0.0;
    double radius = 0.0;
    double angle = 0.0;
    double length = 0.0;
};

// chord > 0, 0 < rise <= chord / 2: radius = (chord^2 / 4 + rise^2) / (2 rise), angle = 4 atan(2
// rise / chord).
[[nodiscard]] ArcOverChord arcOfRise(double chord, double rise);
// chord > 0, radius >= chord / 2; the lesser of the two arcs.
[[nodiscard]] ArcOverChord arcOfRadius(double chord, double radius);

// An open line of straight runs and arcs, from its first vertex to its last, whose bulge is zero;
// two vertices at least, no two neighbours in one place.
using BentLine = std::vector<OutlineVertex>;

// The arc over a chord from (0, 0) to (chord, 0), rising to y = rise.
[[nodiscard]] BentLine lineOf(const ArcOverChord& arc);
[[nodiscard]] double lengthOf(const BentLine& line);
// The smallest radius in it; infinity for a straight line.
[[nodiscard]] double leastRadius(const BentLine& line);
// How far it stands off its chord at most, to the left of the way from its first to its last point
// (y upwards for a line along x).
[[nodiscard]] double riseOf(const BentLine& line);
// The direction at its first and its last point, radians from x, counter-clockwise.
[[nodiscard]] double headingAtStart(const BentLine& line);
[[nodiscard]] double headingAtEnd(const BentLine& line);
// The line `by` to the left of it (negative: to the right) all along: arcs about the same centres.
// Needs by < every radius on its hollow side.
[[nodiscard]] BentLine beside(const BentLine& line, double by);
// The line as long in each of its runs, bent `factor` times as tightly (> 0), its ends on the x
// axis, the first at (0, 0).
[[nodiscard]] BentLine bentAnew(const BentLine& line, double factor);
// The line cut, or run on with its outermost arcs, to where x = `low` and x = `high`. Where an arc
// does not reach there it is left as it ends.
[[nodiscard]] BentLine between(const BentLine& line, double low, double high);
// What lies between two lines that run the same way, `lower` to the right of `upper`.
[[nodiscard]] Outline outlineBetween(const BentLine& lower, const BentLine& upper);

}  // namespace shoulderline
