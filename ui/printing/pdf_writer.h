#pragma once

#include <filesystem>
#include <string>

#include "core/drawing/calibration.h"
#include "core/drawing/paper.h"
#include "core/measure/result.h"

namespace shoulderline {

// The job as the bytes of a PDF in true size, its font embedded; `correction` only for a file that
// is meant for one printer. Needs a QGuiApplication (offscreen
// will do). The bytes are the same for the same job and date, given that
// QHashSeed::setDeterministicGlobalSeed() ran before the application was made. Errors: CannotWrite.
[[nodiscard]] Result<std::string> pdfOf(const PrintJob& job,
                                        const std::string& date,
                                        const ScaleCorrection& correction = {});

// The same in a file, put in its place whole or not at all. Errors: those of pdfOf() and of
// replaceFile() (a full disk, a folder that may not be written), naming the file.
[[nodiscard]] Result<void> writePdf(const PrintJob& job,
                                    const std::filesystem::path& path,
                                    const std::string& date,
                                    const ScaleCorrection& correction = {});

}  // namespace shoulderline
