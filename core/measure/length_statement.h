#pragma once

#include <string>

#include "core/measure/length.h"
#include "core/measure/unit.h"

namespace shoulderline {

// A length as a statement with its unit, that reads back the same whatever the unit of bare numbers
// is: under Unit::Inch in inches where it is made of 64ths, else, and under Unit::Millimetre, in
// millimetres to the micrometre.
[[nodiscard]] std::string lengthStatement(Length length, Unit preferred = Unit::Inch);

// `statement` with `by` added: a plain length becomes another, an expression gets it as an offset
// behind it ("seat depth / 2 + 5 mm"), which replaces the offset that it has there. Empty counts as
// zero. One that cannot be read comes back as it is.
[[nodiscard]] std::string offsetStatement(const std::string& statement, Length by, Unit unit);

}  // namespace shoulderline
