#pragma once

#include <string>
#include <vector>

#include "core/measure/unit.h"

namespace shoulderline {

// The scales that sheets are drawn at, from full size downwards: those of ISO 5455 (1:1, 1:2, 1:5,
// 1:10, ...), for pieces in inches 1:4, 1:8, ... between them (common practice: a quarter is 3 in
// to the foot).
[[nodiscard]] std::vector<double> standardScales(Unit unit);

// The largest of those at which `longest` millimetres of wood take at most `room` on the sheet;
// below the smallest, the scale at which they just do. Both above zero.
[[nodiscard]] double scaleThatFits(double longest, double room, Unit unit);

// "1 : 4"; "1 : 2.5" for one in between; enlargements as "2 : 1".
[[nodiscard]] std::string scaleText(double scale);

}  // namespace shoulderline
