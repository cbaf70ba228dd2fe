#include "core/resolve/swing_angle.h"

#include <cmath>

namespace shoulderline {

std::optional<Angle> leanAgainst(double behind, double above, double back) {
    const double distance = std::hypot(behind, above);
    if (distance <= std::abs(back)) {
        return std::nullopt;
    }
    constexpr double kLeast = -1e-9;  // radians
    const double lean = std::acos(back / distance) - std::atan2(above, behind);
    if (lean < kLeast || lean >= std::acos(0.0)) {
        return std::nullopt;
    }
    return Angle::radians(lean);
}

double behindAt(Angle lean, double above, double back) {
    return (back + above * std::sin(lean.radians())) / std::cos(lean.radians());
}

double contactAt(double behind, double above, Angle lean) {
    return behind * std::sin(lean.radians()) + above * std::cos(lean.radians());
}

}  // namespace shoulderline
