#include "core/timber/moisture.h"

namespace shoulderline {

Result<double> equilibriumMoisture(double celsius, double humidity) {
    if (!(celsius >= kLeastCelsius && celsius <= kMostCelsius)) {
        return fail(ErrorCode::OutOfRange, "A temperature from -1.1 to 132.2 °C is expected.");
    }
    if (!(humidity >= kLeastHumidity && humidity <= kMostHumidity)) {
        return fail(ErrorCode::OutOfRange, "A relative humidity from 5 to 95 percent is expected.");
    }
    const double t = celsius;
    const double h = humidity / 100.0;
    const double w = 349.0 + 1.29 * t + 0.0135 * t * t;
    const double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
    const double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    const double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    const double kh = k * h;
    const double first = k1 * kh;
    const double second = k1 * k2 * kh * kh;
    return 1800.0 / w * (kh / (1.0 - kh) + (first + 2.0 * second) / (1.0 + first + second));
}

}  // namespace shoulderline
