#pragma once

#include <string>

#include "core/measure/angle.h"
#include "core/piece/words.h"

namespace shoulderline {

struct ResolvedPart;

// How a hollow leans as it goes in, from square to the face it enters: along that face and across
// it, above zero towards where the face is measured to (see axesOn).
struct Lean {
    Angle along;
    Angle across;

    // Out of square to the face: the table's tilt for cutting it. tan2 = tan2(along) +
    // tan2(across), as for any compound angle from its two views.
    [[nodiscard]] Angle tilt() const;
    // The direction in which it leans on the face, from the way the face is measured along, towards
    // the way it is measured across; within half a turn. Zero for one that is square.
    [[nodiscard]] Angle turn() const;
    [[nodiscard]] bool isTilted() const;
    friend bool operator==(const Lean&, const Lean&) = default;
};

// "leans 10°, 1 in 5.7, towards the right end and 5°, 1 in 11, away from the face edge"; empty for
// what is square.
[[nodiscard]] std::string leanText(const Lean& lean, const ResolvedPart& part, Face face);

// "table tilted 14°, 1 in 4, the part turned 45° on it from the way of the tilt; it leans ...". One
// tilt of the table, with the part turned on it, makes both leans (common practice).
[[nodiscard]] std::string tableText(const Lean& lean, const ResolvedPart& part, Face face);

// The same for what is not round, whose chisel keeps along the part: "table tilted 8.8° across the
// part, its start raised 4.9° by a wedge; it leans ...". As if the table tilted by t across and the
// wedge by w along: w is the lean along, tan t = tan(across) cos w (own derivation, from turning
// the spindle's direction by both).
[[nodiscard]] std::string wedgedText(const Lean& lean, const ResolvedPart& part, Face face);
// What the table tilts by across the part in that.
[[nodiscard]] Angle tiltOverWedge(const Lean& lean);

}  // namespace shoulderline
