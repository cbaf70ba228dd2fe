#pragma once

#include <string>

#include "core/geometry/box.h"
#include "core/piece/words.h"
#include "core/rules/reason.h"

namespace shoulderline {

// The four shoulders of a tenon: how far the part stands out past the tenon at each of its sides.
struct Shoulders {
    Size faceSide;
    Size backSide;
    Size faceEdge;
    Size backEdge;
    friend bool operator==(const Shoulders&, const Shoulders&) = default;
};

// Thickness across the cheeks, width the long way of the mouth, length into the mortise (with the
// projection, for a through tenon); projection past the far face.
struct Tenon {
    Size thickness;
    Size width;
    Size length;
    Size projection;
    Shoulders shoulders;
    friend bool operator==(const Tenon&, const Tenon&) = default;
};

// The mouth on `face` of the mortised part: `width` across, `length` along, `depth` into the wood.
// fromFace: from the mortised part's reference face (face side or face edge, whichever the mouth's
// long edges lie along; else the face edge) to the near edge of the mouth. fromStart and fromFar:
// from the mouth to the two ends of the part's body (its shoulders, where it has tenons of its
// own).
struct Mortise {
    Face face = Face::FaceSide;
    Face reference = Face::FaceSide;  // what fromFace is measured from
    Size width;
    Size length;
    Size depth;
    Size fromFace;
    Size fromStart;
    Length fromFar;
    friend bool operator==(const Mortise&, const Mortise&) = default;
};

}  // namespace shoulderline
