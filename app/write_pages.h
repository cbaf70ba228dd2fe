#pragma once

#include <string>
#include <vector>

#include "core/drawing/calibration.h"
#include "core/drawing/paper.h"
#include "core/measure/result.h"

namespace shoulderline {

// Writes the job to `out`: an SVG for each page where the name ends in .svg ("X.svg" for a single
// page, else "X-1.svg", "X-2.svg" and on), a PDF otherwise. Gives the files written. Needs a
// QGuiApplication. `correction`, for a file that one printer is to print, is for PDF only. Errors:
// CannotWrite; OutOfRange for a correction of SVG files.
[[nodiscard]] Result<std::vector<std::string>> writePages(const PrintJob& job,
                                                          const std::string& out,
                                                          const std::string& date,
                                                          const ScaleCorrection& correction = {});

}  // namespace shoulderline
