#pragma once

#include <QFont>

namespace shoulderline {

// The drawings' lettering as a font of kLetteringPixels to the em, unhinted and without kerning, so
// that it is as wide as LetteringMetrics says at every scale. Loads the font that is bundled with
// the program; needs a QGuiApplication.
[[nodiscard]] QFont letteringFont();

inline constexpr int kLetteringPixels = 1000;

}  // namespace shoulderline
