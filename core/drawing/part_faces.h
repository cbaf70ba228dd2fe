#pragma once

#include <string>
#include <vector>

#include "core/resolve/resolved_piece.h"
#include "core/resolve/set_out_faces.h"

namespace shoulderline {

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
