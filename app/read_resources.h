#pragma once

#include "core/measure/result.h"
#include "ui/document/resources.h"

namespace shoulderline {

// The rule book, the workshop and the species that are built into the program.
[[nodiscard]] Result<Resources> readResources();

}  // namespace shoulderline
