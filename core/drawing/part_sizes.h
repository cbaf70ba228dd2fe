#pragma once

#include <string>
#include <vector>

#include "core/drawing/part_views.h"
#include "core/drawing/sheet.h"
#include "core/piece/piece.h"

namespace shoulderline {

class SectionPlan;

// A size that the maker needs, in the coordinates of the view that shows it (see PartView).
struct NeededSize {
    double from = 0.0;  // along the view's x for sizes along it, its y for sizes down it
    double to = 0.0;
    double fromDepth = 0.0;  // from the side of the view to where its extension lines begin, in the
                             // same millimetres
    double toDepth = 0.0;
    std::string text;
    double value = 0.0;
    std::string of;
    Subject subject;
    int rank = 0;
    bool mayRun = false;  // measured from the start end to a place along the part
};

// A call-out at something in the view.
struct NeededNote {
    Vec2 target;
    std::vector<std::string> lines;
    Subject subject;
};

// Everything that one view of a part has to say.
struct ViewSizes {
    std::vector<NeededSize> along;  // its depths are from the view's upper side
    std::vector<NeededSize>
        down;  // of an end: its depths are from the side the dimensions stand on
    std::vector<NeededNote> notes;
};

// What must be dimensioned to make the part at `index`, taken from its sizes and cuts, as the view
// of one face needs it. Each size is in one place only:
// - face side: shoulder length, length of the tenons at each end, length over all as a check (in
//   brackets), horns;
// - every side that mortises enter: from the start end to each mouth and its length, to the centre
//   of a bored one; a row of equal mouths, evenly spaced, by the first, their number and their
//   pitch; a note with width, depth and place across from the face side or face edge, or, where
//   `sections` shows these, with the chisel or bit and the section's letter;
// - an end: with `withSection`, width and thickness of the part or its diameter; of each tenon
//   width, thickness and shoulders, or diameter; the centres of holes;
// - every face: its cuts, and the ends that are not square to it.
[[nodiscard]] ViewSizes sizesOn(const PartView& view,
                                const Piece& piece,
                                const ResolvedPiece& resolved,
                                std::size_t index,
                                bool withSection = true,
                                const SectionPlan* sections = nullptr);

// The size of the part over all as a maker says it: length x width x thickness.
[[nodiscard]] std::string finishedSize(const Piece& piece, const ResolvedPart& part);

}  // namespace shoulderline
