#include "core/measure/length_statement.h"

#include <gtest/gtest.h>

#include "core/measure/length_text.h"

namespace shoulderline {
namespace {

TEST(LengthStatement, ReadsBackAsTheSameLengthWhateverTheUnitIs) {
    for (const double mm : {0.0, 6.35, -6.35, 100.0, 0.001, 418.7, -3.175, 25.4 * 17.984375}) {
        for (const Unit preferred : {Unit::Inch, Unit::Millimetre}) {
            const std::string text = lengthStatement(Length::mm(mm), preferred);
            for (const Unit bare : {Unit::Inch, Unit::Millimetre}) {
                EXPECT_TRUE(nearlyEqual(readLength(text, bare).value(), Length::mm(mm))) << text;
            }
        }
    }
}

TEST(OffsetStatement, AddsToPlainLengthsAndPutsAnOffsetBehindTheRest) {
    const auto offset = [](const char* text, double inches) {
        return offsetStatement(text, Length::inches(inches), Unit::Inch);
    };

    EXPECT_EQ(offset("2 in", 0.5), "2 1/2 in");
    EXPECT_EQ(offset("", 0.25), "1/4 in");
    EXPECT_EQ(offset("seat depth / 2", 0.25), "seat depth / 2 + 1/4 in");
    EXPECT_EQ(offset("seat depth / 2 + 1/4 in", 0.25), "seat depth / 2 + 1/2 in");
    EXPECT_EQ(offset("seat depth / 2 + 1/4 in", -0.5), "seat depth / 2 - 1/4 in");
    EXPECT_EQ(offset("seat depth - 1/4 in", 0.25), "seat depth");
    EXPECT_EQ(offset("seat depth - (gap + 1 in)", 0.25), "seat depth - (gap + 1 in) + 1/4 in");
    EXPECT_EQ(offset("seat depth - gap", 0.25), "seat depth - gap + 1/4 in");
}

TEST(OffsetStatement, LeavesWhatItCannotReadAsItIs) {
    EXPECT_EQ(offsetStatement("2 boats +", Length::inches(1), Unit::Inch), "2 boats +");
}

}  // namespace
}  // namespace shoulderline
