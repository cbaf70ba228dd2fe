#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/drawing/part_blocks.h"

namespace shoulderline {

// Everything that a part's drawing is put together from, each block drawn by itself.
struct PartDrawingBlocks {
    std::vector<PartBlock> sides;    // as they stand over one another, the face side among them
    std::vector<PartBlock> ends;     // beside the face side, each on its own side of it
    std::vector<PartBlock> further;  // sections and whatever else stands anywhere
};

// The sides over one another in projection with the ends beside the face side (the far one at the
// right in third angle projection), the rest as `place` says. Its corner is anywhere.
[[nodiscard]] std::vector<Op> inProjection(PartDrawingBlocks blocks,
                                           SectionPlace place,
                                           bool isThirdAngle,
                                           const TextMetrics& metrics);

// What a section says over its title that lies on another sheet than its mark. The sheet's number
// is put in when it is known.
inline constexpr std::string_view kMarkedOnSheet = "marked on sheet 000";
// What an outline's table says over its title that lies on another sheet than its points; likewise.
[[nodiscard]] std::string pointsOnSheet(Face face);

// How blocks are packed on sheets.
struct PackingWay {
    Vec2 room;  // of a sheet
    bool isThirdAngle = false;
    double lettering = 3.5;
    bool isThrifty = false;  // sorted by size and closer set, where that saves a sheet
};
// All blocks in reading order (sections by their letters unless that takes a sheet more), each as
// high up and then as far left as it finds room on a sheet by itself, a table as near to the view
// with its points as it can; on as many sheets as they need, each from (0, 0). The face side is on
// the first sheet, and what sides go there with it stand over one another as in projection; an end
// stands beside a side only where it does in projection, else over or under it. A section on
// another sheet than the face side says kMarkedOnSheet, a table on another than its points
// pointsOnSheet(). None where one of the blocks is larger than the room.
[[nodiscard]] std::optional<std::vector<std::vector<Op>>> packed(PartDrawingBlocks blocks,
                                                                 const PackingWay& way,
                                                                 const TextMetrics& metrics);

}  // namespace shoulderline
