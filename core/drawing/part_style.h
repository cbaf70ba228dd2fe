#pragma once

#include "core/drawing/dimensioning.h"
#include "core/drawing/sheet.h"

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
    bool withNotes = true;   // where it has sections: how it is held, in words
    bool isThrifty = false;  // packed as PackingWay has it

    // For small paper: the lettering one size down, everything closer.
    [[nodiscard]] static PartStyle compact(double scale) {
        return {scale, LineGroup::Bold, {2.5, 8.0, 5.6}, 42.0, false, SectionPlace::Beside, true};
    }
};

}  // namespace shoulderline
