#include "core/drawing/lettering_metrics.h"

#include "core/drawing/fraction_text.h"
#include "core/drawing/lettering_widths.h"

namespace shoulderline {

namespace {

// The character that begins at `at` in UTF-8 text, stepping over it; U+FFFD for what is not UTF-8.
char32_t takeCharacter(std::string_view text, std::size_t& at) {
    const auto lead = static_cast<unsigned char>(text[at++]);
    const int more =
        lead < 0x80 ? 0 : (lead >= 0xF0 ? 3 : (lead >= 0xE0 ? 2 : (lead >= 0xC0 ? 1 : -1)));
    if (more < 0) {
        return 0xFFFD;
    }
    char32_t character = more == 0 ? lead : static_cast<char32_t>(lead & (0x3F >> more));
    for (int i = 0; i < more; ++i) {
        if (at >= text.size() || (static_cast<unsigned char>(text[at]) & 0xC0) != 0x80) {
            return 0xFFFD;
        }
        character = (character << 6) | (static_cast<unsigned char>(text[at++]) & 0x3F);
    }
    return character;
}

bool isPlain(std::string_view text) {
    return text.find('/') == std::string_view::npos &&
           text.find("\u2248") == std::string_view::npos;
}

double plainWidth(std::string_view text, double height, bool isBold) {
    int units = 0;
    for (std::size_t at = 0; at < text.size();) {
        units += advanceOf(takeCharacter(text, at)).value_or(advanceOf(U'?').value_or(0));
    }
    const double bold = isBold && !text.empty() ? kBoldShift * height : 0.0;
    return height * units / kCapHeightUnits + bold;
}

// Measures runs that layOutText() has taken apart already.
class PlainMetrics final : public TextMetrics {
  public:
    [[nodiscard]] double width(std::string_view text, double height, bool isBold) const override {
        return plainWidth(text, height, isBold);
    }
};

}  // namespace

double LetteringMetrics::width(std::string_view text, double height, bool isBold) const {
    return isPlain(text) ? plainWidth(text, height, isBold)
                         : layOutText(text, height, isBold, PlainMetrics()).width;
}

}  // namespace shoulderline
