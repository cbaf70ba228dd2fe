#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/resolve/frames.h"
#include "core/resolve/small_parts.h"
#include "core/resolve/swing_angle.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::partNamed;
using testing::resolved;

// The sample armchair, whose back swings, with stations of these tests.
Swing& swingOf(Piece& piece) {
    return *std::find_if(piece.assemblies.begin(), piece.assemblies.end(), [](const Assembly& a) {
                return a.swing.has_value();
            })->swing;
}

Piece swingingChair() {
    Piece piece = testing::sample("armchair");
    swingOf(piece).stations = {
        {"upright", "", "12 deg", {}}, {"reading", "3 in", "", {}}, {"resting", "", "24 deg", {}}};
    swingOf(piece).at = "reading";
    return piece;
}

// The lean by halving: how far the edge is from the rear face of a back turned to an angle.
double leanByHalving(double behind, double above, double back) {
    const auto gap = [&](double lean) {
        return behind * std::cos(lean) - above * std::sin(lean) - back;
    };
    double low = 0.0;
    double high = 1.5;
    for (int i = 0; i < 100; ++i) {
        const double middle = (low + high) / 2;
        (gap(middle) > 0.0 ? low : high) = middle;
    }
    return low;
}

// By the law of cosines in the triangle of pivot, edge and the place on the rear face nearest to
// the pivot, all three sides known.
double leanByCosines(double behind, double above, double back) {
    const double far = std::hypot(behind, above);
    const double along = std::sqrt(far * far - back * back);
    const double angle = std::acos((far * far + back * back - along * along) / (2.0 * far * back));
    return angle - std::atan2(above, behind);
}

TEST(SwingAngle, AgreesWithHalvingAndWithTheLawOfCosines) {
    for (const double behind : {40.0, 80.0, 150.0, 300.0}) {
        for (const double above : {60.0, 150.0, 220.0}) {
            const double back = 25.4;
            const std::optional<Angle> lean = leanAgainst(behind, above, back);
            ASSERT_TRUE(lean);
            EXPECT_NEAR(lean->radians(), leanByHalving(behind, above, back), 1e-9);
            EXPECT_NEAR(lean->radians(), leanByCosines(behind, above, back), 1e-9);
            EXPECT_NEAR(behindAt(*lean, above, back), behind, 1e-9);
            EXPECT_NEAR(contactAt(behind, above, *lean),
                        std::sqrt(behind * behind + above * above - back * back),
                        1e-9);
        }
    }
}

TEST(SwingAngle, IsNoneWhereTheBackCannotReachTheEdge) {
    EXPECT_FALSE(leanAgainst(10.0, 5.0, 25.4));
    EXPECT_FALSE(leanAgainst(20.0, 150.0, 25.4));
}

TEST(Swinging, TheStilesRearFaceMeetsTheBarsFrontUpperEdgeAtEveryStation) {
    Piece piece = swingingChair();
    for (const char* at : {"upright", "reading", "resting"}) {
        swingOf(piece).at = at;
        const ResolvedPiece chair = resolved(piece);
        EXPECT_TRUE(chair.troubles.empty()) << at;
        ASSERT_EQ(chair.swings.size(), 1u);
        const ResolvedPart& stile = partNamed(chair, "back stile, left");
        const Box bar = boundsInSpace(partNamed(chair, "rest bar"));
        const Vec3 edge{0.0, bar.min.y, bar.max.z};
        // The rear face: among the stile's corners those furthest along its own way back.
        double rear = -1e9;
        const Vec3 up = stile.frame.x;
        const Vec3 back{0.0, up.z, -up.y};
        for (const ConvexSolid& solid : stile.body.pieces()) {
            for (const Vec3& corner : solid.vertices()) {
                rear = std::max(rear, dot(stile.frame.toOuter(corner), back));
            }
        }
        EXPECT_NEAR(dot(edge, back), rear, 1e-6) << at;
    }
}

