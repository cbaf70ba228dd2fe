#pragma once

#include <string_view>

namespace shoulderline {

// Widths of lettering, so that layout is the same on screen, on paper and in tests.
class TextMetrics {
  public:
    virtual ~TextMetrics() = default;
    // Width in millimetres of `text` (one line, UTF-8) with capitals `height` high; fractions in it
    // ("16 1/2") are set stacked, as every painter sets them (see fraction_text.h).
    [[nodiscard]] virtual double width(std::string_view text, double height, bool isBold) const = 0;
};

}  // namespace shoulderline
