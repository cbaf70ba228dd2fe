#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/joint_drawing.h"
#include "core/drawing/lettering_metrics.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

// What joint drawings letter is what they draw: a rule laid on the paper reads the figure.
namespace shoulderline {
namespace {

using testing::kMetrics;

bool isLevel(const DimensionOp& size) {
    return std::abs(size.lineFrom.y - size.lineTo.y) < std::abs(size.lineFrom.x - size.lineTo.x);
}

// Whether a line of the drawing comes to `at` along the dimension: at its end, or crossing there.
bool isDrawnAt(const Sheet& sheet, double at, bool level) {
    constexpr double kThere = 0.02;  // facets of round members lie within that on their circles
    const auto along = [&](Vec2 p) { return level ? p.x : p.y; };
    const auto across = [&](Vec2 p) { return level ? p.y : p.x; };
    const auto meets = [&](Vec2 a, Vec2 b) {
        const bool endsThere = std::abs(along(a) - at) < kThere || std::abs(along(b) - at) < kThere;
        const bool crosses = (along(a) - at) * (along(b) - at) < 0.0 &&
                             std::abs(across(b) - across(a)) > std::abs(along(b) - along(a));
        return endsThere || crosses;
    };
    return std::any_of(sheet.ops.begin(), sheet.ops.end(), [&](const Op& op) {
        const auto* stroke = std::get_if<Stroke>(&op);
        bool isThere = false;
        if (stroke != nullptr && stroke->role != LineRole::Dimension &&
            stroke->role != LineRole::Construction) {
            for (std::size_t i = 0; i + 1 < stroke->points.size(); ++i) {
                isThere = isThere || meets(stroke->points[i], stroke->points[i + 1]);
            }
        }
        return isThere;
    });
}

class JointSizes : public ::testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Samples, JointSizes, ::testing::ValuesIn(testing::kSamples));

TEST_P(JointSizes, AreAsLongOnPaperAsTheyAreLettered) {
    constexpr double kScale = 0.5;
    const Piece piece = testing::sample(GetParam());
    const ResolvedPiece resolved = testing::resolved(piece);
    int sizes = 0;
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        const Sheet sheet =
            drawJoint(piece, resolved, i, {kScale, {2.5, 7.0, 5.5}, false}, kMetrics);
        for (const Op& op : sheet.ops) {
            const auto* size = std::get_if<DimensionOp>(&op);
            if (size == nullptr) {
                continue;
            }
            SCOPED_TRACE(resolved.joints[i].name + ": " + size->of + " " + size->text);
            const bool level = isLevel(*size);
            const double from = level ? size->from.x : size->from.y;
            const double to = level ? size->to.x : size->to.y;
            EXPECT_NEAR(std::abs(to - from) / kScale, size->value, 0.02);
            EXPECT_EQ(size->text, letterLength(Length::mm(size->value), piece.style));
            EXPECT_TRUE(isDrawnAt(sheet, from, level));
            EXPECT_TRUE(isDrawnAt(sheet, to, level));
            ++sizes;
        }
    }
    EXPECT_GT(sizes, 10);
}

}  // namespace
}  // namespace shoulderline
