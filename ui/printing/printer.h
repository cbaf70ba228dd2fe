#pragma once

#include <QPrinter>

#include "core/drawing/calibration.h"
#include "core/drawing/paper.h"
#include "core/measure/result.h"

namespace shoulderline {

// Whether any printer is set up. Errors: CannotWrite with a sentence for the maker.
[[nodiscard]] Result<void> findPrinter();

// Prints the job in true size, its pages stretched by `correction`: whole page, no margins,
// print-scaling none; of the pages those that the printer's range asks for. Errors: CannotWrite
// where the printer refuses.
[[nodiscard]] Result<void> print(const PrintJob& job,
                                 QPrinter& printer,
                                 const ScaleCorrection& correction = {});

}  // namespace shoulderline
