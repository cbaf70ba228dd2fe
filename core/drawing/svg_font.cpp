#include "core/drawing/svg_font.h"

#include <algorithm>
#include <cstdint>

namespace shoulderline {

namespace {

// RFC 4648 section 4, with padding.
std::string base64(std::string_view bytes) {
    constexpr std::string_view kDigits =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string text;
    text.reserve((bytes.size() + 2) / 3 * 4);
    for (std::size_t at = 0; at < bytes.size(); at += 3) {
        std::uint32_t three = 0;
        for (std::size_t i = 0; i < 3; ++i) {
            const char byte = at + i < bytes.size() ? bytes[at + i] : '\0';
            three = three << 8U | static_cast<unsigned char>(byte);
        }
        const std::size_t digits = std::min<std::size_t>(bytes.size() - at, 3) + 1;
        for (std::size_t i = 0; i < 4; ++i) {
            text += i < digits ? kDigits[three >> (18U - 6U * i) & 0x3FU] : '=';
        }
    }
    return text;
}

}  // namespace

// The font may be embedded: the SIL Open Font License 1.1 (resources/fonts/OFL.txt) lets a document
// be made with it on any terms, and its OS/2 table sets no bar. It goes in whole, not cut down to
// the characters that are used: a modified font may not bear its reserved name, and whole it
// carries its copyright notice and licence in its own name table.
std::string embeddedFont(std::string_view fontFile) {
    if (fontFile.empty()) {
        return {};
    }
    return "<style>@font-face{font-family:'" + std::string(kLetteringFamily) +
           "';src:url(data:font/ttf;base64," + base64(fontFile) + ") format('truetype')}</style>\n";
}

}  // namespace shoulderline
