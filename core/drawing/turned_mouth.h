#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/drawing/part_views.h"
#include "core/drawing/sheet.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// The mouth of a mortise that lies turned on its face, as a maker sets it out: its middle, a line
// through that, and how long and wide it is by that line. In the part's frame; lengths in mm, as
// it opens on the face: one that leans is longer there than its tenon is wide.
struct TurnedMouth {
    Vec3 middle;
    Vec3 along;   // unit, in the face, towards the far end: its cheeks, or its ends where these lie
                  // nearer to the part's length
    Vec3 across;  // unit, in the face: along its other two sides, mostly square to `along`
    double length = 0.0;  // of a side along
    double width = 0.0;   // between the sides along, square to them
    Angle turn;           // of `along` from the part's length, above zero where it comes away from
                          // the face edge (in an edge: the face side) as it nears the far end
    [[nodiscard]] std::array<Vec3, 4> corners() const;
};

// None for a mouth that lies along its part or across it, is bored, or is in an end. One that is
// out by less than 0.2 degrees cannot be set out turned.
[[nodiscard]] std::optional<TurnedMouth> turnedMouthOf(const ResolvedPiece& resolved,
                                                       const ResolvedPart& part,
                                                       const MortiseSolid& mortise);

// As mouthDiagonals(), from corner to corner of it; on the sheet, from the corner of the view.
[[nodiscard]] std::vector<Op> turnedDiagonals(const TurnedMouth& mouth,
                                              const PartView& view,
                                              double scale,
                                              bool isThrough);
// The line that it is set out along, and its middle square to the part; each from end to end.
[[nodiscard]] std::array<std::array<Vec2, 2>, 2> turnedCentreLines(const TurnedMouth& mouth,
                                                                   const PartView& view,
                                                                   double scale,
                                                                   double overrun);

}  // namespace shoulderline
