#pragma once

#include <compare>
#include <numbers>

namespace shoulderline {

// A plane angle, held as a double in radians; factories and readers for degrees. Whole multiples
// of 90 degrees keep exact sines and cosines, so that square work stays square to the last bit.
class Angle {
  public:
    constexpr Angle() = default;
    [[nodiscard]] static constexpr Angle radians(double value) { return Angle(value); }
    [[nodiscard]] static constexpr Angle degrees(double value) {
        return Angle(value * std::numbers::pi / 180.0);
    }

    [[nodiscard]] constexpr double radians() const { return radians_; }
    [[nodiscard]] constexpr double degrees() const { return radians_ * 180.0 / std::numbers::pi; }

    // Sine and cosine; exactly 0, 1 or -1 at whole multiples of 90 degrees (within 1e-12 rad).
    [[nodiscard]] double sin() const;
    [[nodiscard]] double cos() const;

    friend constexpr auto operator<=>(Angle, Angle) = default;
    constexpr Angle operator-() const { return Angle(-radians_); }
    friend constexpr Angle operator+(Angle a, Angle b) { return Angle(a.radians_ + b.radians_); }
    friend constexpr Angle operator-(Angle a, Angle b) { return Angle(a.radians_ - b.radians_); }
    friend constexpr Angle operator*(Angle a, double k) { return Angle(a.radians_ * k); }
    friend constexpr Angle operator*(double k, Angle a) { return Angle(a.radians_ * k); }
    friend constexpr Angle operator/(Angle a, double k) { return Angle(a.radians_ / k); }
    friend constexpr double operator/(Angle a, Angle b) { return a.radians_ / b.radians_; }

  private:
    explicit constexpr Angle(double value) : radians_(value) {}
    double radians_ = 0.0;
};

}  // namespace shoulderline
