#pragma once

#include "core/geometry/vec.h"
#include "core/measure/angle.h"

namespace shoulderline {

// A parallel view of space (x to the right as one faces the piece, y from front to back, z up):
// three unit directions at right angles, right-handed: cross(right, up) = towardsViewer.
struct View {
    Vec3 right;
    Vec3 up;
    Vec3 towardsViewer;

    friend bool operator==(const View&, const View&) = default;

    // The viewer stands before the piece and looks to the back.
    [[nodiscard]] static constexpr View front() { return {{1, 0, 0}, {0, 0, 1}, {0, -1, 0}}; }
    // Seen from the right hand side; the front of the piece is at the left.
    [[nodiscard]] static constexpr View side() { return {{0, 1, 0}, {0, 0, 1}, {1, 0, 0}}; }
    // Seen from above; the front of the piece is at the bottom.
    [[nodiscard]] static constexpr View plan() { return {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}; }
    // The viewer walks from the front around to the right hand side by `turn` and looks down from
    // `tilt` above the horizontal; verticals stay upright for |tilt| < 90 degrees.
    // Turn 45 degrees with tilt asin(tan 30 degrees) = 35.264 degrees shortens all three axes
    // alike.
    [[nodiscard]] static View axonometric(Angle turn, Angle tilt);

    // Where a point of space appears.
    [[nodiscard]] constexpr Vec2 project(Vec3 p) const { return {dot(p, right), dot(p, up)}; }
    // How near it is: greater is nearer to the viewer.
    [[nodiscard]] constexpr double nearness(Vec3 p) const { return dot(p, towardsViewer); }
};

}  // namespace shoulderline
