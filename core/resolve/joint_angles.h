#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/measure/angle.h"
#include "core/resolve/lean.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Where an end's cut comes out on one side of a part: how far it is from a line squared across that
// side, and how long it is. On the face side and back side an angle above zero leaves the part
// longer at the back edge, on the edges longer at the back side.
struct ShoulderLine {
    Face side = Face::FaceSide;
    Angle fromSquare;
    Length length;
    Length setBack;  // along the part, from the end of the line nearer to the blank's end
};

// The end of a part as it is to be cut. For the saw with the face side down: its gauge is turned by
// `mitre`, the angle on the face side, and its blade leans by `tilt` from square to it; above zero
// where the cut leaves the part longer at the back side.
//   n the end plane's normal out of the part, in the part's frame turned so that x is out of the
//   end: mitre = atan(ny / nx), tilt = asin(nz) (own derivation).
struct EndAngles {
    bool isSquare = true;
    std::array<ShoulderLine, 4> lines;  // face side, back side, face edge, back edge
    Angle mitre;
    Angle tilt;
};
[[nodiscard]] EndAngles endAnglesOf(const ResolvedPart& part, End end);

// How a joint lies out of square, all zero where it does not.
struct JointAngles {
    Angle toFace;     // of the tenoned part's length to a line square to the face it enters
    Angle mortise;    // of the mortise to that line: what the mortiser's table is tilted by
    Angle runOut;     // of the tenon to the grain of its part
    Angle mouthTurn;  // of the mouth on the face, from the length of the mortised part's blank;
                      // zero for a round one
    Lean lean;        // of the mortise, on the face it enters; its tilt is `mortise`
    [[nodiscard]] bool isSquare() const;
};
[[nodiscard]] JointAngles anglesOf(const ResolvedPiece& resolved, const ResolvedJoint& joint);

// "5.2°, 1 in 11": an angle as degrees and as how far it rises over a run. The same degrees have
// the same run wherever they are told.
[[nodiscard]] std::string slopeText(Angle angle);
// The settings for an end that is not square, one to a line ("saw: gauge 5.2°, 1 in 11, longer at
// the back edge"); none for a square one.
[[nodiscard]] std::vector<std::string> endSettings(const ResolvedPart& part, End end);
// Likewise for the mortise and the tenon of a joint.
[[nodiscard]] std::vector<std::string> jointSettings(const ResolvedPiece& resolved,
                                                     const ResolvedJoint& joint);
// Both, for the end of the tenoned part that the joint is at.
[[nodiscard]] std::vector<std::string> outOfSquareSettings(const ResolvedPiece& resolved,
                                                           const ResolvedJoint& joint);

}  // namespace shoulderline
