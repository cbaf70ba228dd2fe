#pragma once

#include <vector>

#include "core/drawing/joint_members.h"
#include "core/geometry/hidden_lines.h"

namespace shoulderline {

// The lines of what is hollow in `solids`: seen where it is open towards the viewer, since its
// mouth looks that way or it runs out at the side of all that it is cut in, as a kerf does at the
// cheeks of its tenon; what widens behind its mouth is hidden there.
[[nodiscard]] std::vector<ViewEdge> linesOfHollow(const Hollow& hollow,
                                                  const std::vector<Polyhedron>& solids,
                                                  const View& view);

// What runs right through, the way that is looked, is open at the sides of the wood that it
// reaches: takes away the lines that would close it there.
void openSides(const Hollow& hollow,
               const std::vector<Polyhedron>& solids,
               const View& view,
               std::vector<ViewEdge>& edges);

}  // namespace shoulderline
