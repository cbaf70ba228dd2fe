#pragma once

#include "core/drawing/part_sizes.h"
#include "core/resolve/set_out_faces.h"

namespace shoulderline {

struct SizeWriter;

// Ends of a part that are not square, as its views show them.

// Of each such end on the side seen: how far its line is set back across it, and a note with its
// angle as degrees and as a slope.
void addAngleSizes(SizeWriter& writer);

// The smallest box around the foot of a tenon on the end that it stands on; for one on a square end
// the tenon's own box.
[[nodiscard]] Box footOf(const ResolvedPart& part, const TenonSolid& tenon);

// What the shoulder length is from and to: along the arris of the face side and the face edge; at
// an end whose corners lie off one another by less than a rule shows, from the outermost one.
struct ShoulderSpan {
    Extent arris;
    bool needsCorners = false;  // no size tells how far its outermost corners lie off
};
[[nodiscard]] ShoulderSpan shoulderSpan(const ResolvedPart& part);

}  // namespace shoulderline
