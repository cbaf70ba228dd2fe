#pragma once

#include <vector>

#include "core/drawing/free_space.h"
#include "core/drawing/hatching.h"
#include "core/drawing/part_sections.h"
#include "core/drawing/part_style.h"

namespace shoulderline {

// The cutting plane on a view of the part, what it cuts of which lies `across` it on the sheet: a
// wide stroke over it and one under it, with arrows that look the way the section does and its
// letter. Both are alike, and as near as `space` has room for the one that needs more, but where
// that is far off each is as near as it may be; the plane is moved within its limits for that.
// Letters and arrows lie on nothing; rather than far off, a stroke lies across a thin line.
[[nodiscard]] std::vector<Op> cuttingPlaneMarks(const PartSection& section,
                                                Span across,
                                                double scale,
                                                const PartStyle& style,
                                                FreeSpace& space,
                                                const TextMetrics& metrics);

// The joiner's marks on a part cut across, or seen from an end, the rings of whose wood on the
// sheet are `wood`: on the true line of its face edge, which is up, and of its face side, at the
// left or at the right; `height` high. As near the middle of the line as `space` has room for them.
[[nodiscard]] std::vector<Op> faceMarksAcross(const std::vector<std::vector<Vec2>>& wood,
                                              bool isFaceSideLeft,
                                              FreeSpace& space,
                                              double height,
                                              const TextMetrics& metrics);

}  // namespace shoulderline
