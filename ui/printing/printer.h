#pragma once

#include <QPrinter>

#include "core/drawing/paper.h"
#include "core/measure/result.h"

namespace shoulderline {

// Whether any printer is set up. Errors: CannotWrite with a sentence for the maker.
[[nodiscard]] Result<void> findPrinter();

// Prints the job in true size: whole page, no margins, print-scaling none. Errors: CannotWrite
// where the printer refuses.
[[nodiscard]] Result<void> print(const PrintJob& job, QPrinter& printer);

}  // namespace shoulderline
