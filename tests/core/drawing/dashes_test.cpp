#include "core/drawing/dashes.h"

#include <cmath>

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

constexpr LineStyle kDashed{0.25, LineType::Dashed};
constexpr LineStyle kChain{0.25, LineType::LongDashedDotted};
constexpr LineStyle kDoubleDotted{0.25, LineType::LongDashedDoubleDotted};

TEST(Dashes, ContinuousLineIsOneStretch) {
    EXPECT_EQ(drawnStretches(10.0, {0.5, LineType::Continuous}),
              (std::vector<DrawnStretch>{{0.0, 10.0}}));
}

// ISO 128-21: n = (L - 12 d) / 15 d periods; the gaps stay 3 d. From memory of the standard,
// re-derived in the project's notes.
TEST(Dashes, DashedLineFitsWholePeriodsBetweenItsEnds) {
    const std::vector<DrawnStretch> stretches = drawnStretches(40.0, kDashed);

    ASSERT_EQ(stretches.size(), 11u);  // (40 - 3) / 3.75 = 9.87, so 10 periods
    EXPECT_DOUBLE_EQ(stretches.front().from, 0.0);
    EXPECT_DOUBLE_EQ(stretches.back().to, 40.0);
    for (std::size_t i = 0; i + 1 < stretches.size(); ++i) {
        EXPECT_NEAR(stretches[i + 1].from - stretches[i].to, 0.75, 1e-9);
        EXPECT_NEAR(stretches[i].to - stretches[i].from, (40.0 - 10 * 0.75) / 11.0, 1e-9);
    }
}

TEST(Dashes, ChainLineHasADotInTheMiddleOfEachGap) {
    const std::vector<DrawnStretch> stretches = drawnStretches(60.0, kChain);

    ASSERT_EQ(stretches.size() % 2, 1u);
    EXPECT_NEAR(stretches[1].to - stretches[1].from, 0.125, 1e-9);
    EXPECT_NEAR(stretches[1].from - stretches[0].to, 0.75, 1e-9);
    EXPECT_NEAR(stretches[2].from - stretches[1].to, 0.75, 1e-9);
    EXPECT_DOUBLE_EQ(stretches.back().to, 60.0);
}

TEST(Dashes, DoubleDottedLineHasTwoDotsAPeriod) {
    const std::vector<DrawnStretch> stretches =
        drawnStretches(14.5, kDoubleDotted);  // 58 d: the shortest

    ASSERT_EQ(stretches.size(), 4u);
    EXPECT_NEAR(stretches[0].to, 6.0, 1e-9);
    EXPECT_NEAR(stretches[3].from, 8.5, 1e-9);
}

// The line of a neighbouring part, d = 0.25: under 14.5 mm two shorter dashes with both dots, down
// to 22 d = 5.5 mm in full gaps of 0.75, then in proportion, and under 2.75 mm as a hidden line.
TEST(Dashes, ShortDoubleDottedLineStillHasGaps) {
    const std::vector<DrawnStretch> full = drawnStretches(10.0, kDoubleDotted);
    ASSERT_EQ(full.size(), 4u);
    EXPECT_NEAR(full[0].to, 3.75, 1e-9);
    EXPECT_NEAR(full[1].from, 4.5, 1e-9);
    EXPECT_NEAR(full[3].from, 6.25, 1e-9);
    EXPECT_EQ(full[3].to, 10.0);

    const std::vector<DrawnStretch> close = drawnStretches(4.4, kDoubleDotted);
    ASSERT_EQ(close.size(), 4u);
    EXPECT_NEAR(close[1].from - close[0].to, 0.6, 1e-9) << "0.8 of the gap";
    EXPECT_NEAR(close[0].to, 1.2, 1e-9) << "0.8 of the short dash";

    EXPECT_EQ(drawnStretches(2.0, kDoubleDotted).size(), 2u);
    for (double length = 1.3; length < 20.0; length += 0.1) {
        const std::vector<DrawnStretch> drawn = drawnStretches(length, kDoubleDotted);
        ASSERT_GE(drawn.size(), 2u) << length;
        EXPECT_EQ(drawn.front().from, 0.0);
        EXPECT_EQ(drawn.back().to, length);
        for (std::size_t i = 0; i + 1 < drawn.size(); ++i) {
            EXPECT_GT(drawn[i + 1].from - drawn[i].to, 0.37) << length << ": a gap to be seen";
        }
    }
}

