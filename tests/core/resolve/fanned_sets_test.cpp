#include <cmath>

#include <gtest/gtest.h>

#include "core/storage/piece_text.h"
#include "tests/support/pieces.h"

// Sets between rails of unequal length fan out: equal gaps on either rail, each mortise where the
// straight line between the two places enters the rail. Worked here by similar triangles.
namespace shoulderline {
namespace {

using testing::jointNamed;
using testing::resolved;

constexpr double kSplay = 6.0;  // degrees, posts part going up
constexpr double kFoot = 8.0;   // inches from the middle to a post's middle at the floor
constexpr double kPost = 1.75;  // post, square
constexpr double kLow = 14.0;   // top of the lower rail
constexpr double kHigh = 30.0;  // bottom of the upper rail
constexpr double kRail = 2.0;   // width of both rails
constexpr double kSpindle = 0.875;

// A back of two posts that part, two rails, and spindles fanned between these.
Piece fannedBack(int count) {
    const std::string text = R"({"format": "shoulderline piece", "version": 1, "name": "back",
"unit": "in", "stocks": [
 {"name": "post stock", "species": "White oak", "thickness": "1 3/4 in"},
 {"name": "rail stock", "species": "White oak", "thickness": "1 1/8 in"},
 {"name": "spindle stock", "species": "White oak", "thickness": "1/2 in"}],
"parts": [
 {"name": "post", "role": "post", "stock": "post stock", "pair": true,
  "relation": {"kind": "stands", "x": {"face": "centre", "at": "8 in"},
   "y": {"face": "centre", "at": "0 in"}, "height": "36 in", "splay": "-6 deg"}},
 {"name": "lower rail", "role": "rail", "stock": "rail stock", "width": "2 in",
  "relation": {"kind": "spans", "from": "post, left", "to": "post, right",
   "level": {"face": "top", "at": "14 in"}, "set": {"from": "centre"}}},
 {"name": "upper rail", "role": "rail", "stock": "rail stock", "width": "2 in",
  "relation": {"kind": "spans", "from": "post, left", "to": "post, right",
   "level": {"face": "bottom", "at": "30 in"}, "set": {"from": "centre"}}},
 {"name": "spindle", "role": "spindle", "stock": "spindle stock", "width": "7/8 in",
  "relation": {"kind": "spans", "from": "lower rail", "to": "upper rail", "angled": true,
   "set": {"from": "centre"}},
  "spacing": {"after": "post, left", "before": "post, right", "count": ")" +
                             std::to_string(count) + R"("}}]})";
    return readPiece(text).value();
}

// From the middle to a post's inner face at that height.
double clearAt(double height) {
    const double lean = kSplay * std::acos(-1.0) / 180.0;
    return kFoot + height * std::tan(lean) - kPost / 2 / std::cos(lean);
}

// Middle of the i-th of `count` at a rail whose middle is at that height.
double middleOf(int i, int count, double height) {
    const double half = clearAt(height);
    const double gap = (2 * half - count * kSpindle) / (count + 1);
    return -half + gap * (i + 1) + kSpindle * (i + 0.5);
}

class FannedSet : public ::testing::TestWithParam<int> {};
INSTANTIATE_TEST_SUITE_P(Counts, FannedSet, ::testing::Values(1, 2, 5, 7));

TEST_P(FannedSet, MortisesLieWhereLinesBetweenEqualSharesEnterTheRails) {
    const int count = GetParam();
    const ResolvedPiece piece = resolved(fannedBack(count));
    ASSERT_TRUE(piece.troubles.empty()) << piece.troubles.front().message;
    const double lowMiddle = kLow - kRail / 2;
    const double highMiddle = kHigh + kRail / 2;
    for (int i = 0; i < count; ++i) {
        const double below = middleOf(i, count, lowMiddle);
        const double above = middleOf(i, count, highMiddle);
        const auto xAt = [&](double height) {
            return below + (above - below) * (height - lowMiddle) / (highMiddle - lowMiddle);
        };
        const std::string spindle = "spindle " + std::to_string(i + 1);
        const ResolvedJoint& low = jointNamed(piece, spindle + " into lower rail");
        const ResolvedJoint& high = jointNamed(piece, spindle + " into upper rail");

        EXPECT_NEAR(low.frame.origin.x / 25.4, xAt(kLow), 1e-6) << spindle;
        EXPECT_NEAR(low.frame.origin.z / 25.4, kLow, 1e-9);
        EXPECT_NEAR(high.frame.origin.x / 25.4, xAt(kHigh), 1e-6) << spindle;
        EXPECT_NEAR(high.frame.origin.z / 25.4, kHigh, 1e-9);
    }
}

// The outer ones lean with the posts' way, the middle one of an odd number stands upright.
TEST(FannedSets, FanOutFromTheMiddle) {
    const ResolvedPiece piece = resolved(fannedBack(5));
    const auto lean = [&](const char* name) {
        const Vec3 along = testing::partNamed(piece, name).frame.x;
        return along.x / along.z;
    };
    EXPECT_LT(lean("spindle 1"), lean("spindle 2"));
    EXPECT_NEAR(lean("spindle 3"), 0.0, 1e-9);
    EXPECT_NEAR(lean("spindle 5"), -lean("spindle 1"), 1e-9);
}

}  // namespace
}  // namespace shoulderline
