#pragma once

#include <limits>
#include <string>
#include <vector>

#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"

namespace shoulderline {

// A size that a view must show, measured along one of its sides: millimetres on the sheet.
struct SizeToPlace {
    double from = 0.0;  // along the side, from < to
    double to = 0.0;
    double fromDepth = 0.0;  // how far inside the view's edge each extension line begins, >= 0
    double toDepth = 0.0;
    std::string text;    // as it is lettered
    double value = 0.0;  // true size in millimetres
    std::string of;      // "mortise length"
    Subject subject;
    int rank = 0;         // a higher one stands outside all lower ones
    bool mayRun = false;  // from the view's own end: may share one line with others
};

// On which side of a view its dimensions stand.
enum class DimensionSide { Above, Below, LeftOf, RightOf };

// Lettering height, from the view to the first dimension line, from one to the next; millimetres
// (common practice to ISO 129-1: about 10, and 7 or more).
struct DimensionStyle {
    double height = 3.5;
    double first = 10.0;
    double next = 7.5;
};

// How far along the side figures may stand: where other dimensions stand round the corner.
struct FigureRoom {
    double low = -std::numeric_limits<double>::infinity();
    double high = std::numeric_limits<double>::infinity();

    // To this side of a corner, round which others stand.
    [[nodiscard]] static constexpr FigureRoom upTo(double high) {
        return {-std::numeric_limits<double>::infinity(), high};
    }
};

// The sizes set out on rows beside the view's `edge` (its y for Above and Below, its x else): the
// shortest nearest to it, each row as near as it goes. Figures stand in the middle of their line
// where they fit, else beside it with the arrows outside. No figure lies on a line or on another
// figure, no two dimension lines in a row overlap; rows share a line where sizes follow one
// another. Sizes of nothing (to - from < 0.001 mm) are left out. Figures keep within `room`, of
// which one end at least must be open. Above a view, four sizes or more that may run are set out as
// running dimensions on one line (ISO 129-1), outside the rows of rank 0, where they find room.
[[nodiscard]] std::vector<Op> placeSizes(std::vector<SizeToPlace> sizes,
                                         DimensionSide side,
                                         double edge,
                                         const DimensionStyle& style,
                                         const TextMetrics& metrics,
                                         const FigureRoom& room = {});

}  // namespace shoulderline
