#include "core/geometry/notched_rect.h"

#include <array>

#include <gtest/gtest.h>

#include "core/geometry/outline.h"

namespace shoulderline {
namespace {

constexpr Rect kRail{{0, 0}, {22, 60}};

TEST(NotchedRect, LosesTheRabbetAtItsCorner) {
    const std::vector<Vec2> ring = notchedRect(kRail, std::array{Rect{{16, 0}, {22, 9}}});
    EXPECT_EQ(ring.size(), 6u);
    EXPECT_NEAR(Outline::polygon(ring).area(), 22.0 * 60.0 - 6.0 * 9.0, 1e-9);
}

TEST(NotchedRect, TakesWhatRunsPastItsSidesOnlyInside) {
    const std::vector<Vec2> ring =
        notchedRect(kRail, std::array{Rect{{-5, 20}, {4, 26}}, Rect{{18, 20}, {30, 26}}});
    EXPECT_NEAR(Outline::polygon(ring).area(), 22.0 * 60.0 - 2 * 4.0 * 6.0, 1e-9);
}

TEST(NotchedRect, IsNothingWhereItFallsApartOrHasAHole) {
    EXPECT_TRUE(notchedRect(kRail, std::array{Rect{{-1, 20}, {23, 26}}}).empty());
    EXPECT_TRUE(notchedRect(kRail, std::array{Rect{{5, 20}, {9, 26}}}).empty());
    EXPECT_TRUE(notchedRect(kRail, std::array{Rect{{-1, -1}, {23, 61}}}).empty());
}

}  // namespace
}  // namespace shoulderline
