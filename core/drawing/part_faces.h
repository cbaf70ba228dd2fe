#pragma once

#include <string>
#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Side faces that a part's drawing shows, from the top of the sheet down, as the part is rolled
// about its length: the face side, and every other face that mortises enter or that cuts start on
// (through cuts are set out on the opposite face where that is shown anyway); of a bent part also
// the edge that shows its bow.
[[nodiscard]] std::vector<Face> facesToShow(const ResolvedPart& part, bool isThirdAngle);

// Whether the sizes of a cut stand on this face.
[[nodiscard]] bool isSetOutOn(const ResolvedPart& part, const ResolvedCut& cut, Face face);

// An end that the drawing shows; one of two tells the section of the part.
struct EndToShow {
    Face face = Face::FarEnd;
    std::string label;  // "both ends", "left end", "foot", "end"
    bool hasSection = true;
};

// Ends with tenons or mortises; one for both where they are alike, and the far end of a part that
// has neither, for its section. In first angle projection it is the start end that serves for both
// and has the section, and it comes first: seen from the left, it stands at the right of the face
// side (ISO 5456-2).
[[nodiscard]] std::vector<EndToShow> endsToShow(const ResolvedPart& part, bool isThirdAngle);

}  // namespace shoulderline
