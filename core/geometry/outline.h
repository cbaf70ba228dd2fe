#pragma once

#include <vector>

#include "core/geometry/rect.h"
#include "core/geometry/vec.h"

namespace shoulderline {

// Largest distance between an arc and the chords that stand for it: 0.01 mm, a tenth of the finest
// line drawn.
inline constexpr double kArcSagitta = 0.01;

// One corner of an outline and the segment that leaves it. `bulge` is the tangent of a quarter of
// the angle that the segment turns through: 0 for a straight line, positive when it turns
// counter-clockwise, 1 for a half circle. The arc bows out by bulge * chord / 2, to the right of
// the way from this corner to the next when bulge > 0.
struct OutlineVertex {
    Vec2 point;
    double bulge = 0.0;

    friend bool operator==(const OutlineVertex&, const OutlineVertex&) = default;
};

// A circular arc of an outline: centre, radius, the start's direction from the centre and the angle
// swept from there (positive counter-clockwise), radians; |sweep| < 2 pi.
struct OutlineArc {
    Vec2 centre;
    double radius = 0.0;
    double start = 0.0;
    double sweep = 0.0;

    [[nodiscard]] Vec2 at(double fraction) const;
};

// The arc that leaves `from` with from.bulge != 0 and ends at `to` != from.point.
[[nodiscard]] OutlineArc arcOf(const OutlineVertex& from, Vec2 to);

// An outline as straight segments. isSmooth[i] tells that the outline runs through points[i]
// without a corner: inside an arc, or where an arc meets its neighbour in a common tangent.
struct FlatOutline {
    std::vector<Vec2> points;
    std::vector<bool> isSmooth;
};

// A closed ring of lines and arcs in a plane, counter-clockwise, the last point not repeated;
// millimetres. The ring is what it is given as; isProper() tells whether it bounds an area.
struct Outline {
    std::vector<OutlineVertex> vertices;

    friend bool operator==(const Outline&, const Outline&) = default;

    // From (0, 0) to (width, height), both > 0.
    [[nodiscard]] static Outline rectangle(double width, double height);
    // Straight segments between `points`, as they stand.
    [[nodiscard]] static Outline polygon(const std::vector<Vec2>& points);

    // Area enclosed, exact with arcs; negative for a clockwise ring.
    [[nodiscard]] double area() const;
    // The smallest rectangle around it, arcs included; all zero for an empty ring.
    [[nodiscard]] Rect bounds() const;
    // Chords that keep within `sagitta` (> 0) of the arcs, their ends on the arcs. The chord
    // polygon of an arc bowing outwards lies inside the outline.
    [[nodiscard]] FlatOutline flatten(double sagitta = kArcSagitta) const;
    // No two segments cross or touch but neighbours at their common point. Judged on the chords
    // of flatten().
    [[nodiscard]] bool isSimple() const;
    // Has no two neighbours in one place, is simple, and runs counter-clockwise.
    [[nodiscard]] bool isProper() const;
    // Turns only counter-clockwise (straight runs allowed), once around.
    [[nodiscard]] bool isConvex() const;
    // Whether `p` is inside or within 1e-7 mm of the ring; exact with arcs. Needs a simple ring.
    [[nodiscard]] bool contains(Vec2 p) const;
    // How far `p` lies from the ring, below zero where it is contained; exact with arcs. Needs a
    // simple ring with two vertices at least.
    [[nodiscard]] double outsideBy(Vec2 p) const;
};

}  // namespace shoulderline
