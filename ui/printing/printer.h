#pragma once

#include <QPrinter>

#include "core/drawing/calibration.h"
#include "core/drawing/paper.h"
#include "core/measure/result.h"

namespace shoulderline {

// Whether any printer is set up. Errors: CannotWrite with a sentence for the maker.
[[nodiscard]] Result<void> findPrinter();

// Prints the job in true size, its pages stretched by `correction`: whole page, no margins,
// print-scaling none, on the paper that the job is laid out for, through the printer and with what
// is `chosen` besides; of the pages those that its range asks for. Errors: CannotWrite where the
// printer refuses.
[[nodiscard]] Result<void> print(const PrintJob& job,
                                 const QPrinter& chosen,
                                 const ScaleCorrection& correction = {});

}  // namespace shoulderline
