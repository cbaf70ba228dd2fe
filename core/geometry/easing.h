#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/geometry/convex_solid.h"
#include "core/geometry/polyhedron.h"
#include "core/measure/result.h"

namespace shoulderline {

// The faces of a body by the way they look in its frame: sides lie across z, edges across y, and
// ends close it along x, square or cut to an angle.
enum class BodyFace { FaceSide, BackSide, FaceEdge, BackEdge, StartEnd, FarEnd };

// How the wood at an arris goes: to a flat, to a quarter of a circle (of an ellipse, where the two
// reaches differ), to a hollow quarter of one about the arris, or around an end to slopes that meet
// over its middle.
enum class EasingProfile { Chamfer, Round, Cove, Pyramid };

// Wood taken off along the arrises between the face `on` and the face `with`, or all around `on`;
// millimetres in the body's frame.
struct Easing {
    EasingProfile profile = EasingProfile::Chamfer;
    BodyFace on = BodyFace::FaceSide;
    std::optional<BodyFace> with = std::nullopt;  // none: all around `on`
    double onReach = 0.0;     // from the arris into `on`, > 0; of a pyramid not used
    double otherReach = 0.0;  // from the arris down the other face, > 0
    // A stopped easing lies between these along x and grows to its full reach, or dies out, over
    // `runOut` (>= 0) within them. Only with two faces.
    std::optional<double> from = std::nullopt;
    std::optional<double> to = std::nullopt;
    double runOut = 0.0;

    friend bool operator==(const Easing&, const Easing&) = default;
};

// Largest distance between a round-over or a cove and the facets that stand for it. Their edges lie
// on the curve, so those of a round-over lie inside the wood and those of a cove in its hollow.
inline constexpr double kEasingSagitta = 0.05;

// One straight stretch of an eased arris: the planes of the two faces that met there, and the
// planes that the wood is left behind.
struct EasedStretch {
    HalfSpace on;
    HalfSpace other;
    std::vector<HalfSpace> keeps;  // behind all of them, of a hollow behind any one
    bool isHollow = false;
    Extent along;            // in x
    bool isStopped = false;  // counts only within `along`
    bool isAtEnd = false;    // around an end
};

struct EasedSolid {
    Polyhedron solid;
    std::vector<EasedStretch> stretches;
};

// `solid`, a body in its own frame, with its arrises taken off one easing after the other. `ends`
// are the planes that its ends are cut to, where they are not square. Errors: OutOfRange for an
// arris that is not there, for a reach that leaves no face or turns the outline in on itself, for
// corners where more than three faces meet.
[[nodiscard]] Result<EasedSolid> eased(Polyhedron solid,
                                       std::span<const HalfSpace> ends,
                                       std::span<const Easing> easings);

// The same wood in convex pieces. Each stretch is clipped within its own length, so at a corner of
// a shaped outline that bends inwards the pieces keep a little that the solid has not.
[[nodiscard]] std::vector<ConvexSolid> easedPieces(std::vector<ConvexSolid> pieces,
                                                   std::span<const EasedStretch> stretches);

// How many facets stand for a round-over or a cove that reaches this far.
[[nodiscard]] int easingFacets(double reach);

}  // namespace shoulderline
