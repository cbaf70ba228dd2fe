#pragma once

#include <optional>

namespace shoulderline {

// The drawings' lettering, Routed Gothic (resources/fonts/routed-gothic.ttf), in its own units.
inline constexpr int kUnitsPerEm = 1024;
inline constexpr int kCapHeightUnits = 736;  // sCapHeight of its OS/2 table

// How far the pen moves on after `character`; nullopt where the font has no glyph for it.
[[nodiscard]] std::optional<int> advanceOf(char32_t character);

}  // namespace shoulderline
