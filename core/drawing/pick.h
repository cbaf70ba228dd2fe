#pragma once

#include <optional>

#include "core/drawing/sheet.h"

namespace shoulderline {

// What the sheet shows at `at` (millimetres on the sheet): the subject of the nearest line within
// `tolerance`, else of the smallest tint that holds the point. Subjects of kind None are passed
// over.
[[nodiscard]] std::optional<Subject> subjectAt(const Sheet& sheet, Vec2 at, double tolerance);

}  // namespace shoulderline
