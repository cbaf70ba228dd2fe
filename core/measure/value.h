#pragma once

#include "core/measure/angle.h"
#include "core/measure/length.h"
#include "core/measure/result.h"
#include "core/measure/unit.h"

namespace shoulderline {

enum class Dimension { Number, Length, Angle };

// What an expression comes to: a length, an angle, a plain number, or a bare number, which is one
// written without a unit, whose part its surroundings decide:
//   - beside a length (added, compared) it is a length in the piece's unit;
//   - beside an angle it is degrees;
//   - as the factor or divisor of a length, an angle or a plain number, and beside a plain number,
//     it is a plain number;
//   - among bare numbers it stays bare.
// A plain number arises only from a length over a length, an angle over an angle, or a sine,
// cosine or tangent; it is never taken for a length.
class Value {
  public:
    Value() = default;  // the plain number 0
    [[nodiscard]] static Value number(double amount) { return {Kind::Number, amount, Unit::Inch}; }
    [[nodiscard]] static Value length(Length length) {
        return {Kind::Length, length.mm(), Unit::Millimetre};
    }
    [[nodiscard]] static Value angle(Angle angle) {
        return {Kind::Angle, angle.radians(), Unit::Millimetre};
    }
    [[nodiscard]] static Value bare(double amount, Unit unit) { return {Kind::Bare, amount, unit}; }

    // A bare number that stands alone counts as a length.
    [[nodiscard]] Dimension dimension() const;
    [[nodiscard]] bool isBare() const { return kind_ == Kind::Bare; }

    // The value as what is wanted. WrongDimension where it is something else; a bare number is a
    // length in its unit, degrees, or a plain number, as asked. OutOfRange where a bare number is
    // too large for it.
    [[nodiscard]] Result<Length> asLength() const;
    [[nodiscard]] Result<Angle> asAngle() const;
    [[nodiscard]] Result<double> asNumber() const;
    // A whole number of 0 to 10,000 (within 1e-9), from a plain or bare number: how many slats.
    [[nodiscard]] Result<int> asCount() const;

    friend bool operator==(const Value&, const Value&) = default;

    // Arithmetic with the dimensions checked. Errors (position 0): WrongDimension; OutOfRange for a
    // division by zero and for results that are not finite, over one kilometre, over ten turns, or
    // plain numbers over 1e12.
    [[nodiscard]] static Result<Value> sum(const Value& a, const Value& b);
    [[nodiscard]] static Result<Value> difference(const Value& a, const Value& b);
    [[nodiscard]] static Result<Value> product(const Value& a, const Value& b);
    [[nodiscard]] static Result<Value> quotient(const Value& a, const Value& b);
    [[nodiscard]] static Result<Value> smaller(const Value& a, const Value& b);
    [[nodiscard]] static Result<Value> larger(const Value& a, const Value& b);
    // `a` taken to the nearest whole multiple of `step`, halves up; the step must be over zero.
    [[nodiscard]] static Result<Value> rounded(const Value& a, const Value& step);
    [[nodiscard]] Value negated() const { return {kind_, -amount_, unit_}; }
    // The value itself, if it is within the limits above.
    [[nodiscard]] Result<Value> checked() const;

  private:
    enum class Kind { Number, Bare, Length, Angle };
    Value(Kind kind, double amount, Unit unit) : kind_(kind), amount_(amount), unit_(unit) {}

    [[nodiscard]] bool isFactor() const { return kind_ == Kind::Number || kind_ == Kind::Bare; }
    [[nodiscard]] const char* describe() const;
    // `value`, if bare, taken as the same kind as `model`.
    [[nodiscard]] static Value alike(const Value& value, const Value& model);
    struct Pair;
    [[nodiscard]] static Result<Pair> aligned(const Value& a, const Value& b, const char* doing);

    Kind kind_ = Kind::Number;
    double amount_ = 0;       // a length in millimetres, an angle in radians, a number as it is
    Unit unit_ = Unit::Inch;  // of a bare number
};

struct Value::Pair {
    Value a;
    Value b;
};

}  // namespace shoulderline
