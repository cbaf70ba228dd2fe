#include "core/drawing/wrapped_text.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "tests/core/drawing/sheet_checks.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

TEST(WrappedText, KeepsEveryWordAndEveryLineWithinItsWidth) {
    const std::string text =
        "hollow chisel, in the mortiser: clamp the work, keep hands clear of the chisel";
    for (const double width : {30.0, 60.0, 300.0}) {
        std::string joined;
        for (const std::string& line : wrapText(text, width, 2.5, kMetrics)) {
            EXPECT_LE(kMetrics.width(line, 2.5, false), width);
            joined += (joined.empty() ? "" : " ") + line;
        }
        EXPECT_EQ(joined, text);
    }
    EXPECT_TRUE(wrapText("", 10.0, 2.5, kMetrics).empty());
}

// 24 at the end of a line and 7/8 at the head of the next would be read as two sizes.
TEST(WrappedText, AMixedNumberAndItsOtherUnitStayOnOneLine) {
    const std::string text = "fence 1 1/4 [31.8] from the face edge, from 24 7/8 [631.8] on";
    for (double width = 20.0; width < 120.0; width += 1.0) {
        const std::vector<std::string> lines = wrapText(text, width, 2.5, kMetrics);
        for (const std::string whole : {"1 1/4 [31.8]", "24 7/8 [631.8]"}) {
            EXPECT_EQ(std::count_if(lines.begin(),
                                    lines.end(),
                                    [&](const std::string& line) {
                                        return line.find(whole) != std::string::npos;
                                    }),
                      1)
                << whole << " at " << width;
        }
    }
}

}  // namespace
}  // namespace shoulderline
