#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/geometry/vec.h"

namespace shoulderline {

class TextMetrics;

// Lettering set out: what every painter draws and every layout measures. Coordinates are
// millimetres from the start of the baseline, x onwards, y DOWN (capitals reach up to -height).
struct TextRun {
    std::string text;     // plain, without fractions
    Vec2 at;              // start of its baseline
    double height = 0.0;  // of its capitals
    friend bool operator==(const TextRun&, const TextRun&) = default;
};
struct FractionBar {
    Vec2 a;
    Vec2 b;
    friend bool operator==(const FractionBar&, const FractionBar&) = default;
};
struct TextLayout {
    std::vector<TextRun> runs;
    std::vector<FractionBar> bars;
    double width = 0.0;
    double ascent = 0.0;   // how far it reaches above the baseline
    double descent = 0.0;  // and below
};

// Sets `text` with capitals `height` high. A fraction, digits / digits standing alone or after a
// whole number ("9/16", "16 1/2", "≈ 3/8"), is set with its numerator over its denominator and a
// level bar between, both kFractionFigure high. Dates and words with a stroke stay as they are.
// `metrics` is asked only for the width of plain runs.
[[nodiscard]] TextLayout layOutText(std::string_view text,
                                    double height,
                                    bool isBold,
                                    const TextMetrics& metrics);

// Height of the figures of a fraction to that of the text: in each height of the standard row (2.5,
// 3.5, 5 mm) they are of the next lower one (1.8, 2.5, 3.5 mm), which a print can still be read at.
// Source of the row: ISO 3098-1.
inline constexpr double kFractionFigure = 0.72;
// From one baseline to the next, to the height of the text: a fraction under a fraction stays
// clear.
inline constexpr double kLineSpacing = 1.85;
// Bold lettering is the regular one drawn twice, this share of its height apart.
inline constexpr double kBoldShift = 0.06;
// How far small letters reach under the baseline.
inline constexpr double kDescender = 0.3;

}  // namespace shoulderline
