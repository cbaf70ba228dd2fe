#include "core/geometry/hidden_lines.h"

#include <algorithm>

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

struct Lengths {
    double visible = 0;
    double hidden = 0;
};

Lengths lengthsOf(const std::vector<ViewEdge>& edges, int solid = -1) {
    Lengths lengths;
    for (const ViewEdge& e : edges) {
        if (solid < 0 || e.solid == solid) {
            (e.visible ? lengths.visible : lengths.hidden) += norm(e.b - e.a);
        }
    }
    return lengths;
}

Polyhedron box(Vec3 min, Vec3 max) {
    return Polyhedron::box({min, max});
}

const View kAskew = View::axonometric(Angle::degrees(35), Angle::degrees(25));

TEST(View, TheNamedViewsAreRightHanded) {
    for (const View& view : {View::front(), View::side(), View::plan(), kAskew}) {
        EXPECT_NEAR(norm(cross(view.right, view.up) - view.towardsViewer), 0, 1e-12);
    }
}

TEST(View, AnAxonometricViewWithoutTurnAndTiltIsTheFrontAndAQuarterTurnTheSide) {
    EXPECT_EQ(View::axonometric({}, {}), View::front());
    EXPECT_EQ(View::axonometric(Angle::degrees(90), {}), View::side());
}

TEST(HiddenLines, ALoneBoxSquareOnIsItsFourSidesAllVisible) {
    const std::vector<Polyhedron> solids{box({0, 0, 0}, {30, 20, 50})};

    const std::vector<ViewEdge> drawn = mergeCoincident(hiddenLines(solids, View::front()));

    EXPECT_EQ(drawn.size(), 4U);
    EXPECT_DOUBLE_EQ(lengthsOf(drawn).visible, 160);
    EXPECT_EQ(lengthsOf(drawn).hidden, 0);
}

TEST(HiddenLines, ALoneBoxAskewHidesTheThreeEdgesOfItsFarCorner) {
    const std::vector<Polyhedron> solids{box({0, 0, 0}, {30, 20, 50})};

    const std::vector<ViewEdge> edges = hiddenLines(solids, kAskew);

    EXPECT_EQ(edges.size(), 12U);
    EXPECT_EQ(std::count_if(edges.begin(), edges.end(), [](auto& e) { return !e.visible; }), 3);
}

TEST(HiddenLines, ARailBehindAPostIsHiddenJustAsFarAsThePostIsWide) {
    const std::vector<Polyhedron> solids{box({40, 0, 0}, {60, 20, 100}),
                                         box({0, 30, 40}, {100, 50, 45})};

    const std::vector<ViewEdge> edges = mergeCoincident(hiddenLines(solids, View::front()));

    EXPECT_NEAR(lengthsOf(edges, 1).hidden, 2 * 20, 1e-4);
    EXPECT_NEAR(lengthsOf(edges, 1).visible, 2 * 80 + 2 * 5, 1e-4);
    EXPECT_NEAR(lengthsOf(edges, 0).visible, 240, 1e-9);
}

TEST(HiddenLines, ATenonInsideItsPostIsHidden) {
    const std::vector<Polyhedron> solids{box({0, 0, 0}, {40, 40, 100}),
                                         box({10, 15, 40}, {40, 25, 60})};

    for (const View& view : {View::front(), View::plan(), kAskew}) {
        const Lengths tenon = lengthsOf(mergeCoincident(hiddenLines(solids, view)), 1);
        EXPECT_GT(tenon.hidden, 10);
        EXPECT_NEAR(tenon.visible, 0, view == kAskew ? 60 : 1e-9);
    }
}

TEST(HiddenLines, TheMouthOfATenonShowsInTheFaceItEnters) {
    const std::vector<Polyhedron> solids{box({0, 0, 0}, {40, 40, 100}),
                                         box({10, 15, 40}, {40, 25, 60})};

    const Lengths tenon = lengthsOf(mergeCoincident(hiddenLines(solids, View::side())), 1);

    EXPECT_NEAR(tenon.visible, 2 * (10 + 20), 1e-4);
    EXPECT_NEAR(tenon.hidden, 0, 1e-4);
}

TEST(HiddenLines, AFlushJointShowsItsLineAndHidesNothing) {
    const std::vector<Polyhedron> solids{box({0, 0, 0}, {40, 20, 100}),
                                         box({40, 0, 30}, {140, 20, 60})};

    const std::vector<ViewEdge> edges = mergeCoincident(hiddenLines(solids, View::front()));

    EXPECT_NEAR(lengthsOf(edges).visible, 280 + 2 * 100 + 30, 1e-4);
    EXPECT_NEAR(lengthsOf(edges).hidden, 0, 1e-4);
}

TEST(HiddenLines, AnEdgeBehindTheSeamOfTwoFlushBoardsIsHidden) {
    const std::vector<Polyhedron> solids{box({0, 0, 0}, {50, 20, 100}),
                                         box({50, 0, 0}, {100, 20, 100}),
                                         box({50, 30, 20}, {90, 50, 80})};

    EXPECT_NEAR(lengthsOf(hiddenLines(solids, View::front()), 2).visible, 0, 1e-9);
}

