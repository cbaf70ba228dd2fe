#include "core/measure/angle.h"

#include <cmath>

namespace shoulderline {

namespace {

constexpr double kRightAngle = std::numbers::pi / 2.0;
constexpr double kSameAngle = 1e-12;

// Sine of `radians`, exact at whole multiples of a right angle.
double exactSine(double radians) {
    const double turns = std::round(radians / kRightAngle);
    if (std::abs(radians - turns * kRightAngle) > kSameAngle) {
        return std::sin(radians);
    }
    const int quarter = static_cast<int>(std::fmod(std::fmod(turns, 4.0) + 4.0, 4.0));
    constexpr double kSines[] = {0.0, 1.0, 0.0, -1.0};
    return kSines[quarter];
}

}  // namespace

double Angle::sin() const {
    return exactSine(radians_);
}

double Angle::cos() const {
    return exactSine(radians_ + kRightAngle);
}

}  // namespace shoulderline