TEST(Swinging, StationsStatedByTheirLeanHaveIt) {
    const ResolvedPiece chair = resolved(swingingChair());
    ASSERT_EQ(chair.swings.size(), 1u);
    const std::vector<SwingPosition>& positions = chair.swings[0].positions;
    ASSERT_EQ(positions.size(), 3u);
    EXPECT_NEAR(positions[0].lean.degrees(), 12.0, 1e-9);
    EXPECT_NEAR(positions[1].behind.inches(), 3.0, 1e-9);
    EXPECT_EQ(chair.swings[0].at, 1u);
}

// Each part at another station, moved there, is where it resolves when shown there.
TEST(Swinging, PartsMovedToAStationAreWhereTheyResolveThere) {
    Piece piece = swingingChair();
    const ResolvedPiece here = resolved(piece);
    swingOf(piece).at = "resting";
    const ResolvedPiece there = resolved(piece);
    ASSERT_EQ(here.swings.size(), 1u);
    const ResolvedSwing& swing = here.swings[0];
    for (const std::size_t i : swing.moving) {
        const Frame moved = swing.swungTo(here.parts[i].frame, swing.positions[2].lean);
        EXPECT_NEAR(norm(moved.origin - there.parts[i].frame.origin), 0.0, 1e-6);
        EXPECT_NEAR(norm(moved.x - there.parts[i].frame.x), 0.0, 1e-9);
    }
    const Frame bar = swing.barAt(here.parts[swing.bar].frame, swing.positions[2]);
    EXPECT_NEAR(norm(bar.origin - there.parts[swing.bar].frame.origin), 0.0, 1e-6);
}

// What is told of the station of that name; empty for nothing.
std::string toldOf(const ResolvedPiece& piece, const std::string& station) {
    for (const Trouble& trouble : piece.troubles) {
        if (trouble.rule == RuleId::SwingReach &&
            trouble.message.find("'" + station + "'") != std::string::npos) {
            return trouble.message;
        }
    }
    return {};
}

// The nearest worked here: upright the rear face is 1/2 in behind the pivot; far out, the stile
// ends 24 3/4 in above the pivot and 1/2 in behind it, the bar's top 6 in above: by Pythagoras
// sqrt(24.75^2 + 0.5^2 - 6^2) = 24.0169 in behind, told as the last whole sixteenth before that: a
// figure rounded up would be out of reach when it is typed.
TEST(Swinging, AStationOutOfReachIsToldWithTheNearestThatIsReached) {
    Piece piece = swingingChair();
    swingOf(piece).peg.clear();
    swingOf(piece).stations.push_back({"too near", "1/4 in", "", {}});
    swingOf(piece).stations.push_back({"too far", "60 in", "", {}});
    swingOf(piece).stations.push_back({"lying", "", "88 deg", {}});

    const ResolvedPiece chair = resolved(piece);

    const std::string upright = showLength(Length::inches(0.5), piece.style, true);
    EXPECT_NE(toldOf(chair, "too near").find("a lean of 0\u00b0, the bar " + upright),
              std::string::npos)
        << toldOf(chair, "too near");
    const double far = std::sqrt(24.75 * 24.75 + 0.5 * 0.5 - 36.0);
    const std::string farText =
        showLength(snapDown(Length::inches(far), Length::inches(1.0 / 16)), piece.style, true);
    EXPECT_NE(toldOf(chair, "too far").find("the bar " + farText), std::string::npos)
        << toldOf(chair, "too far");
    EXPECT_NE(toldOf(chair, "lying").find("the nearest"), std::string::npos);
    ASSERT_EQ(chair.swings.size(), 1u);
    EXPECT_EQ(chair.swings[0].positions.size(), 3u);
}

