#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheets.h"

namespace shoulderline {

// How many sheets of `paper` an index of `entries` sheets takes.
[[nodiscard]] int indexSheetCount(Vec2 paper, std::size_t entries);

// The sheets of a set by number and title, in columns, with title block. `titles` are those of all
// sheets after the index; the index itself has the numbers from 1.
[[nodiscard]] std::vector<Sheet> indexSheets(const Piece& piece,
                                             const std::vector<std::string>& titles,
                                             const SheetFrame& frame,
                                             const TextMetrics& metrics);

}  // namespace shoulderline
