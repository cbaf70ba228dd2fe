#include "core/measure/angle_text.h"

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

double readDegrees(std::string_view text) {
    const auto angle = readAngle(text);
    return angle ? angle->degrees() : -12345.0;
}

TEST(ReadAngle, DegreesAreReadWithAndWithoutTheirSign) {
    EXPECT_DOUBLE_EQ(readDegrees("104°"), 104);
    EXPECT_DOUBLE_EQ(readDegrees("104 deg"), 104);
    EXPECT_DOUBLE_EQ(readDegrees("12.5"), 12.5);
    EXPECT_DOUBLE_EQ(readDegrees("12,5 °"), 12.5);
    EXPECT_DOUBLE_EQ(readDegrees("7 1/2°"), 7.5);
    EXPECT_DOUBLE_EQ(readDegrees("−3°"), -3);
}

// One degree is 60 minutes and 3600 seconds of arc: ISO 80000-3.
TEST(ReadAngle, MinutesAndSecondsAreSixtieths) {
    EXPECT_DOUBLE_EQ(readDegrees("12° 30'"), 12.5);
    EXPECT_DOUBLE_EQ(readDegrees("12°30′36″"), 12.51);
    EXPECT_DOUBLE_EQ(readDegrees("-12° 15'"), -12.25);
}

TEST(ReadAngle, TextThatIsNoAngleIsRefused) {
    for (const char* text : {"abc",
                             "12° 30",
                             "12° 60'",
                             "12.5° 30'",
                             "12° 30\"",
                             "12 30'",
                             "12°°",
                             "°",
                             "12° 3.5' 2\""}) {
        EXPECT_FALSE(readAngle(text).has_value()) << text;
    }
    EXPECT_EQ(readAngle(" ").error().code, ErrorCode::EmptyText);
}

TEST(ReadAngle, LengthIsRefusedAsTheWrongDimension) {
    EXPECT_EQ(readAngle("12 mm").error().code, ErrorCode::WrongDimension);
    EXPECT_EQ(readAngle("12'").error().code, ErrorCode::WrongDimension);
}

TEST(ReadAngle, MoreThanTenTurnsAreOutOfRange) {
    EXPECT_TRUE(readAngle("3600°").has_value());
    EXPECT_EQ(readAngle("3601°").error().code, ErrorCode::OutOfRange);
}

TEST(ShowAngle, DecimalIsShownOnlyWhenNeeded) {
    EXPECT_EQ(showAngle(Angle::degrees(104)), "104°");
    EXPECT_EQ(showAngle(Angle::degrees(12.5)), "12.5°");
    EXPECT_EQ(showAngle(Angle::degrees(12.04)), "12°");
    EXPECT_EQ(showAngle(Angle::degrees(-7)), "\u22127°");
    EXPECT_EQ(showAngle(Angle::degrees(-0.01)), "0°");
}

}  // namespace
}  // namespace shoulderline
