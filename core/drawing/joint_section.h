#pragma once

#include <vector>

#include "core/drawing/joint_members.h"

namespace shoulderline {

using Ring = std::vector<Vec2>;  // convex, counter-clockwise with y up; closed, the last point not
                                 // repeated

// What the plane through the middle of the main tenon, along its width, cuts of a joint that is
// together, its wedges driven: x and y of the joint's frame times `scale`.
struct SectionedJoint {
    Ring rail;
    std::vector<Ring> tenons;
    std::vector<Ring> post;         // in convex pieces
    std::vector<Ring> hollows;      // in the mortised part
    std::vector<Ring> ownHollows;   // in the rail and its tenons
    std::vector<Ring> smalls = {};  // pins, plugs and wedges
};
[[nodiscard]] SectionedJoint sectionOf(const JointMembers& members, double scale);

// What the plane z = `at` cuts of a convex solid, times `scale`; empty where it does not.
[[nodiscard]] Ring ringAt(const Polyhedron& solid, double at, double scale);

// A straight line of a drawing.
struct SectionLine {
    Vec2 a;
    Vec2 b;
};

// The outline of what the rings cover together: their sides less what runs inside, and less what
// lies under other wood, with that on both hands.
[[nodiscard]] std::vector<SectionLine> outlineOf(const std::vector<Ring>& rings,
                                                 const std::vector<Ring>& under = {});

}  // namespace shoulderline
