#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/resolve/frames.h"
#include "core/resolve/swing_angle.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::partNamed;
using testing::resolved;

Piece swingingChair() {
    Piece piece = testing::sample("armchair");
    for (Assembly& assembly : piece.assemblies) {
        if (assembly.name == "leaning back") {
            Swing swing;
            swing.leans = "back stile";
            swing.rest = "rest bar";
            swing.stations = {{"upright", "", "12 deg", {}},
                              {"reading", "3 in", "", {}},
                              {"resting", "", "30 deg", {}}};
            swing.at = "reading";
            assembly.swing = swing;
        }
    }
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
        auto swinging = std::find_if(piece.assemblies.begin(),
                                     piece.assemblies.end(),
                                     [](const Assembly& a) { return a.swing.has_value(); });
        swinging->swing->at = at;
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
    for (Assembly& assembly : piece.assemblies) {
        if (assembly.swing) {
            assembly.swing->at = "resting";
        }
    }
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

TEST(Swinging, AStationOutOfReachIsToldWithWhereItWouldBeReached) {
    Piece piece = swingingChair();
    for (Assembly& assembly : piece.assemblies) {
        if (assembly.swing) {
            assembly.swing->stations.push_back({"too near", "1/4 in", "", {}});
            assembly.swing->stations.push_back({"too far", "60 in", "", {}});
        }
    }
    const ResolvedPiece chair = resolved(piece);
    const auto tells = [&](const char* name) {
        return std::any_of(
            chair.troubles.begin(), chair.troubles.end(), [&](const Trouble& trouble) {
                return trouble.rule == RuleId::SwingReach &&
                       trouble.message.find(name) != std::string::npos;
            });
    };
    EXPECT_TRUE(tells("'too near'"));
    EXPECT_TRUE(tells("'too far'"));
    ASSERT_EQ(chair.swings.size(), 1u);
    EXPECT_EQ(chair.swings[0].positions.size(), 3u);
}

TEST(Swinging, PegsAreBoredBehindTheBarAtEveryStation) {
    Piece piece = swingingChair();
    for (Assembly& assembly : piece.assemblies) {
        if (assembly.swing) {
            assembly.swing->peg = "1/2 in";
            assembly.swing->stations = {{"upright", "", "12 deg", {}},
                                        {"reading", "", "18 deg", {}}};
        }
    }
    const ResolvedPiece chair = resolved(piece);
    ASSERT_EQ(chair.swings.size(), 1u);
    const ResolvedPart& arm = partNamed(chair, "arm, left");
    const Box bar = boundsInSpace(partNamed(chair, "rest bar"));
    int pegs = 0;
    for (const ResolvedCut& cut : arm.cuts) {
        if (cut.note.rfind("peg", 0) != 0) {
            continue;
        }
        const Box hole = arm.frame.outerBounds(cut.box);
        const SwingPosition& position = chair.swings[0].positions[static_cast<std::size_t>(pegs)];
        const SwingPosition& now = chair.swings[0].positions[chair.swings[0].at];
        EXPECT_NEAR(hole.min.y, bar.max.y + (position.behind - now.behind).mm(), 1e-6);
        EXPECT_NEAR(hole.max.y - hole.min.y, 12.7, 1e-9);
        ++pegs;
    }
    EXPECT_EQ(pegs, 2);
}

}  // namespace
}  // namespace shoulderline
