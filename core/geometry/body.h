#pragma once

#include <optional>

#include "core/geometry/convex_solid.h"
#include "core/geometry/outline.h"
#include "core/geometry/polyhedron.h"
#include "core/measure/result.h"

namespace shoulderline {

// The body of a part in the part's own frame: x along its length (the grain), y along its width, z
// along its thickness; millimetres. `face` lies in (x, y) and is extruded from z = 0 to z =
// thickness. `edge`, where present, is a second outline in (x, z), extruded through the whole
// width: the body is what both prisms share (a leg tapered both ways, a bowed slat).
struct Body {
    Outline face;
    double thickness = 0.0;
    std::optional<Outline> edge;

    friend bool operator==(const Body&, const Body&) = default;

    // Plane-faced solid, arcs as facets within kArcSagitta. With a second outline, both must be
    // such that a line across the length meets them in one stretch. Errors: OutOfRange for
    // thickness <= 0, for an outline that is not proper, for an edge outline that goes beyond the
    // thickness, for outlines that share nothing or turn back along the length.
    [[nodiscard]] Result<Polyhedron> toPolyhedron() const;
    // Volume in cubic millimetres: exact with arcs where the body is one outline extruded, else
    // that of toPolyhedron(). Same errors.
    [[nodiscard]] Result<double> volume() const;
    // The same solid in convex pieces that share no volume. Needs proper outlines.
    [[nodiscard]] std::vector<ConvexSolid> pieces() const;
    // Whether it is a plain box with a corner at the origin.
    [[nodiscard]] bool isBox() const;
};

}  // namespace shoulderline
