#pragma once

#include <string>
#include <string_view>

namespace shoulderline {

// The family that SVG drawings name for their lettering.
inline constexpr std::string_view kLetteringFamily = "Routed Gothic";

// A style element that carries a font inside an SVG file: a face of kLetteringFamily whose source
// is `fontFile`, the bytes of a TrueType file, whole and unaltered, as a data URI. Empty for no
// bytes.
[[nodiscard]] std::string embeddedFont(std::string_view fontFile);

}  // namespace shoulderline
