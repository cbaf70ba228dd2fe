#pragma once

#include "core/drawing/part_sizes.h"
#include "core/geometry/hidden_lines.h"

namespace shoulderline {

struct SizeWriter;

// The cuts of a part other than mortises, as one of its views shows them: grooves, rabbets,
// notches, bores, and what joints bore and saw besides.

// Whether it is the saw kerf for a wedge, in the end of a tenon.
[[nodiscard]] bool isKerf(const ResolvedCut& cut);

// The corners of a through notch on the side of the part that looks towards `outward`, a unit
// vector of its frame; none where it has no mouth there.
[[nodiscard]] std::vector<Vec3> notchMouth(const ConvexSolid& notch, Vec3 outward);

// Their edges, to be put among the lines of the view; `solid` numbers each cut on from there.
void addCutEdges(const ResolvedPart& part,
                 const PartView& view,
                 int solid,
                 std::vector<ViewEdge>& edges);

// What must be said of those that open on the face seen: from the start end to each, its length
// where it stops, and a note with its section and place across. Alike ones once, with their number.
void addCutSizes(SizeWriter& writer);

}  // namespace shoulderline
