#include "core/measure/text_cursor.h"

#include <array>

namespace shoulderline {

namespace {

constexpr std::size_t kLongestQuote = 24;  // bytes of a word repeated in an error

struct RawCharacter {
    char32_t character;
    std::size_t bytes;
};

// Strict UTF-8 as RFC 3629 states it: no overlong forms, no surrogates, nothing over U+10FFFF.
RawCharacter decodeUtf8(std::string_view text) {
    const auto byte = [&](std::size_t i) {
        return static_cast<char32_t>(static_cast<unsigned char>(text[i]));
    };
    const char32_t lead = byte(0);
    if (lead < 0x80) {
        return {lead, 1};
    }
    const std::size_t size = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    constexpr std::array<char32_t, 5> kSmallest = {0, 0, 0x80, 0x800, 0x10000};
    if (lead < 0xC2 || lead > 0xF4 || text.size() < size) {
        return {kBadBytes, 1};
    }
    char32_t value = lead & (0x7FU >> size);
    for (std::size_t i = 1; i < size; ++i) {
        if ((byte(i) & 0xC0U) != 0x80U) {
            return {kBadBytes, 1};
        }
        value = (value << 6U) | (byte(i) & 0x3FU);
    }
    const bool isSurrogate = value >= 0xD800 && value <= 0xDFFF;
    if (value < kSmallest[size] || value > 0x10FFFF || isSurrogate) {
        return {kBadBytes, 1};
    }
    return {value, size};
}

char32_t foldSign(char32_t c) {
    switch (c) {
        case U'\t':
        case U'\n':
        case U'\r':
        case U'\u00A0':  // no-break space
        case U'\u202F':  // narrow no-break space
        case U'\u205F':  // medium mathematical space
        case U'\u3000':  // ideographic space
            return U' ';
        case U'\u2018':
        case U'\u2019':
        case U'\u2032':
            return U'\'';
        case U'\u201C':
        case U'\u201D':
        case U'\u2033':
            return U'"';
        case U'\u2010':  // hyphen
        case U'\u2011':  // no-break hyphen
        case U'\u2013':  // en dash, which word processors put for a hyphen between digits
            return U'-';
        case U'\u2044':
        case U'\u2215':
            return U'/';
        case U'\u00D7':
            return U'*';
        default:
            return c >= U'\u2000' && c <= U'\u200A' ? U' ' : c;
    }
}

}  // namespace

std::optional<VulgarFraction> vulgarFraction(char32_t character) {
    constexpr std::array<VulgarFraction, 3> kLatin = {{{1, 4}, {1, 2}, {3, 4}}};
    constexpr std::array<VulgarFraction, 15> kNumberForms = {{{1, 7},
                                                              {1, 9},
                                                              {1, 10},
                                                              {1, 3},
                                                              {2, 3},
                                                              {1, 5},
                                                              {2, 5},
                                                              {3, 5},
                                                              {4, 5},
                                                              {1, 6},
                                                              {5, 6},
                                                              {1, 8},
                                                              {3, 8},
                                                              {5, 8},
                                                              {7, 8}}};
    if (character >= U'\u00BC' && character <= U'\u00BE') {
        return kLatin[character - U'\u00BC'];
    }
    if (character >= U'\u2150' && character <= U'\u215E') {
        return kNumberForms[character - U'\u2150'];
    }
    return std::nullopt;
}

bool isLetter(char32_t c) {
    if (c < 0x80) {
        return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z') || c == U'_';
    }
    const bool isSign = c < 0xC0 || c == 0xD7 || c == 0xF7;
    const bool isPunctuationOrSymbol = (c >= 0x2000 && c <= 0x2BFF) || (c >= 0x3000 && c <= 0x303F);
    const bool isFormatting = c == 0x061C || c == 0x180E || (c >= 0xFE00 && c <= 0xFE0F);
    const bool isPrivateOrSpecial = (c >= 0xE000 && c <= 0xF8FF) || c == 0xFEFF || c >= 0xFFF0;
    return !isSign && !isPunctuationOrSymbol && !isFormatting && !isPrivateOrSpecial;
}

TextCursor::Decoded TextCursor::decodeAt(std::size_t position) const {
    if (position >= text_.size()) {
        return {kEndOfText, 0};
    }
    const RawCharacter raw = decodeUtf8(text_.substr(position));
    return {foldSign(raw.character), raw.bytes};
}

char32_t TextCursor::peekSecond() const {
    return decodeAt(position_ + decodeAt(position_).bytes).character;
}

bool TextCursor::take(char32_t character) {
    const Decoded here = decodeAt(position_);
    if (here.character != character) {
        return false;
    }
    position_ += here.bytes;
    return true;
}

bool TextCursor::skipSpaces() {
    bool any = false;
    while (take(U' ')) {
        any = true;
    }
    return any;
}

std::string_view TextCursor::takeDigits() {
    const std::size_t start = position_;
    while (position_ < text_.size() && text_[position_] >= '0' && text_[position_] <= '9') {
        ++position_;
    }
    return textFrom(start);
}

std::string_view TextCursor::takeWord() {
    const std::size_t start = position_;
    for (Decoded here = decodeAt(position_); isLetter(here.character) || isDigit(here.character);
         here = decodeAt(position_)) {
        position_ += here.bytes;
    }
    return textFrom(start);
}

std::string TextCursor::describe() const {
    const Decoded here = decodeAt(position_);
    if (here.character == kEndOfText) {
        return "the end";
    }
    if (here.character == kBadBytes) {
        return "a byte that is not UTF-8 text";
    }
    if (here.character < 0x20 || here.character == 0x7F) {
        return "a control character";
    }
    TextCursor ahead = *this;
    std::size_t end = position_ + here.bytes;
    while (isLetter(ahead.peek()) || isDigit(ahead.peek())) {
        ahead.advance();
        if (ahead.position() - position_ > kLongestQuote) {
            break;
        }
        end = ahead.position();
    }
    std::string quoted = "'";
    quoted += text_.substr(position_, end - position_);
    return quoted += '\'';
}

}  // namespace shoulderline
