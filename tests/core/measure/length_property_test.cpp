#include <string>

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/measure/angle_text.h"
#include "core/measure/length_text.h"

namespace shoulderline {
namespace {

constexpr int kMostInches = 39000;  // under a kilometre

RC_GTEST_PROP(LengthText, ExactFractionReadsBackTheSame, ()) {
    const int denominator = *rc::gen::element(8, 16, 32, 64);
    const int parts = *rc::gen::inRange(-kMostInches * denominator, kMostInches * denominator);
    const bool withUnit = *rc::gen::arbitrary<bool>();
    const auto length = Length::inches(static_cast<double>(parts) / denominator);

    const std::string shown = showLength(length, LengthStyle::fractions(denominator), withUnit);

    RC_ASSERT((readLength(shown, Unit::Inch) == length));
}

RC_GTEST_PROP(LengthText, MillimetresReadBackTheSame, ()) {
    const int tenths = *rc::gen::inRange(-10'000'000, 10'000'000);
    const bool withUnit = *rc::gen::arbitrary<bool>();
    const auto length = Length::mm(tenths / 10.0);

    const std::string shown = showLength(length, LengthStyle::millimetres(1), withUnit);

    RC_ASSERT((readLength(shown, Unit::Millimetre) == length));
}

RC_GTEST_PROP(LengthText, DecimalInchesReadBackTheSame, ()) {
    const int thousandths = *rc::gen::inRange(-39'000'000, 39'000'000);
    const auto length = Length::inches(thousandths / 1000.0);

    const std::string shown = showLength(length, LengthStyle::decimalInches(3), true);

    RC_ASSERT((readLength(shown, Unit::Millimetre) == length));
}

RC_GTEST_PROP(LengthText, RoundedFractionReadsBackWithinHalfAStep, ()) {
    const int denominator = *rc::gen::element(8, 16, 32, 64);
    const auto length = Length::mm(*rc::gen::inRange(-9'000'000, 9'000'000) / 10.0);

    const auto read =
        readLength(showLength(length, LengthStyle::fractions(denominator)), Unit::Inch);

    RC_ASSERT(read.has_value());
    RC_ASSERT(nearlyEqual(*read, length, Length::inches(0.5 / denominator) + kLengthTolerance));
}

RC_GTEST_PROP(LengthText, AnyBytesAreReadOrRefusedWithAPlaceInTheText, ()) {
    const auto text = *rc::gen::arbitrary<std::string>();

    const auto length = readLength(text, Unit::Inch);

    RC_ASSERT(length.has_value() || length.error().position <= text.size());
    RC_ASSERT(length.has_value() || !length.error().message.empty());
}

RC_GTEST_PROP(AngleText, TenthsOfADegreeReadBackTheSame, ()) {
    const auto angle = Angle::degrees(*rc::gen::inRange(-36000, 36000) / 10.0);

    RC_ASSERT((readAngle(showAngle(angle)) == angle));
}

}  // namespace
}  // namespace shoulderline
