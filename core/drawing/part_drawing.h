#pragma once

#include "core/drawing/dimensioning.h"
#include "core/drawing/part_views.h"
#include "core/drawing/sheets.h"

namespace shoulderline {

// Where the sections of a part stand: in columns at the right of the views, in one column with the
// ends, or in rows under the views.
enum class SectionPlace { Beside, WithEnds, Below };

// How a part's drawing is set out.
struct PartStyle {
    double scale = 1.0;  // drawing to wood
    LineGroup lines = LineGroup::Bold;
    DimensionStyle dimensions;
    double largestEnd = 62.0;   // mm: ends are drawn larger than the rest up to this
    bool withSections = false;  // through every kind of mortise, and the tenons hatched
    SectionPlace sectionPlace = SectionPlace::Beside;
    bool withNotes = true;  // where it has sections: how it is held, in words

    // For small paper: the lettering one size down, everything closer.
    [[nodiscard]] static PartStyle compact(double scale) {
        return {scale, LineGroup::Bold, {2.5, 8.0, 5.6}, 42.0, false, SectionPlace::Beside, true};
    }
};

// partDrawing() in a style of one's own. `lines` are those of the first part of the kind: for one
// drawing after another they are worked out once.
[[nodiscard]] Sheet drawPart(const Piece&,
                             const ResolvedPiece&,
                             const PartKind&,
                             const PartStyle&,
                             PartLines& lines,
                             const TextMetrics&);

// The same with its views, ends and sections set wherever they find room, on as many sheets of
// `room` as they need. Empty where one of them alone is larger than that.
[[nodiscard]] std::vector<Sheet> drawPartOnSheets(const Piece&,
                                                  const ResolvedPiece&,
                                                  const PartKind&,
                                                  const PartStyle&,
                                                  PartLines& lines,
                                                  Vec2 room,
                                                  const TextMetrics&);

}  // namespace shoulderline
