#pragma once

#include "core/measure/result.h"

namespace shoulderline {

// The range of the published table that the equation below stands for.
inline constexpr double kLeastCelsius = -1.1;
inline constexpr double kMostCelsius = 132.2;
inline constexpr double kLeastHumidity = 5.0;
inline constexpr double kMostHumidity = 95.0;

// The moisture content, in percent, that wood comes to in still air of `celsius` degrees and a
// relative humidity of `humidity` percent. Within 0.07 of the printed table; wood itself differs
// more, by species and piece. Errors: OutOfRange outside the table (NaN too).
// Source: Glass and Zelinka, Wood Handbook, FPL-GTR-282 (2021), chapter 4, eq. (4-5), p. 4-3.
[[nodiscard]] Result<double> equilibriumMoisture(double celsius, double humidity);

}  // namespace shoulderline
