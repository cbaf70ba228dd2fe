#pragma once

#include "core/drawing/dimensioning.h"
#include "core/drawing/sheets.h"

namespace shoulderline {

// How one joint is set out.
struct JointStyle {
    double scale = 1.0;  // drawing to wood
    DimensionStyle dimensions;
    bool areEndsBelow = false;  // the mouth and the tenon's end under the rest, not beside it
    bool hasFaceMarks = true;   // of the face sides and face edges
};

// jointDrawing() at a scale of one's own: both members apart, from two sides, with every size; the
// mouth and the tenon's end; both together, from one side and in the section A-A through the middle
// of the tenon.
[[nodiscard]] Sheet drawJoint(
    const Piece&, const ResolvedPiece&, std::size_t joint, const JointStyle&, const TextMetrics&);

}  // namespace shoulderline
