#pragma once

#include <cstddef>

#include "core/geometry/vec.h"
#include "core/measure/angle.h"
#include "core/measure/length.h"
#include "core/piece/words.h"
#include "core/resolve/lean.h"
#include "core/rules/reason.h"

namespace shoulderline {

// A bore may tilt by as much from square to its face: past that no bit holds its centre (common
// practice).
inline constexpr Angle kMostTilt = Angle::degrees(60);

// A round or slotted hole as the maker stated it, in its part's own frame: what its box does not
// tell. A screw hole is two of them where its head is sunk: the one the screw slips through, and
// the wider one for the head. A slotted one is longer than wide along a unit vector on the face.
struct ResolvedHole {
    std::size_t cut = 0;  // in Part::cuts
    CutKind kind = CutKind::Bore;
    Vec3 mouth;       // the middle of its mouth, on the face it enters
    Vec3 into;        // along its axis into the wood, unit length
    Length diameter;  // of a countersink at the face
    Length depth;     // along its axis from the mouth to where it ends, or comes out
    Lean lean;        // as stated
    bool isForHead = false;
    ScrewHead head = ScrewHead::Plain;
    SlotWay slot = SlotWay::Round;
    Vec3 slotAlong;    // unit length; zero for a round hole
    Length slotWidth;  // the diameter of the hole that the screw slips through
    Size slotLength;   // of that hole, over its ends
    Size headWidth;
    Size headDepth;

    friend bool operator==(const ResolvedHole&, const ResolvedHole&) = default;
};

}  // namespace shoulderline
