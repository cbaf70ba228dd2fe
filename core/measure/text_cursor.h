#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace shoulderline {

// Signs that TextCursor keeps apart from plain ASCII.
inline constexpr char32_t kMinusSign = U'\u2212';
inline constexpr char32_t kDivisionSign = U'\u00F7';
inline constexpr char32_t kDegreeSign = U'\u00B0';
inline constexpr char32_t kAboutSign = U'\u2248';
inline constexpr char32_t kEndOfText = 0xFFFFFFFF;  // past the last character
inline constexpr char32_t kBadBytes = 0xFFFFFFFE;   // not UTF-8 (RFC 3629)

// One of the fraction characters of Unicode, as numerator and denominator.
struct VulgarFraction {
    int numerator = 0;
    int denominator = 1;
};

// The fraction that a character stands for: U+00BC to U+00BE and U+2150 to U+215E (Unicode 15,
// blocks Latin-1 Supplement and Number Forms); nothing for any other character.
[[nodiscard]] std::optional<VulgarFraction> vulgarFraction(char32_t character);

[[nodiscard]] constexpr bool isDigit(char32_t c) {
    return c >= U'0' && c <= U'9';
}

// Letters of names: ASCII letters, the low line, and those of other scripts in the basic plane.
// Signs, punctuation, spaces and control characters of Unicode are no letters.
[[nodiscard]] bool isLetter(char32_t c);

// Walks over UTF-8 text one character at a time, seeing typographic variants as one sign: every
// space as ' ', ′ ’ ‘ as ', ″ ” “ as ", hyphens and the en dash as '-', fraction and division
// slashes as '/', × as '*'. The true minus U+2212 and ÷ stay themselves. Positions are byte
// offsets. Does not own the text.
class TextCursor {
  public:
    explicit TextCursor(std::string_view text) : text_(text) {}

    [[nodiscard]] std::size_t position() const { return position_; }
    void moveTo(std::size_t position) { position_ = position; }
    [[nodiscard]] bool atEnd() const { return position_ >= text_.size(); }
    [[nodiscard]] std::string_view textFrom(std::size_t start) const {
        return text_.substr(start, position_ - start);
    }

    // The character here, or the one after it; kEndOfText past the end.
    [[nodiscard]] char32_t peek() const { return decodeAt(position_).character; }
    [[nodiscard]] char32_t peekSecond() const;

    void advance() { position_ += decodeAt(position_).bytes; }
    // Steps over `character` if it is the one here.
    bool take(char32_t character);
    // Steps over spaces; true if there were any.
    bool skipSpaces();
    // Steps over a run of digits, and gives it; empty if there is none here.
    std::string_view takeDigits();
    // Steps over a run of letters and digits, and gives it; empty if there is none here.
    std::string_view takeWord();

    // What stands here, in words for an error's sentence: 'rail', '/', 'the end'.
    [[nodiscard]] std::string describe() const;

  private:
    struct Decoded {
        char32_t character;
        std::size_t bytes;
    };
    [[nodiscard]] Decoded decodeAt(std::size_t position) const;

    std::string_view text_;
    std::size_t position_ = 0;
};

}  // namespace shoulderline
