#pragma once

#include <span>
#include <vector>

#include "core/geometry/polyhedron.h"
#include "core/geometry/vec.h"
#include "core/geometry/view.h"

namespace shoulderline {

// A face hides what lies behind it by more than this: 0.1 micrometre, so that flush and touching
// faces do not hide one another's edges.
inline constexpr double kNearerBy = 1e-4;
// Edges that run closer than this in the view lie on one line.
inline constexpr double kSameLine = 1e-3;

// A straight piece of an edge as seen in a view; millimetres in the view's plane.
struct ViewEdge {
    Vec2 a;
    Vec2 b;
    bool visible = true;
    int solid = 0;  // position in the span of solids
    int edge = 0;   // position in that solid's edges()

    friend bool operator==(const ViewEdge&, const ViewEdge&) = default;
};

// All edges of `solids` as seen in `view`, in the order of the solids and their edges, each cut
// into the fewest pieces that are wholly visible or wholly hidden. Smooth edges appear only where
// they bound what is seen of their surface; edges seen end-on (shorter than 1e-5 mm) are left out.
//
// A piece is hidden when front-facing faces lie before it on both its sides, so that an edge on the
// outline of what hides is visible, and one behind the seam of two flush faces is hidden. Solids
// may touch and run into one another; the line where two of them meet is not an edge and is not
// given. Edges of different solids that fall on one line are all reported: see mergeCoincident.
[[nodiscard]] std::vector<ViewEdge> hiddenLines(std::span<const Polyhedron> solids,
                                                const View& view);

// What is left to draw: hidden pieces under visible ones and repeats on the same line taken away.
// Of two edges on one line that are seen alike the longer is kept, then the earlier. Edges of one
// solid that run on in a line are given as one, with the number of the first.
[[nodiscard]] std::vector<ViewEdge> mergeCoincident(std::span<const ViewEdge> edges);

}  // namespace shoulderline
