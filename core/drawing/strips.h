#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/drawing/paper.h"
#include "core/geometry/rect.h"

namespace shoulderline {

// A line across a strip of paper at full size, `at` millimetres along it, with what is said of it.
struct StripMark {
    double at = 0.0;
    std::string label;
};

// A strip at full size from `from` to `to` with its marks: lines across it, each led to its label
// under it, which takes as many rows as it needs, labels spread so that none lies on another. Marks
// closer than a hundredth of a millimetre are one line with both labels. `title` stands over the
// strip.
[[nodiscard]] Sheet markedStrip(std::vector<StripMark> marks,
                                double from,
                                double to,
                                const std::string& title,
                                const TextMetrics& metrics);

// Rods of the piece at full size (heights, widths, depths), each line named with its distance from
// the rod's zero, which is a line itself: the floor, the middle, the front. Tiled like the parts,
// with the same marks.
[[nodiscard]] PrintJob rodsJob(const Piece&,
                               const ResolvedPiece&,
                               const Paper&,
                               const TileOptions&,
                               const std::string& date,
                               const TextMetrics&);

// The name of the group that a drawing's own title stands in. Tiled, it moves along its level to
// where no seam runs through it.
inline constexpr std::string_view kTitleGroup = "title";
[[nodiscard]] std::vector<Op> titleOps(Vec2 at, const std::string& text, double height);

// The name of a group of lines that a drawing says of itself. Tiled, they move together along their
// level to where they stand whole on one sheet. `at` is the first line's, `row` from line to line.
inline constexpr std::string_view kWordsGroup = "words";
[[nodiscard]] std::vector<Op> wordsOps(Vec2 at,
                                       const std::vector<std::string>& lines,
                                       double height,
                                       double row);

// A drawing to be tiled, and what its pages say of it.
struct FullSizeDrawing {
    Sheet drawing;
    std::string name;                   // "front post"
    std::string about;                  // a line under the name
    std::string size;                   // of the map: "finished size over all ..."
    std::vector<Rect> titleRooms = {};  // that its titles keep to; none: to the whole drawing
};
// Each drawing over as many sheets as it takes, with a map before them where that is more than one.
[[nodiscard]] PrintJob tiledJob(const Piece& piece,
                                const std::string& title,
                                std::vector<FullSizeDrawing> drawings,
                                const Paper& paper,
                                const TileOptions& options,
                                const std::string& date,
                                const TextMetrics& metrics);

}  // namespace shoulderline
