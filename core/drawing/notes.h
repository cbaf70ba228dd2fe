#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"

namespace shoulderline {

// Words about one thing in a view, tied to it by a leader.
struct Note {
    Vec2 target;                     // inside the thing, millimetres on the sheet
    std::vector<std::string> lines;  // the first names it
    Subject subject;
};

enum class NoteSide { Under, Over };

// The notes side by side under `top` (a y of the sheet), or over it, in the order of their targets,
// each hanging from, or standing on, a thin line that its leader meets; leaders do not cross. Where
// that would make leaders long, in up to three rows. The rows keep to the right of `left`.
[[nodiscard]] std::vector<Op> placeNotes(std::vector<Note> notes,
                                         double left,
                                         double top,
                                         double height,
                                         const TextMetrics& metrics,
                                         NoteSide side = NoteSide::Under);

}  // namespace shoulderline