// A back shorter than the pivot is below the bar reaches it nowhere.
TEST(Swinging, ABackTooShortReachesNoStation) {
    Piece piece = swingingChair();
    for (Part& part : piece.parts) {
        if (part.name == "back stile") {
            std::get<Stands>(part.relation).height = "4 in";
        }
    }
    const ResolvedPiece chair = resolved(piece);

    EXPECT_TRUE(chair.swings.empty());
    EXPECT_NE(toldOf(chair, "upright").find("it reaches none"), std::string::npos);
}

// The axis of every pin is the axis of the swing, in what swings and in what stands.
TEST(Swinging, PinsAreBoredOnOneAxisThroughBothParts) {
    const ResolvedPiece chair = resolved(testing::sample("armchair"));
    ASSERT_EQ(chair.swings.size(), 1u);
    const ResolvedSwing& swing = chair.swings[0];
    for (const char* name :
         {"back stile, left", "back stile, right", "back post, left", "back post, right"}) {
        const ResolvedPart& part = partNamed(chair, name);
        int pins = 0;
        for (const ResolvedCut& cut : part.cuts) {
            if (cut.note != "pivot pin") {
                continue;
            }
            ++pins;
            EXPECT_EQ(cut.kind, CutKind::Bore);
            const Box hole = part.frame.outerBounds(cut.box);
            EXPECT_NEAR(hole.centre().y, swing.pivot.y, 1e-6) << name;
            EXPECT_NEAR(hole.centre().z, swing.pivot.z, 1e-6) << name;
            // 1/2 in thick; through the stile's 1 3/4 in, 1 3/8 in into the post.
            EXPECT_NEAR(hole.size().x, (part.of == "back stile" ? 1.75 : 1.375) * 25.4, 1e-6);
        }
        EXPECT_EQ(pins, 1) << name;
    }
}

// A pin from the stile's far side (8 1/4 in from the middle) to the end of the post's hole (posts
// stand 11 3/8 in from the middle): 4 1/2 in. A peg fills 7/8 in and stands as high as the bar.
TEST(Swinging, PinsAndPegsAreMadeToTheirHoles) {
    const Piece piece = testing::sample("armchair");
    std::vector<SmallPart> some = smallPartsOf(piece, resolved(piece));
    std::erase_if(some, [](const SmallPart& one) { return !one.part; });

    ASSERT_EQ(some.size(), 2u);
    EXPECT_EQ(some[0].kind, SmallPartKind::PivotPin);
    EXPECT_EQ(some[0].quantity, 2);
    EXPECT_NEAR(some[0].length.inches(), 11.375 + 1.375 - 8.25, 1e-9);
    EXPECT_NEAR(some[0].width.inches(), 0.5, 1e-9);
    EXPECT_EQ(some[1].kind, SmallPartKind::Peg);
    EXPECT_EQ(some[1].quantity, 2);
    EXPECT_NEAR(some[1].length.inches(), 0.875 + 1.0, 1e-9);
}

TEST(Swinging, PegsAreBoredBehindTheBarAtEveryStation) {
    const Piece piece = swingingChair();
    const ResolvedPiece chair = resolved(piece);
    ASSERT_EQ(chair.swings.size(), 1u);
    const ResolvedPart& arm = partNamed(chair, "arm, left");
    const Box bar = boundsInSpace(partNamed(chair, "rest bar"));
    std::size_t pegs = 0;
    for (const ResolvedCut& cut : arm.cuts) {
        if (cut.note.rfind("peg", 0) != 0) {
            continue;
        }
        const Box hole = arm.frame.outerBounds(cut.box);
        const SwingPosition& position = chair.swings[0].positions[pegs];
        const SwingPosition& now = chair.swings[0].positions[chair.swings[0].at];
        EXPECT_NEAR(hole.min.y, bar.max.y + (position.behind - now.behind).mm(), 1e-6);
        EXPECT_NEAR(hole.max.y - hole.min.y, 12.7, 1e-9);
        ++pegs;
    }
    EXPECT_EQ(pegs, 3u);
}

}  // namespace
}  // namespace shoulderline
