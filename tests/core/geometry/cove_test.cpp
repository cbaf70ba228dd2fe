#include <cmath>

#include <gtest/gtest.h>

#include "core/geometry/body.h"
#include "core/geometry/eased_body.h"
#include "tests/core/geometry/eased_volumes.h"

namespace shoulderline {
namespace {

using testing::taken;
using testing::volumeOfPieces;

// A rail 400 mm long, 50 mm wide and 22 mm thick.
constexpr double kRailLong = 400;
constexpr double kRailWide = 50;
constexpr double kRailThick = 22;

Body rail(std::vector<Easing> easings) {
    return {
        Outline::rectangle(kRailLong, kRailWide), kRailThick, std::nullopt, {}, std::move(easings)};
}

Easing cove(BodyFace on, std::optional<BodyFace> with, double radius) {
    return {EasingProfile::Cove, on, with, radius, radius};
}

double quarterCircle(double radius) {
    return M_PI / 4 * radius * radius;
}

// A quarter circle about the arris, less what lies between it and its facets.
TEST(Cove, TakesAQuarterCircleOffTheWholeArris) {
    for (const double radius : {3.0, 6.35, 12.0}) {
        const Body body = rail({cove(BodyFace::BackSide, BodyFace::FaceEdge, radius)});
        const double facets = kEasingSagitta * radius * M_PI / 2 * kRailLong;

        EXPECT_LT(taken(body), quarterCircle(radius) * kRailLong);
        EXPECT_GT(taken(body), quarterCircle(radius) * kRailLong - facets);
        EXPECT_NEAR(volumeOfPieces(body), body.volume().value(), 1e-6);
    }
}

TEST(Cove, EveryCornerOfItsFacetsLiesAtTheRadiusFromTheArris) {
    constexpr double kRadius = 8;
    const Polyhedron solid =
        rail({cove(BodyFace::FaceSide, BodyFace::FaceEdge, kRadius)}).toPolyhedron().value();
    int onHollow = 0;
    for (const Vec3& p : solid.vertices) {
        const double away = std::hypot(p.y, p.z);
        onHollow += std::abs(away - kRadius) < 1e-9 ? 1 : 0;
        EXPECT_GT(away, kRadius - 1e-9);
    }

    EXPECT_EQ(onHollow, 2 * (easingFacets(kRadius) + 1));
}

TEST(Cove, FourAlongOneRailLeaveNoneTooMuchInItsPieces) {
    std::vector<Easing> all;
    for (const BodyFace on : {BodyFace::FaceSide, BodyFace::BackSide}) {
        for (const BodyFace with : {BodyFace::FaceEdge, BodyFace::BackEdge}) {
            all.push_back(cove(on, with, 10));
        }
    }
    const double one = taken(rail({all.front()}));

    EXPECT_NEAR(taken(rail(all)), 4 * one, 1e-6);
    EXPECT_NEAR(volumeOfPieces(rail(all)), rail(all).volume().value(), 1e-6);
    EXPECT_LT(rail(all).pieces().size(), 4U * 14U);
}

// Over a run-out the quarter circle shrinks to a point, so a third of it.
TEST(Cove, AStoppedOneRunsOutToNothing) {
    Easing easing = cove(BodyFace::BackSide, BodyFace::BackEdge, 9);
    const double whole = taken(rail({easing})) / kRailLong;
    easing.from = 50;
    easing.to = 350;
    easing.runOut = 30;
    const Body body = rail({easing});

    EXPECT_NEAR(taken(body), whole * (240 + 2 * 30 / 3.0), 1e-6);
    EXPECT_NEAR(volumeOfPieces(body), body.volume().value(), 1e-6);
}

// Over all four arrises round a side: each a quarter circle along its middle, and at a corner what
// both reach counts once, a quarter of the bicylinder of 16/3 r^3, halved: 2/3 r^3.
TEST(Cove, AroundASideItIsMitredAtTheCorners) {
    constexpr double kRadius = 7;
    const Body body = rail({cove(BodyFace::BackSide, std::nullopt, kRadius)});
    const double exact = quarterCircle(kRadius) * 2 * (kRailLong + kRailWide) -
                         4 * 2.0 / 3 * kRadius * kRadius * kRadius;
    const double facets = kEasingSagitta * kRadius * M_PI / 2 * 2 * (kRailLong + kRailWide);

    EXPECT_LT(taken(body), exact + 1.0);
    EXPECT_GT(taken(body), exact - facets);
    EXPECT_NEAR(volumeOfPieces(body), body.volume().value(), 1e-6);
}

TEST(Cove, AroundAnEndItIsMitredAtTheCorners) {
    constexpr double kRadius = 5;
    const Body body = rail({cove(BodyFace::FarEnd, std::nullopt, kRadius)});
    const double exact = quarterCircle(kRadius) * 2 * (kRailThick + kRailWide) -
                         4 * 2.0 / 3 * kRadius * kRadius * kRadius;
    const double facets = kEasingSagitta * kRadius * M_PI / 2 * 2 * (kRailThick + kRailWide);

    EXPECT_LT(taken(body), exact + 1.0);
    EXPECT_GT(taken(body), exact - facets);
    EXPECT_NEAR(volumeOfPieces(body), body.volume().value(), 1e-6);
}

TEST(Cove, AroundTheEndOfATurnedLegAllOfItIsHollow) {
    constexpr int kSides = 24;
    constexpr double kRadius = 4;
    Body body = rail({cove(BodyFace::FarEnd, std::nullopt, kRadius)});
    body.face = Outline::rectangle(kRailLong, kRailThick);
    for (int i = 0; i < kSides; ++i) {
        const double at = 2 * M_PI * i / kSides;
        const Vec3 normal{0, std::cos(at), std::sin(at)};
        body.planes.push_back(
            {{normal, kRailThick / 2 + (normal.y + normal.z) * kRailThick / 2}, 0});
    }
    // By Pappus: the quarter circle's middle lies 4 r / (3 pi) within the round.
    const double middle = kRailThick / 2 - 4 * kRadius / (3 * M_PI);
    const double exact = quarterCircle(kRadius) * 2 * M_PI * middle;

    EXPECT_NEAR(taken(body), exact, 0.03 * exact);
    EXPECT_NEAR(volumeOfPieces(body), body.volume().value(), 1e-5);
}

TEST(Cove, ARunOfAShapedEdgeIsHollowToo) {
    Body body{{{{{0, 0}, -0.2}, {{400, 0}, 0}, {{400, 60}, 0}, {{0, 60}, 0}}}, 30, std::nullopt};
    body.easings = {cove(BodyFace::FaceSide, BodyFace::FaceEdge, 6)};
    const FlatOutline flat = body.face.flatten();
    double along = 0.0;
    for (std::size_t i = 0; i + 1 < flat.points.size(); ++i) {
        const Vec2 step = flat.points[i + 1] - flat.points[i];
        along += flat.points[i].y < 59 && flat.points[i + 1].y < 59 && step.x > 0 ? norm(step) : 0;
    }

    EXPECT_NEAR(taken(body), quarterCircle(6) * along, 0.04 * quarterCircle(6) * along);
    EXPECT_NEAR(volumeOfPieces(body), body.toPolyhedron()->volume(), 1e-4 * body.volume().value());
}

// Its pieces keep the chamfer's triangle along the hollow.
TEST(Cove, AChamferAroundTheEndRunsThroughTheHollow) {
    const Body coved = rail({cove(BodyFace::FaceSide, BodyFace::FaceEdge, 6)});
    Body both = coved;
    both.easings.push_back({EasingProfile::Chamfer, BodyFace::FarEnd, std::nullopt, 2, 2});
    const double kept = volumeOfPieces(both) - both.volume().value();

    EXPECT_GT(taken(both), taken(coved));
    EXPECT_GT(kept, 0.0);
    EXPECT_LT(kept, 2.0 * 2.0 / 2 * (6 + 2) * M_PI / 2);
}

TEST(Cove, WhatLiesInTheHollowIsGoneAndWhatLiesBeyondItIsThere) {
    constexpr double kRadius = 10;
    const Body body = rail({cove(BodyFace::FaceSide, BodyFace::FaceEdge, kRadius)});
    const std::vector<EasedStretch> stretches = stretchesOf(body, body.easings);
    const auto at = [](double share) { return kRadius * share / std::sqrt(2.0); };

    EXPECT_TRUE(isEasedAway(stretches, {200, at(0.95), at(0.95)}));
    EXPECT_TRUE(isEasedAway(stretches, {200, 0.9 * kRadius, 0.1}));
    EXPECT_FALSE(isEasedAway(stretches, {200, at(1.05), at(1.05)}));
    EXPECT_FALSE(isEasedAway(stretches, {200, 1.05 * kRadius, 0.1}));
    EXPECT_FALSE(isEasedAway(stretches, {200, 0.8 * kRadius, 0.8 * kRadius}));
}

TEST(Cove, WhatReachesPastItsFacesIsRefused) {
    EXPECT_FALSE(rail({cove(BodyFace::FaceSide, BodyFace::FaceEdge, 23)}).toPolyhedron());
    EXPECT_FALSE(rail({cove(BodyFace::FaceSide, BodyFace::FaceEdge, 12),
                       cove(BodyFace::BackSide, BodyFace::FaceEdge, 12)})
                     .toPolyhedron());
}

}  // namespace
}  // namespace shoulderline
