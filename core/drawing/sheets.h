#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"
#include "core/piece/piece.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Parts that are made alike: left and right of a pair, members of a set. One drawing serves them.
struct PartKind {
    std::vector<std::size_t> parts;  // indices in ResolvedPiece::parts, the one drawn first
    std::string name;                // stated name; of several kinds of one stated part with
                                     // what tells them apart: "head board 2 to 5"
    int quantity = 1;
    bool hasMirrorTwins = false;  // half of them are the mirror image of the one drawn
};
[[nodiscard]] std::vector<PartKind> partKinds(const ResolvedPiece& resolved);

// "make 2: 1 left as drawn, 1 right mirrored".
[[nodiscard]] std::string quantityText(const ResolvedPiece& resolved, const PartKind& kind);
// "rail stock: White oak, quarter".
[[nodiscard]] std::string materialText(const Piece& piece, const ResolvedPart& part);

// What a sheet of drawings has on it besides the drawing.
struct SheetFrame {
    Vec2 paper;          // millimetres, as it is held: landscape when wider than high
    double scale = 0.0;  // drawing to wood (1 is full size, 0.2 is 1:5); 0 for the largest standard
                         // scale that fits
    std::string date;    // of the piece's last change, ISO 8601; empty for none
    int number = 0;      // of this sheet, and of how many; 0 for none
    int count = 0;
    bool withList = true;  // the list of parts on the views' own sheet, where it has the room
};

// One part in elevation on paper: the faces that carry something, in projection, with visible and
// hidden edges, centre lines, mortises and tenons dimensioned from the reference face and end,
// shoulder lines, overall sizes, title block. On several sheets, numbered on from the frame's
// number, where one does not hold it.
[[nodiscard]] std::vector<Sheet> partSheets(
    const Piece&, const ResolvedPiece&, const PartKind&, SheetFrame, const TextMetrics&);

// The part's elevations with their dimensions but without paper, frame and title block: for the
// screen, and (at scale 1, `isFullSize`) for full-size prints, where lines are finer and the
// reference marks are added.
[[nodiscard]] Sheet partDrawing(const Piece&,
                                const ResolvedPiece&,
                                const PartKind&,
                                double scale,
                                bool isFullSize,
                                const TextMetrics&);

// The whole piece on paper: front and side elevation and plan, in projection, with overall and key
// dimensions and the list of parts.
[[nodiscard]] Sheet pieceSheet(const Piece&,
                               const ResolvedPiece&,
                               const SheetFrame&,
                               const TextMetrics&);

// One joint drawn large: both members apart and together, dimensioned; for the Joints page.
[[nodiscard]] Sheet jointDrawing(const Piece&,
                                 const ResolvedPiece&,
                                 std::size_t joint,
                                 const TextMetrics&);

}  // namespace shoulderline
