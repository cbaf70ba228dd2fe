#pragma once

#include <optional>
#include <vector>

#include "core/geometry/convex_solid.h"
#include "core/geometry/easing.h"
#include "core/geometry/outline.h"
#include "core/geometry/polyhedron.h"
#include "core/measure/result.h"

namespace shoulderline {

// A plane that the wood is worked to: what lies beyond it is gone. Facets of one curved surface
// have the same surface number.
struct PlaneCut {
    HalfSpace keeps;
    int surface = ConvexSolid::kOwnSurface;

    friend bool operator==(const PlaneCut&, const PlaneCut&) = default;
};

// The body of a part in the part's own frame: x along its length (the grain), y along its width, z
// along its thickness; millimetres. `face` lies in (x, y) and is extruded from z = 0 to z =
// thickness. `edge`, where present, is a second outline in (x, z), extruded through the whole
// width: the body is what both prisms share (a leg tapered both ways; a bent slat, whose edge
// outline goes beyond the thickness). `planes` then take off what lies beyond them (an end cut to
// an angle, a leg turned round), and `easings` what they take off its arrises, in their order.
struct Body {
    Outline face;
    double thickness = 0.0;
    std::optional<Outline> edge;
    std::vector<PlaneCut> planes = {};
    std::vector<Easing> easings = {};

    friend bool operator==(const Body&, const Body&) = default;

    // Plane-faced solid, arcs as facets within kArcSagitta. With a second outline, both must be
    // such that a line across the length meets them in one stretch. Errors: OutOfRange for
    // thickness <= 0, for an outline that is not proper, for outlines that share nothing or turn
    // back along the length, for planes that leave nothing, for easings that cannot be made.
    [[nodiscard]] Result<Polyhedron> toPolyhedron() const;
    // The same before its arrises are taken off.
    [[nodiscard]] Result<Polyhedron> uneased() const;
    // Volume in cubic millimetres: exact with arcs where the body is one outline extruded and not
    // cut by planes or easings, else that of toPolyhedron(). Same errors.
    [[nodiscard]] Result<double> volume() const;
    // The same solid in convex pieces that share no volume, see easedPieces(). Needs proper
    // outlines.
    [[nodiscard]] std::vector<ConvexSolid> pieces() const;
    // Whether it is a plain box with a corner at the origin.
    [[nodiscard]] bool isBox() const;

  private:
    [[nodiscard]] Result<Polyhedron> sharedByBoth() const;
    [[nodiscard]] std::vector<ConvexSolid> uneasedPieces() const;
    [[nodiscard]] std::vector<HalfSpace> endPlanes() const;
};

}  // namespace shoulderline
