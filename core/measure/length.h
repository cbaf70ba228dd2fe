#pragma once

#include <cmath>
#include <compare>

namespace shoulderline {

// A length, held as a double in millimetres. 1 in = 25.4 mm exactly (international inch, 1959).
// Value type; may be negative (an offset) or zero. Never NaN when built from finite values.
// Equality is exact: use nearlyEqual for lengths that were computed.
class Length {
  public:
    constexpr Length() = default;
    [[nodiscard]] static constexpr Length mm(double value) { return Length(value); }
    [[nodiscard]] static constexpr Length inches(double value) {
        return Length(value * kMmPerInch);
    }

    [[nodiscard]] constexpr double mm() const { return mm_; }
    [[nodiscard]] constexpr double inches() const { return mm_ / kMmPerInch; }

    friend constexpr auto operator<=>(Length, Length) = default;
    constexpr Length operator-() const { return Length(-mm_); }
    constexpr Length& operator+=(Length o) {
        mm_ += o.mm_;
        return *this;
    }
    constexpr Length& operator-=(Length o) {
        mm_ -= o.mm_;
        return *this;
    }
    friend constexpr Length operator+(Length a, Length b) { return Length(a.mm_ + b.mm_); }
    friend constexpr Length operator-(Length a, Length b) { return Length(a.mm_ - b.mm_); }
    friend constexpr Length operator*(Length a, double k) { return Length(a.mm_ * k); }
    friend constexpr Length operator*(double k, Length a) { return Length(a.mm_ * k); }
    friend constexpr Length operator/(Length a, double k) { return Length(a.mm_ / k); }
    friend constexpr double operator/(Length a, Length b) { return a.mm_ / b.mm_; }

    static constexpr double kMmPerInch = 25.4;
    static constexpr double kMmPerMetre = 1000.0;

  private:
    explicit constexpr Length(double value) : mm_(value) {}
    double mm_ = 0.0;
};

// Lengths closer than this are the same size: 1 micrometre, far under what any tool holds and far
// over the rounding of doubles on a 100 m scale.
inline constexpr Length kLengthTolerance = Length::mm(0.001);

[[nodiscard]] inline bool nearlyEqual(Length a, Length b, Length tolerance = kLengthTolerance) {
    return std::abs((a - b).mm()) <= tolerance.mm();
}

// `value` taken to a whole multiple of `grid`: nearest (halves go up), down, or up. A value within
// a nanometre of a multiple counts as that multiple. A grid of zero or less leaves the value as it
// is.
[[nodiscard]] Length snapNearest(Length value, Length grid);
[[nodiscard]] Length snapDown(Length value, Length grid);
[[nodiscard]] Length snapUp(Length value, Length grid);

}  // namespace shoulderline