TEST(Dashes, ShortHiddenLineIsStillTwoDashes) {
    EXPECT_EQ(drawnStretches(4.0, kDashed).size(), 2u);
    EXPECT_EQ(drawnStretches(2.0, kDashed).size(), 2u);
    EXPECT_EQ(drawnStretches(1.0, kDashed).size(), 1u);
}

// A round of facets, each far shorter than a dash: drawn one by one all would be whole, and a hole
// that is hidden would look open.
TEST(Dashes, RunOnRoundACurveAndStartAnewAtACorner) {
    std::vector<Vec2> circle;
    constexpr int kFacets = 48;
    constexpr double kRadius = 6.0;
    for (int i = 0; i <= kFacets; ++i) {
        const double at = 2 * M_PI * i / kFacets;
        circle.push_back({kRadius * std::cos(at), kRadius * std::sin(at)});
    }
    const auto drawn = [](const std::vector<Vec2>& points) {
        double length = 0.0;
        for (const DrawnLine& line : drawnLines(points, kDashed)) {
            length += norm(line.b - line.a);
        }
        return length;
    };
    const double round = 2 * kFacets * kRadius * std::sin(M_PI / kFacets);
    // L / 15 d periods with a gap of 3 d each, all alike all round.
    const double gaps = std::round(round / 3.75);
    EXPECT_NEAR(drawn(circle), round - 0.75 * gaps, 1e-9);
    // Two sides of a square: as two lines of their own.
    EXPECT_NEAR(drawn({{0, 0}, {40, 0}, {40, 40}}), 2 * (40.0 - 10 * 0.75), 1e-9);
}

// The hole for a shelf peg, 5 mm wide at 1 : 5: two dashes would leave the letter C.
TEST(Dashes, ASmallHiddenHoleIsFourEvenDashes) {
    std::vector<Vec2> hole;
    constexpr int kFacets = 48;
    for (int i = 0; i <= kFacets; ++i) {
        const double at = 2 * M_PI * i / kFacets;
        hole.push_back({0.5 * std::cos(at), 0.5 * std::sin(at)});
    }

    std::vector<double> quarters(4, 0.0);  // drawn in each
    for (const DrawnLine& line : drawnLines(hole, kDashed)) {
        const Vec2 middle = (line.a + line.b) * 0.5;
        quarters[(middle.x < 0.0 ? 1U : 0U) + (middle.y < 0.0 ? 2U : 0U)] += norm(line.b - line.a);
    }

    const double quarter = kFacets / 4 * 2 * 0.5 * std::sin(M_PI / kFacets);
    for (const double drawn : quarters) {
        EXPECT_NEAR(drawn, 0.65 * quarter, 1e-9);
    }
}

TEST(Dashes, ShortCentreLineIsContinuous) {
    EXPECT_EQ(drawnStretches(12.0, kChain).size(), 1u);
}

TEST(Dashes, EachRunOfAPolylineBeginsAndEndsWithADash) {
    const std::vector<DrawnLine> lines = drawnLines({{0, 0}, {20, 0}, {20, 30}}, kDashed);

    EXPECT_EQ(lines.front().a, (Vec2{0, 0}));
    EXPECT_EQ(lines.back().b, (Vec2{20, 30}));
    bool meetsCorner = false;
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
        meetsCorner = meetsCorner || (norm(lines[i].b - Vec2{20, 0}) < 1e-9 &&
                                      norm(lines[i + 1].a - Vec2{20, 0}) < 1e-9);
    }
    EXPECT_TRUE(meetsCorner);
}

}  // namespace
}  // namespace shoulderline
