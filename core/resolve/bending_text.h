#pragma once

#include <string>
#include <vector>

#include "core/measure/length_text.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// What the bench needs for a bent part, worked out from its bow and the rule book. Lengths and
// sizes of wood in the rough are what the rules leave on.
struct BendWork {
    Length blankLength;  // along the curve, with tenons and what is left on to trim
    Length blankWidth;   // of the plies, or of the stock
    Length roughPly;     // a ply as sawn, before both its faces are planed; of no lamination zero
    Length boardWidth;   // a board on edge that all plies are sawn off one beside the other
    double boardWaste = 0.0;  // share of that board that the finished part does not hold
    Length clampGap;
    int clamps = 0;
    double hours = 0.0;
    // Sawn from the solid instead: the stock's thickness, the share of it that is waste, and the
    // slope at which the grain leaves the part at its steeper end.
    Length solidThickness;
    double solidWaste = 0.0;
    Angle shortGrain;
};

// Needs a part with a bow.
[[nodiscard]] BendWork bendWorkOf(const ResolvedPart& part, const RuleBook& rules);

// How far the middle of the curved blank, run on past a shoulder, lies off the middle of a tenon
// that is straight and true to the chord, at `past` millimetres beyond the shoulder (>= 0), and how
// thick the blank is there across the chord.
struct BlankPastShoulder {
    double off = 0.0;  // towards the hollow side positive
    double thick = 0.0;
};
[[nodiscard]] BlankPastShoulder blankPast(const ResolvedPart& part, End end, double past);

// The same as lines for the maker: bow, plies, form, blank, schedule, the solid alternative.
[[nodiscard]] std::vector<std::string> bendSettings(const ResolvedPart& part,
                                                    const RuleBook& rules,
                                                    const LengthStyle& style);

}  // namespace shoulderline
