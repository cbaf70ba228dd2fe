#include <map>
#include <random>
#include <utility>
#include <vector>

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/geometry/hidden_lines.h"
#include "tests/core/geometry/random_frames.h"

namespace shoulderline {
namespace {

std::vector<Polyhedron> polyhedra(const std::vector<test::Stick>& sticks) {
    std::vector<Polyhedron> solids;
    for (const test::Stick& stick : sticks) {
        solids.push_back(Polyhedron::box(stick.box, stick.frame));
    }
    return solids;
}

// How far along the line of sight from `p` the face is met; nothing when it is not, or lies behind.
// The face is told by the angle that its corners turn through around the point met.
double reachOfFace(const Polyhedron& solid, int face, Vec3 p, Vec3 sight) {
    const Vec3 area = solid.areaVector(face);
    const std::vector<int>& loop = solid.faces[static_cast<std::size_t>(face)].loop;
    const auto corner = [&](std::size_t i) {
        return solid.vertices[static_cast<std::size_t>(loop[i % loop.size()])];
    };
    const double reach = dot(area, corner(0) - p) / dot(area, sight);
    const Vec3 met = p + sight * reach;
    const Vec3 unit = normalised(area);
    double turned = 0.0;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const Vec3 a = corner(i) - met;
        const Vec3 b = corner(i + 1) - met;
        turned += std::atan2(dot(unit, cross(a, b)), dot(a, b));
    }
    return std::abs(turned) > 3.0 ? reach : -1.0;
}

enum class Sight { Clear, Blocked, Doubtful };

// Looks from `p` towards the viewer past every face of every solid.
Sight look(const std::vector<Polyhedron>& solids, Vec3 p, const View& view) {
    Sight sight = Sight::Clear;
    for (const Polyhedron& solid : solids) {
        for (int f = 0; f < static_cast<int>(solid.faces.size()); ++f) {
            if (view.nearness(normalised(solid.areaVector(f))) <= 1e-7) {
                continue;
            }
            const double reach = reachOfFace(solid, f, p, view.towardsViewer);
            if (reach > 1e-2) {
                return Sight::Blocked;
            }
            if (reach > 1e-7) {
                sight = Sight::Doubtful;  // about as near as a face may be without hiding
            }
        }
    }
    return sight;
}

// Compares random points of every piece with a look past all faces on both sides of the edge;
// returns how many points could be judged.
int compareWithSampling(const std::vector<Polyhedron>& solids, const View& view, unsigned seed) {
    std::mt19937 random(seed);
    int judged = 0;
    for (const ViewEdge& piece : hiddenLines(solids, view)) {
        const double length = norm(piece.b - piece.a);
        if (length < 0.1) {
            continue;
        }
        const Polyhedron& solid = solids[static_cast<std::size_t>(piece.solid)];
        const VertexPair ends = solid.edges()[static_cast<std::size_t>(piece.edge)].ends;
        const Vec3 from = solid.vertices[static_cast<std::size_t>(ends.low)];
        const Vec3 along = solid.vertices[static_cast<std::size_t>(ends.high)] - from;
        const Vec2 seen = view.project(along);
        const Vec2 across = Vec2{-seen.y, seen.x} * (1e-6 / norm(seen));
        for (int k = 0; k < 3; ++k) {
            const double t = std::uniform_real_distribution<double>(0.02, length - 0.02)(random);
            const Vec2 q = piece.a + (piece.b - piece.a) * (t / length);
            const Vec3 p = from + along * (dot(q - view.project(from), seen) / dot(seen, seen));
            const Vec3 beside = view.right * across.x + view.up * across.y;
            const Sight left = look(solids, p + beside, view);
            const Sight right = look(solids, p - beside, view);
            if (left == Sight::Doubtful || right == Sight::Doubtful) {
                continue;
            }
            const bool visible = left == Sight::Clear || right == Sight::Clear;
            EXPECT_EQ(piece.visible, visible)
                << "seed " << seed << ", solid " << piece.solid << ", edge " << piece.edge
                << ", at " << p.x << " " << p.y << " " << p.z;
            ++judged;
        }
    }
    return judged;
}

TEST(HiddenLinesTwin, LayeredSticksAgreeWithSampling) {
    int judged = 0;
    for (unsigned seed = 1; seed <= 10; ++seed) {
        const std::vector<Polyhedron> solids = polyhedra(test::layeredSticks(seed, 12));
        judged += compareWithSampling(solids, View::front(), seed);
        judged += compareWithSampling(
            solids, View::axonometric(Angle::degrees(20), Angle::degrees(15)), seed);
    }

    EXPECT_GT(judged, 8000);
}

TEST(HiddenLinesTwin, SticksThatRunIntoOneAnotherAgreeWithSampling) {
    int judged = 0;
    for (unsigned seed = 21; seed <= 30; ++seed) {
        std::vector<test::Stick> sticks = test::layeredSticks(seed, 12, 20.0);
        for (test::Stick& stick : sticks) {
            stick.frame.origin.y *= 0.03;
        }
        judged += compareWithSampling(polyhedra(sticks), View::front(), seed);
    }

    EXPECT_GT(judged, 4000);
}

TEST(HiddenLinesTwin, SquareFramesWithTenonsAgreeWithSampling) {
    int judged = 0;
    for (unsigned seed = 1; seed <= 8; ++seed) {
        const std::vector<Polyhedron> solids = polyhedra(test::framedSticks(seed, 2, 3));
        for (const View& view : {View::front(),
                                 View::side(),
                                 View::plan(),
                                 View::axonometric(Angle::degrees(30), Angle::degrees(20))}) {
            judged += compareWithSampling(solids, view, seed);
        }
    }

    EXPECT_GT(judged, 8000);
}

RC_GTEST_PROP(HiddenLinesProperty, PiecesMakeUpTheirEdgeInOrder, ()) {
    const unsigned seed = *rc::gen::inRange(1U, 1000000U);
    const bool square = *rc::gen::arbitrary<bool>();
    const std::vector<Polyhedron> solids =
        polyhedra(square ? test::framedSticks(seed, 2, 2) : test::layeredSticks(seed, 8));
    const View view = View::axonometric(Angle::degrees(*rc::gen::inRange(-180, 180)),
                                        Angle::degrees(*rc::gen::inRange(-89, 89)));
    std::map<std::pair<int, int>, std::vector<ViewEdge>> pieces;
    for (const ViewEdge& e : hiddenLines(solids, view)) {
        pieces[{e.solid, e.edge}].push_back(e);
    }
    for (const auto& [key, list] : pieces) {
        const Polyhedron& solid = solids[static_cast<std::size_t>(key.first)];
        const VertexPair ends = solid.edges()[static_cast<std::size_t>(key.second)].ends;
        const Vec2 from = view.project(solid.vertices[static_cast<std::size_t>(ends.low)]);
        const Vec2 to = view.project(solid.vertices[static_cast<std::size_t>(ends.high)]);
        double length = 0;
        for (std::size_t i = 0; i < list.size(); ++i) {
            length += norm(list[i].b - list[i].a);
        }
        for (std::size_t i = 1; i < list.size(); ++i) {
            RC_ASSERT(list[i].a == list[i - 1].b);
            RC_ASSERT(list[i].visible != list[i - 1].visible);
        }
        RC_ASSERT(list.front().a == from && list.back().b == to);
        RC_ASSERT(std::abs(length - norm(to - from)) < 1e-9);
    }
}

RC_GTEST_PROP(MergeCoincidentProperty, MergingAgainChangesNothing, ()) {
    const std::vector<Polyhedron> solids =
        polyhedra(test::framedSticks(*rc::gen::inRange(1U, 1000000U), 2, 3));
    const auto total = [](const std::vector<ViewEdge>& edges) {
        double length = 0;
        for (const ViewEdge& e : edges) {
            length += norm(e.b - e.a);
        }
        return length;
    };

    const std::vector<ViewEdge> once = mergeCoincident(hiddenLines(solids, View::front()));
    const std::vector<ViewEdge> twice = mergeCoincident(once);

    RC_ASSERT(std::abs(total(once) - total(twice)) < 1e-6);
    RC_ASSERT(total(once) < total(hiddenLines(solids, View::front())));
}

}  // namespace
}  // namespace shoulderline
