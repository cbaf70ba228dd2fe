// Any bytes as a length and as an angle. What is read must be in range, and must read back as
// itself where it is shown without rounding; what is refused must point into the text.

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "core/measure/angle_text.h"
#include "core/measure/length_text.h"

namespace {

using namespace shoulderline;

void require(bool holds) {
    if (!holds) {
        std::abort();
    }
}

void checkShown(Length length, const LengthStyle& style) {
    const std::string shown = showLength(length, style, true);
    const auto again = readLength(shown, Unit::Millimetre);
    require(again.has_value());
    const Length step = style.kind == LengthStyle::Kind::Fractions
                            ? Length::inches(0.5 / style.denominator)
                            : Length::mm(0.05);
    require(nearlyEqual(*again, length, step + kLengthTolerance));
    // Shown a second time nothing is left to round.
    require(readLength(showLength(*again, style, true), Unit::Inch) == again);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    const auto length = readLength(text, Unit::Inch);
    if (length) {
        require(std::abs(length->mm()) <= kLongestLength.mm());
        // Half a step of showing may lead over the limit itself.
        if (std::abs(length->mm()) < kLongestLength.mm() - 10) {
            checkShown(*length, LengthStyle::fractions(16));
            checkShown(*length, LengthStyle::fractions(64));
            checkShown(*length, LengthStyle::millimetres(1));
        }
    } else {
        require(length.error().position <= size && !length.error().message.empty());
    }
    const auto angle = readAngle(text);
    require(angle ? std::abs(angle->degrees()) <= 3600.001 : angle.error().position <= size);
    return 0;
}
