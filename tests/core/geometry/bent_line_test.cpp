#include "core/geometry/bent_line.h"

#include <array>
#include <cmath>

#include <gtest/gtest.h>

#include "core/geometry/smooth_curve.h"

namespace shoulderline {
namespace {

// The length and the height of a line by adding up many short chords, none the wiser about arcs.
struct Walked {
    double length = 0.0;
    double rise = 0.0;
};
Walked walked(const BentLine& line) {
    Walked sum;
    Vec2 last = line.front().point;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        constexpr int kSteps = 20000;
        for (int k = 1; k <= kSteps; ++k) {
            const double share = static_cast<double>(k) / kSteps;
            const Vec2 at = line[i].bulge == 0.0
                                ? line[i].point + (line[i + 1].point - line[i].point) * share
                                : arcOf(line[i], line[i + 1].point).at(share);
            sum.length += norm(at - last);
            sum.rise = std::max(sum.rise, at.y);
            last = at;
        }
    }
    return sum;
}

// Worked to six decimals by the circle's equation, apart from this code: a chair back of 400 mm at
// 1100 mm; a crest rail of 18 in that rises 1 1/2 in; 500 mm that rise 40 mm.
TEST(ArcOverChord, AgreesWithFiguresWorkedByHand) {
    const ArcOverChord back = arcOfRadius(400.0, 1100.0);
    EXPECT_NEAR(back.rise, 18.334617, 1e-6);
    EXPECT_NEAR(back.angle, 0.365670, 1e-6);
    EXPECT_NEAR(back.length, 402.237301, 1e-6);
    const ArcOverChord crest = arcOfRise(18.0, 1.5);
    EXPECT_NEAR(crest.radius, 27.75, 1e-9);
    EXPECT_NEAR(crest.length, 18.331503, 1e-6);
    const ArcOverChord third = arcOfRise(500.0, 40.0);
    EXPECT_NEAR(third.radius, 801.25, 1e-9);
    EXPECT_NEAR(third.length, 508.490115, 1e-6);
}

// The same chair back on the form for five plies, 1056 mm: worked apart from this code.
TEST(BentLine, BentAnewKeepsItsLengthOnTheForm) {
    const BentLine form = bentAnew(lineOf(arcOfRadius(400.0, 1100.0)), 1100.0 / 1056.0);
    EXPECT_NEAR(leastRadius(form), 1056.0, 1e-6);
    EXPECT_NEAR(lengthOf(form), 402.237301, 1e-6);
    EXPECT_NEAR(form.back().point.x, 399.810019, 1e-6);
    EXPECT_NEAR(form.back().point.y, 0.0, 1e-9);
    EXPECT_NEAR(riseOf(form), 19.094032, 1e-6);
}

TEST(BentLine, ItsParallelsHaveTheSameCentre) {
    const BentLine line = lineOf(arcOfRadius(400.0, 1100.0));
    EXPECT_NEAR(lengthOf(beside(line, -7.5)), 399.494774, 1e-6);
    EXPECT_NEAR(lengthOf(beside(line, 7.5)), 404.979828, 1e-6);
}

TEST(BentLine, OfACurveThroughPointsIsAsLongAndHighAsItsChordsAddUpTo) {
    const BentLine line =
        smoothCurve(std::array<Vec2, 4>{{{0.0, 0.0}, {90.0, 22.0}, {260.0, 31.0}, {400.0, 0.0}}});
    const Walked sum = walked(line);
    EXPECT_NEAR(lengthOf(line), sum.length, 1e-4);
    EXPECT_NEAR(riseOf(line), sum.rise, 1e-4);
    const BentLine form = bentAnew(line, 16.0 / 15.0);
    EXPECT_NEAR(lengthOf(form), lengthOf(line), 1e-9);
    EXPECT_NEAR(leastRadius(form), leastRadius(line) * 15.0 / 16.0, 1e-6);
    EXPECT_NEAR(form.back().point.y, 0.0, 1e-9);
}

// By the equation of the circle of radius 1100 whose middle lies below that of the chord.
TEST(BentLine, RunsOnAndIsCutAlongItsCircle) {
    const BentLine line = lineOf(arcOfRadius(400.0, 1100.0));
    const BentLine longer = between(line, -50.0, 410.0);
    const BentLine shorter = between(line, 20.0, 390.0);
    const auto onCircle = [](double x) {
        return std::sqrt(1100.0 * 1100.0 - (x - 200.0) * (x - 200.0)) - (1100.0 - 18.334617);
    };
    EXPECT_NEAR(longer.front().point.y, onCircle(-50.0), 1e-5);
    EXPECT_NEAR(longer.back().point.y, onCircle(410.0), 1e-5);
    EXPECT_NEAR(shorter.front().point.y, onCircle(20.0), 1e-5);
    EXPECT_NEAR(shorter.back().point.y, onCircle(390.0), 1e-5);
    EXPECT_NEAR(leastRadius(longer), 1100.0, 1e-6);
    EXPECT_NEAR(leastRadius(shorter), 1100.0, 1e-6);
}

}  // namespace
}  // namespace shoulderline
