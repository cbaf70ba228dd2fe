#pragma once

#include <string>
#include <string_view>

#include "core/measure/length.h"
#include "core/measure/result.h"
#include "core/measure/unit.h"

namespace shoulderline {

// How lengths are shown.
struct LengthStyle {
    enum class Kind { Fractions, DecimalInches, Millimetres };
    Kind kind = Kind::Fractions;
    int denominator = 16;    // of fractions: 8, 16, 32 or 64
    int decimals = 3;        // of decimal inches: 1 to 4; of millimetres: 0 or 1
    bool withOther = false;  // and the other unit behind it in square brackets: "3/4 [19.1]"

    [[nodiscard]] static constexpr LengthStyle fractions(int denominator) {
        return {Kind::Fractions, denominator, 0, false};
    }
    [[nodiscard]] static constexpr LengthStyle decimalInches(int decimals) {
        return {Kind::DecimalInches, 1, decimals, false};
    }
    [[nodiscard]] static constexpr LengthStyle millimetres(int decimals) {
        return {Kind::Millimetres, 1, decimals, false};
    }
    // The same with the other unit in brackets: millimetres to a tenth behind inches,
    // thirty-seconds of an inch behind millimetres. For prints; such a text is not read back.
    [[nodiscard]] constexpr LengthStyle inBothUnits() const {
        LengthStyle both = *this;
        both.withOther = true;
        return both;
    }
    friend bool operator==(const LengthStyle&, const LengthStyle&) = default;
};

// The unit that a bare number has beside lengths shown in `style`.
[[nodiscard]] constexpr Unit unitOf(const LengthStyle& style) {
    return style.kind == LengthStyle::Kind::Millimetres ? Unit::Millimetre : Unit::Inch;
}

// Reads a length as makers write it: 16 1/2, 16-1/2 in, 16½", 9/16, 0.742 in, 425,5, 41.9 cm,
// 1 ft 4 1/2 in, 1' 4 1/2"; literal.h has the forms. Before it may stand a sign (+ - −), and before
// that the ≈ that showLength writes. A number without a unit takes `bare`. The text must be one
// length and nothing else: what is not understood is refused, never cut short or read otherwise.
// Errors: EmptyText, BadText, WrongDimension (an angle), OutOfRange (over one kilometre, or too
// many digits); position is the byte where the reading stopped.
[[nodiscard]] Result<Length> readLength(std::string_view text, Unit bare);

// Shows a length: 16 1/2, 0.742, 419.5, −1/4 (with U+2212). A fraction that is over 0.001 mm from
// the length carries ≈ before it; decimals are rounded as they are read, with no sign, and drop
// trailing zeros. `withUnit` adds a no-break space and in or mm. What is shown without rounding
// reads back as the same length under unitOf(style); what carries ≈ reads as the length that it
// shows, so a field must not commit a text that nobody changed.
[[nodiscard]] std::string showLength(Length length,
                                     const LengthStyle& style,
                                     bool withUnit = false);

// The least that a maker measures on wood, with a calliper: two thousandths of an inch (our choice;
// the edge of a knife line is as wide).
inline constexpr Length kMeasurable = Length::mm(0.05);

// The same as drawings and the papers of the shop letter it: ≈ stands only before a fraction that
// is over kMeasurable from the length. Not for a field, nor for what is stepped off many times
// over.
[[nodiscard]] std::string letterLength(Length length,
                                       const LengthStyle& style,
                                       bool withUnit = false);

}  // namespace shoulderline
