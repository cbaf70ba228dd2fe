#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/geometry/vec.h"
#include "core/measure/result.h"

namespace shoulderline {

// A PDF's bytes as Qt writes them, made fit to print from: page boxes as large as the paper (Qt
// rounds them to whole points; the drawing keeps its place from the top left corner), viewers asked
// to print at full size (ViewerPreferences PrintScaling None), the date given in place of the
// clock's, and a file identifier that follows from the content: the same drawing gives the same
// bytes. `pages` are the sizes in millimetres, one for each page; `date` is ISO 8601 (2026-11-24;
// empty for 2000-01-01). Errors: CannotWrite for bytes that are not such a PDF.
[[nodiscard]] Result<std::string> finishPdf(std::string_view bytes,
                                            const std::vector<Vec2>& pages,
                                            std::string_view date);

}  // namespace shoulderline
