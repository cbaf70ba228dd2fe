#pragma once

#include "core/resolve/holes.h"
#include "tests/support/pieces.h"

namespace shoulderline::testing {

inline CutStatement pegMortise(const char* along,
                               const char* across,
                               const char* side,
                               const char* depth) {
    CutStatement cut;
    cut.kind = CutKind::PegMortise;
    cut.along = along;
    cut.across = across;
    cut.width = side;
    cut.depth = depth;
    return cut;
}

// Two posts and a rail, a peg mortise of 1/4 in through either post and the middle of the rail's
// tenon there.
inline Piece pegThroughTheTenon() {
    Piece piece = twoPostsAndARail();
    const ResolvedPiece made = resolved(piece);
    const MortiseSolid& mortise = partNamed(made, "post, left").mortises.at(0);
    const Vec3 middle = mortise.tenon.centre();
    CutStatement cut = pegMortise("", "", "1/4 in", "");
    for (const Face face : {Face::FaceSide, Face::FaceEdge}) {
        if (axesOn(face).into != axesOn(mortise.face).into) {
            cut.face = face;
        }
    }
    const auto at = [&](int axis) { return std::to_string(middle[axis]) + " mm"; };
    cut.along = at(axesOn(cut.face).along);
    cut.across = at(axesOn(cut.face).across);
    statedPart(piece, "post").cuts = {cut};
    return piece;
}

}  // namespace shoulderline::testing