TEST(HiddenLines, AnEdgeBehindTheOutlineOfABoardIsVisible) {
    const std::vector<Polyhedron> solids{box({0, 0, 0}, {50, 20, 100}),
                                         box({50, 30, 20}, {90, 50, 80})};

    const std::vector<ViewEdge> edges = hiddenLines(solids, View::front());

    // Its front edge there; the rear one has its own front face on the board's other side.
    EXPECT_TRUE(std::any_of(edges.begin(), edges.end(), [](const ViewEdge& e) {
        return e.solid == 1 && e.visible && e.a.x == 50 && e.b.x == 50;
    }));
    EXPECT_NEAR(lengthsOf(mergeCoincident(edges), 1).hidden, 0, 1e-9);
}

TEST(HiddenLines, AStretcherShowsThroughTheNotchOfAnAngleBracket) {
    const Outline angle =
        Outline::polygon({{0, 0}, {30, 0}, {30, 10}, {10, 10}, {10, 30}, {0, 30}});
    const Frame standing{{0, 0, 0}, {1, 0, 0}, {0, 0, 1}, {0, -1, 0}};
    const std::vector<Polyhedron> solids{Polyhedron::prism(angle, 0, 5).transformed(standing),
                                         box({-20, 20, 20}, {50, 30, 22})};

    const Lengths stretcher = lengthsOf(mergeCoincident(hiddenLines(solids, View::front())), 1);

    EXPECT_NEAR(stretcher.hidden, 2 * 10, 1e-4);
    EXPECT_NEAR(stretcher.visible, 2 * 60 + 4, 1e-4);
}

TEST(HiddenLines, ARoundSpindleShowsItsTwoSidesAndItsEnds) {
    const Outline circle{{{{-10, 0}, 1}, {{10, 0}, 1}}};
    const std::vector<Polyhedron> solids{Polyhedron::prism(circle, 0, 200)};

    const std::vector<ViewEdge> drawn = mergeCoincident(hiddenLines(solids, View::front()));

    EXPECT_NEAR(lengthsOf(drawn).visible, 2 * 200 + 2 * 20, 0.1);
    EXPECT_NEAR(lengthsOf(drawn).hidden, 0, 1e-9);
}

TEST(HiddenLines, AnEdgeThatEntersASlabIsHiddenFromThere) {
    const std::vector<Polyhedron> solids{box({0, 10, 0}, {100, 20, 100}),
                                         box({48, -30, 48}, {52, 15, 52})};
    // The stick's upper right edge: it runs from y = -30 to y = 15 and enters the slab at y = 10.
    const std::vector<PolyhedronEdge> all = solids[1].edges();
    const auto found = std::find_if(all.begin(), all.end(), [](const auto& e) {
        return e.ends == VertexPair{5, 6};
    });

    std::vector<ViewEdge> pieces = hiddenLines(solids, kAskew);
    std::erase_if(pieces,
                  [&](const ViewEdge& e) { return e.solid != 1 || e.edge != found - all.begin(); });

    const double seen = norm(kAskew.project({0, 1, 0}));
    ASSERT_EQ(pieces.size(), 2U);
    EXPECT_TRUE(pieces[0].visible);
    EXPECT_NEAR(norm(pieces[0].b - pieces[0].a), 40 * seen, 1e-4);
    EXPECT_FALSE(pieces[1].visible);
    EXPECT_NEAR(norm(pieces[1].b - pieces[1].a), 5 * seen, 1e-4);
}

TEST(HiddenLines, EdgesSeenEndOnAreLeftOut) {
    const std::vector<Polyhedron> solids{box({0, 0, 0}, {30, 20, 50})};

    EXPECT_EQ(hiddenLines(solids, View::plan()).size(), 8U);
}

TEST(HiddenLines, NothingToSeeIsNoEdges) {
    EXPECT_TRUE(hiddenLines({}, View::front()).empty());
    EXPECT_TRUE(mergeCoincident({}).empty());
}

TEST(MergeCoincident, AVisiblePieceTakesTheHiddenOneUnderIt) {
    const std::vector<ViewEdge> edges{{{0, 0}, {10, 0}, false, 0, 0}, {{8, 0}, {4, 0}, true, 1, 0}};

    const std::vector<ViewEdge> merged = mergeCoincident(edges);

    ASSERT_EQ(merged.size(), 3U);
    EXPECT_DOUBLE_EQ(lengthsOf(merged).hidden, 6);
    EXPECT_DOUBLE_EQ(lengthsOf(merged).visible, 4);
}

TEST(MergeCoincident, RepeatsGoOnceAndCrossingsStay) {
    const std::vector<ViewEdge> edges{{{0, 0}, {10, 10}, true, 0, 0},
                                      {{10, 10}, {0, 0}, true, 1, 0},
                                      {{0, 10}, {10, 0}, true, 2, 0}};

    const std::vector<ViewEdge> merged = mergeCoincident(edges);

    ASSERT_EQ(merged.size(), 2U);
    EXPECT_EQ(merged[0], edges[0]);
    EXPECT_EQ(merged[1], edges[2]);
}

TEST(MergeCoincident, ParallelLinesAHundredthApartAreTwo) {
    const std::vector<ViewEdge> edges{{{0, 0}, {10, 0}, true, 0, 0},
                                      {{0, 0.01}, {10, 0.01}, true, 1, 0}};

    EXPECT_EQ(mergeCoincident(edges).size(), 2U);
}

}  // namespace
}  // namespace shoulderline
