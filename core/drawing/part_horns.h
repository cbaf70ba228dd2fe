#pragma once

#include <vector>

#include "core/drawing/part_views.h"
#include "core/geometry/hidden_lines.h"

namespace shoulderline {

struct SizeWriter;

// What is left on past the ends of a part until the glue is dry.

// Its outline in a side view, drawn as part of the body.
void addHornEdges(const ResolvedPart& part, const PartView& view, std::vector<ViewEdge>& edges);

// On the face side: its length, that of the blank with it (in brackets), and a note of what becomes
// of it.
void addHornSizes(SizeWriter& writer);

}  // namespace shoulderline
