#pragma once

#include <vector>

#include "core/drawing/part_views.h"
#include "core/drawing/sheet.h"

namespace shoulderline {

// The mouths of mortises and bores seen on the face of `view` that are so narrow on paper that wide
// lines round them would fill them: less than 0.7 mm would be left clear between (ISO 128, as
// core/drawing/line_style.h). Their rings, convex, on the sheet from the corner of the view.
[[nodiscard]] std::vector<std::vector<Vec2>> narrowMouths(const ResolvedPart& part,
                                                          const PartView& view,
                                                          double scale,
                                                          LineGroup lines);

// Whether a line from `a` to `b` is one of a mouth's own.
[[nodiscard]] bool isOfMouth(const std::vector<std::vector<Vec2>>& mouths, Vec2 a, Vec2 b);

// A centre line from `a` to `b`, but for what of it runs in such mouths.
[[nodiscard]] std::vector<Op> centreLineOutside(const std::vector<std::vector<Vec2>>& mouths,
                                                Vec2 a,
                                                Vec2 b);

}  // namespace shoulderline
