#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheets.h"

namespace shoulderline {

// How many sheets of `paper` the index of a set takes whose other sheets have these titles.
[[nodiscard]] int indexSheetCount(Vec2 paper,
                                  const std::vector<std::string>& titles,
                                  const TextMetrics& metrics);

// The sheets of a set by number and title, in columns, with title block. `titles` are those of all
// sheets after the index; the index itself has the numbers from 1. On one sheet where closer rows
// or titles on two lines do that, else shared out evenly; titles stand in full.
[[nodiscard]] std::vector<Sheet> indexSheets(const Piece& piece,
                                             const std::vector<std::string>& titles,
                                             const SheetFrame& frame,
                                             const TextMetrics& metrics);

}  // namespace shoulderline
