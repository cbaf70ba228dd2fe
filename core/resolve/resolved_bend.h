#pragma once

#include "core/geometry/bent_line.h"
#include "core/piece/words.h"
#include "core/rules/reason.h"

namespace shoulderline {

// How a bent part curves and how it is made. Its middle line lies half way through its thickness;
// `line` is that line over the chord, x along the part from its start shoulder, y off the chord
// towards the bow. The form's lines are as long: what springs back from them is `line`.
struct ResolvedBend {
    BendMethod method = BendMethod::Laminated;
    Face hollow = Face::FaceSide;
    BendShoulders shoulders = BendShoulders::Chord;
    BentLine line;
    BentLine formLine;
    Size rise;                // of the middle line over the chord
    Size radius;              // the smallest of the middle line
    int plies = 1;            // one for a part that is not laminated
    bool areStated = false;   // the plies, by the maker
    Size ply;                 // thickness of each
    double springback = 0.0;  // the share of its bend that it loses on release, 0 to below 1
    bool isMeasured = false;  // ... as the maker found it
    Size formRadius;          // the smallest of the form's middle line

    [[nodiscard]] Length alongCurve() const { return Length::mm(lengthOf(line)); }
    [[nodiscard]] Length formRise() const { return Length::mm(riseOf(formLine)); }
    friend bool operator==(const ResolvedBend&, const ResolvedBend&) = default;
};

}  // namespace shoulderline
