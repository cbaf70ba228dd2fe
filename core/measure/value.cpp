#include "core/measure/value.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/measure/angle_text.h"

namespace shoulderline {

namespace {

constexpr double kLargestNumber = 1e12;
constexpr double kLargestCount = 10000;
constexpr double kWholeTolerance = 1e-9;
// Divisors nearer to zero are the rounding of a difference that is zero: 1e-12 mm, rad, or plain.
constexpr double kZeroDivisor = 1e-12;

tl::unexpected<Error> wrong(const char* found, const char* wanted) {
    return fail(ErrorCode::WrongDimension,
                std::string("this comes to ") + found + " where " + wanted + " was expected");
}

}  // namespace

Dimension Value::dimension() const {
    switch (kind_) {
        case Kind::Number:
            return Dimension::Number;
        case Kind::Angle:
            return Dimension::Angle;
        case Kind::Bare:
        case Kind::Length:
            break;
    }
    return Dimension::Length;
}

const char* Value::describe() const {
    switch (kind_) {
        case Kind::Number:
            return "a plain number";
        case Kind::Bare:
            return "a number without a unit";
        case Kind::Length:
            return "a length";
        case Kind::Angle:
            break;
    }
    return "an angle";
}

Value Value::alike(const Value& value, const Value& model) {
    if (value.kind_ != Kind::Bare) {
        return value;
    }
    switch (model.kind_) {
        case Kind::Number:
            return number(value.amount_);
        case Kind::Length:
            return length(lengthOf(value.amount_, value.unit_));
        case Kind::Angle:
            return angle(Angle::degrees(value.amount_));
        case Kind::Bare:
            break;
    }
    return value;
}

Result<Value::Pair> Value::aligned(const Value& a, const Value& b, const char* doing) {
    const Pair pair = {alike(a, b), alike(b, a)};
    if (pair.a.kind_ != pair.b.kind_) {
        return fail(ErrorCode::WrongDimension,
                    std::string(a.describe()) + " and " + b.describe() + " cannot be " + doing);
    }
    return pair;
}

Result<Value> Value::checked() const {
    const double size = std::abs(amount_);
    switch (kind_) {
        case Kind::Length:
            if (!(size <= kLongestLength.mm())) {
                return fail(ErrorCode::OutOfRange, "a length here comes to more than 1 km");
            }
            break;
        case Kind::Angle:
            if (!(size <= kWidestAngle.radians())) {
                return fail(ErrorCode::OutOfRange, "an angle here comes to more than ten turns");
            }
            break;
        case Kind::Number:
        case Kind::Bare:
            if (!(size <= kLargestNumber)) {
                return fail(ErrorCode::OutOfRange, "a number here is too large to work with");
            }
            break;
    }
    return *this;
}

Result<Length> Value::asLength() const {
    if (kind_ != Kind::Length && kind_ != Kind::Bare) {
        return wrong(describe(), "a length");
    }
    return alike(*this, length(Length())).checked().map([](const Value& v) {
        return Length::mm(v.amount_);
    });
}

Result<Angle> Value::asAngle() const {
    if (kind_ != Kind::Angle && kind_ != Kind::Bare) {
        return wrong(describe(), "an angle");
    }
    return alike(*this, angle(Angle())).checked().map([](const Value& v) {
        return Angle::radians(v.amount_);
    });
}

Result<double> Value::asNumber() const {
    if (!isFactor()) {
        return wrong(describe(), "a plain number");
    }
    return amount_;
}

Result<int> Value::asCount() const {
    if (!isFactor()) {
        return wrong(describe(), "a count");
    }
    const double whole = std::round(amount_);
    if (std::abs(amount_ - whole) > kWholeTolerance) {
        return fail(ErrorCode::BadText, "a count must be a whole number");
    }
    if (whole < 0 || whole > kLargestCount) {
        return fail(ErrorCode::OutOfRange, "a count must be between 0 and 10,000");
    }
    return static_cast<int>(whole);
}

Result<Value> Value::sum(const Value& a, const Value& b) {
    return aligned(a, b, "added").and_then([](const Pair& p) {
        return Value(p.a.kind_, p.a.amount_ + p.b.amount_, p.a.unit_).checked();
    });
}

Result<Value> Value::difference(const Value& a, const Value& b) {
    return aligned(a, b, "subtracted").and_then([](const Pair& p) {
        return Value(p.a.kind_, p.a.amount_ - p.b.amount_, p.a.unit_).checked();
    });
}

Result<Value> Value::product(const Value& a, const Value& b) {
    if (!a.isFactor() && !b.isFactor()) {
        const bool areLengths = a.kind_ == Kind::Length && b.kind_ == Kind::Length;
        return fail(ErrorCode::WrongDimension,
                    areLengths
                        ? std::string("a length times a length is not a length")
                        : std::string(a.describe()) + " cannot be multiplied by " + b.describe());
    }
    const double amount = a.amount_ * b.amount_;
    if (!a.isFactor() || b.kind_ == Kind::Bare) {
        return Value(a.kind_, amount, a.unit_).checked();
    }
    return Value(b.kind_, amount, b.unit_).checked();
}

Result<Value> Value::quotient(const Value& a, const Value& b) {
    if (std::abs(b.amount_) < kZeroDivisor) {
        return fail(ErrorCode::OutOfRange, "this divides by zero");
    }
    const double amount = a.amount_ / b.amount_;
    if (b.kind_ == Kind::Bare) {
        return Value(a.kind_, amount, a.unit_).checked();
    }
    if (b.kind_ == Kind::Number) {
        return (a.isFactor() ? number(amount) : Value(a.kind_, amount, a.unit_)).checked();
    }
    if (a.kind_ != b.kind_) {
        return fail(ErrorCode::WrongDimension,
                    std::string(a.describe()) + " cannot be divided by " + b.describe());
    }
    return number(amount).checked();
}

Result<Value> Value::smaller(const Value& a, const Value& b) {
    return aligned(a, b, "compared").map([](const Pair& p) {
        return p.b.amount_ < p.a.amount_ ? p.b : p.a;
    });
}

Result<Value> Value::larger(const Value& a, const Value& b) {
    return aligned(a, b, "compared").map([](const Pair& p) {
        return p.b.amount_ > p.a.amount_ ? p.b : p.a;
    });
}

Result<Value> Value::rounded(const Value& a, const Value& step) {
    const auto pair = aligned(a, step, "rounded one to the other");
    if (!pair) {
        return tl::unexpected(pair.error());
    }
    const double grid = pair->b.amount_;
    if (!(grid > kZeroDivisor)) {
        return fail(ErrorCode::OutOfRange, "the step to round to must be over zero");
    }
    const double multiple = std::floor(pair->a.amount_ / grid + 0.5);
    return Value(pair->a.kind_, multiple * grid, pair->a.unit_).checked();
}

}  // namespace shoulderline
