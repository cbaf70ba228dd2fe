#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/measure/text_cursor.h"

namespace shoulderline {

// The functions that expressions know.
enum class Function { Min, Max, Round, Sin, Cos, Tan };

// The function of this name (min, max, round, sin, cos, tan), or nothing.
[[nodiscard]] std::optional<Function> findFunction(std::string_view name);

// Steps over the name that stands here and gives it with each run of spaces made one space; empty
// where there is none. A name is words of letters, digits and low lines, parted by spaces; the
// first word begins with a letter. It runs on as far as words do: `seat height / 2` has the name
// `seat height`, `rail 2` is one name.
[[nodiscard]] std::string takeName(TextCursor& cursor);

// `text` without spaces around it and with each run of spaces inside made one space.
[[nodiscard]] std::string tidyName(std::string_view text);

// True if a measure can have this name: a name as above, whole, tidy, of 80 bytes at most, which is
// neither a unit word (in, mm, feet, ...) nor a function's name. `depth in front` is a name, since
// units stand only after numbers. Names differ by capitals.
[[nodiscard]] bool isMeasureName(std::string_view text);

}  // namespace shoulderline
