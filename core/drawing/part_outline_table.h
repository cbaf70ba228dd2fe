#pragma once

#include <string>
#include <vector>

#include "core/drawing/free_space.h"
#include "core/drawing/part_views.h"
#include "core/measure/length_text.h"

namespace shoulderline {

// Outlines of a part that are not its blank, told by their points: from the left end, from the face
// edge or the face side, and how each goes on to the next.

struct ShapedOutline {
    const Outline* outline = nullptr;
    Face seenOn = Face::FaceSide;  // of the two faces that it lies on, the one that a drawing shows
    Face across = Face::FaceEdge;  // what its points are measured from across the length
    std::vector<std::size_t> told;  // its vertices but for those at plain corners of the blank
    std::string from = {};          // what places along it are from: "left shoulder", "foot"
    char letter = 'P';              // of its points: no two outlines of a part have the same
};
// `shown` as facesToShow() has it; an outline seen on no face there is told of the face edge.
[[nodiscard]] std::vector<ShapedOutline> shapedOutlines(const ResolvedPart& part,
                                                        const std::vector<Face>& shown);

// The table of one outline, from its heading down; from (0, 0).
[[nodiscard]] std::vector<Op> outlineTable(const ShapedOutline& outline,
                                           std::size_t partIndex,
                                           const LengthStyle& lengths,
                                           double height,
                                           const TextMetrics& metrics);

// The numbers that the table has, at the points of the view, where they find room.
[[nodiscard]] std::vector<Op> outlineNumbers(const ShapedOutline& outline,
                                             const PartView& view,
                                             double scale,
                                             double height,
                                             FreeSpace& space,
                                             const TextMetrics& metrics);

}  // namespace shoulderline
