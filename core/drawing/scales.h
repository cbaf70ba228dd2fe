#pragma once

#include <string>
#include <vector>

#include "core/measure/unit.h"

namespace shoulderline {

// The scales that sheets are drawn at, from full size downwards: those of ISO 5455 (1:1, 1:2, 1:5,
// 1:10, ...), for pieces in inches 1:4, 1:8, ... between them (common practice: a quarter is 3 in
// to the foot).
[[nodiscard]] std::vector<double> standardScales(Unit unit);

// Those for the views of a whole piece or assembly, from which nothing is set out: with the scales
// in between that a maker's rule has (1:12 is 1 in to the foot, 1:24 half of that; 1:15, 1:25 and
// 1:40 are on rules in millimetres), so that a view fills its sheet.
[[nodiscard]] std::vector<double> viewScales(Unit unit);

// The largest of standardScales() at which `longest` millimetres of wood take at most `room` on the
// sheet; below the smallest, the scale at which they just do. Both above zero.
[[nodiscard]] double scaleThatFits(double longest, double room, Unit unit);

// "1 : 4"; "1 : 2.5" for one in between; enlargements as "2 : 1".
[[nodiscard]] std::string scaleText(double scale);

}  // namespace shoulderline
