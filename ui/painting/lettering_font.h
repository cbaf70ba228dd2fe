#pragma once

#include <QFont>
#include <string>

namespace shoulderline {

// The drawings' lettering as a font of kLetteringPixels to the em, unhinted and without kerning, so
// that it is as wide as LetteringMetrics says at every scale. Loads the font that is bundled with
// the program; needs a QGuiApplication.
[[nodiscard]] QFont letteringFont();

// The bytes of that font's file, a TrueType font, for drawings that carry it in themselves.
[[nodiscard]] std::string letteringFontFile();

inline constexpr int kLetteringPixels = 1000;

}  // namespace shoulderline
