#pragma once

#include <string>

#include "core/measure/result.h"
#include "core/measure/text_cursor.h"

namespace shoulderline {

inline constexpr const char* kMinusText = "\u2212";

// `value` with at most `decimals` (0 to 9) decimals after a point, trailing zeros dropped, and the
// true minus U+2212 before a negative one. Nearest, as the IEEE 754 value lies.
[[nodiscard]] std::string showDecimal(double value, int decimals);

// Steps over a sign and the spaces around it; true if it was a minus (hyphen or U+2212).
bool takeSign(TextCursor& cursor);

// An error unless only spaces are left. The sentence says what was read whole (`what`: "a length")
// and, where a word is in the way, which `units` are known.
[[nodiscard]] Result<void> expectEnd(TextCursor& cursor, const char* what, const char* units);

}  // namespace shoulderline
