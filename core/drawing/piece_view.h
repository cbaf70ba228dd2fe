#pragma once

#include <array>
#include <vector>

#include "core/drawing/sheet.h"
#include "core/drawing/swing_positions.h"
#include "core/geometry/view.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// The piece in one elevation: what is drawn, in true millimetres of the view's plane (x right, y
// UP), each line with the part it belongs to. Visible and hidden edges by hidden-line removal over
// bodies and tenons.
struct ElevationLine {
    Vec2 a;
    Vec2 b;
    bool isVisible = true;
    std::size_t part = 0;
};
// A place in sight on a face of a part.
struct PartSpot {
    Vec2 at;
    std::size_t part = 0;
};
struct Elevation {
    std::vector<ElevationLine> lines;
    std::vector<std::vector<Vec2>>
        outlines;  // by part: what it covers in the view, for picking and tinting
    std::vector<std::size_t> nearestFirst;  // parts, for picking what is in front
    Vec2 min;                               // of the lines
    Vec2 max;
    std::vector<SwungView> stations = {};  // of backs that swing, seen from the side
    std::vector<PartSpot> spots = {};      // on faces in sight; none where not asked for
    Vec2 allMin = {};                      // of the lines and the outlines at other stations
    Vec2 allMax = {};
};
// What is worked out only where it is asked for.
struct ElevationExtras {
    bool bores = false;  // the round holes that parts have for no joint, as for pivot pins and pegs
    bool spots = false;
};
// What a body covers in the view, `placed` its polyhedron in space: its outline where the view
// looks straight at it, else the hull.
[[nodiscard]] std::vector<Vec2> coveredBy(const ResolvedPart& part,
                                          const Polyhedron& placed,
                                          const View& view);

[[nodiscard]] Elevation elevationOf(const ResolvedPiece& piece,
                                    const View& view,
                                    const ElevationExtras& extras = {});
// Front, side and plan, worked out side by side on threads of their own.
[[nodiscard]] std::array<Elevation, 3> elevationsOf(const ResolvedPiece& piece,
                                                    const ElevationExtras& extras = {});

// The elevation as ops of a sheet at `scale` (drawing to wood), the origin of the view at (0, 0)
// and y turned DOWN: tints from the farthest to the nearest part, then the lines, each in a group
// of its part.
[[nodiscard]] std::vector<Op> elevationOps(const ResolvedPiece& resolved,
                                           const Elevation& elevation,
                                           double scale);

// Adds the elevation's spots as they lie on a sheet at `scale`, the view moved there by `by`.
void addSpots(const Elevation& elevation, double scale, Vec2 by, std::vector<PartSpot>& spots);

}  // namespace shoulderline
