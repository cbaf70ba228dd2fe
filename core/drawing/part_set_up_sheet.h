#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheets.h"

namespace shoulderline {

// How the tools are set for what is cut in the parts for no joint, and for their eased arrises:
// part by part in columns, with the cautions of the tools at the foot. Parts that are made alike
// once.
struct SetUpsOnSheet {
    std::vector<std::vector<std::string>> columns;  // lines, those of a part's name first
    std::vector<std::string> cautions;
};
// None for a piece whose parts have nothing cut but their joints.
[[nodiscard]] std::vector<SetUpsOnSheet> setOutPartSetUps(const Piece& piece,
                                                          const ResolvedPiece& resolved,
                                                          Vec2 paper,
                                                          const TextMetrics& metrics);

// "set-ups for parts, 1 of 2"; `index` from zero.
[[nodiscard]] std::string partSetUpsTitle(std::size_t index, std::size_t count);

// Numbered on from the frame's number, each with title block.
[[nodiscard]] std::vector<Sheet> partSetUpSheets(const Piece& piece,
                                                 const std::vector<SetUpsOnSheet>& setOut,
                                                 SheetFrame frame,
                                                 const TextMetrics& metrics);

}  // namespace shoulderline
