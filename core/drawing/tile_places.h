#pragma once

#include <vector>

#include "core/drawing/strips.h"
#include "core/drawing/tiles.h"

namespace shoulderline {

// What a seam should not run through: where the drawing's dimensions end, the lines of its joints,
// and lettering.
[[nodiscard]] PlacesToKeepWhole placesToKeepWhole(const Sheet& drawing, const TextMetrics& metrics);

// Moves the titles of the drawing (kTitleGroup) and its blocks of words (kWordsGroup) along their
// level to where no seam between tiles runs through them and they lie on nothing, the nearest such
// place; a title smaller where there is none else. One keeps to the room among `rooms` that it
// stands in, or to the drawing.
// A figure of a dimension that a seam would still run through moves along its line likewise.
void moveWordsOffSeams(Sheet& drawing,
                       const std::vector<Rect>& rooms,
                       const Paper& paper,
                       const TileOptions& options,
                       const TextMetrics& metrics);

}  // namespace shoulderline
