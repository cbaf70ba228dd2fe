#include "core/geometry/easing.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/geometry/body.h"
#include "tests/core/geometry/eased_volumes.h"

namespace shoulderline {
namespace {

using testing::taken;
using testing::volumeOfPieces;

// A leg 400 mm long, 50 mm wide and 40 mm thick.
constexpr double kLong = 400;
constexpr double kWide = 50;
constexpr double kThick = 40;

Body leg(std::vector<Easing> easings) {
    return {Outline::rectangle(kLong, kWide), kThick, std::nullopt, {}, std::move(easings)};
}

Easing chamfer(BodyFace on, std::optional<BodyFace> with, double reach) {
    return {EasingProfile::Chamfer, on, with, reach, reach};
}

// Of the solid with facets for arcs, as the pieces have them.
double solidVolume(const Body& body) {
    return body.toPolyhedron()->volume();
}

constexpr BodyFace kArrises[][2] = {{BodyFace::FaceSide, BodyFace::FaceEdge},
                                    {BodyFace::FaceSide, BodyFace::BackEdge},
                                    {BodyFace::BackSide, BodyFace::FaceEdge},
                                    {BodyFace::BackSide, BodyFace::BackEdge}};

TEST(Easing, AChamferTakesATriangleOffTheWholeArris) {
    for (const auto& [on, with] : kArrises) {
        const Body body = leg({chamfer(on, with, 6)});

        EXPECT_NEAR(taken(body), 6.0 * 6.0 / 2 * kLong, 1e-6);
        EXPECT_NEAR(volumeOfPieces(body), body.volume().value(), 1e-6);
        EXPECT_EQ(body.toPolyhedron()->faces.size(), 7U);
    }
}

TEST(Easing, AChamferMayReachFurtherIntoOneFaceThanIntoTheOther) {
    Easing easing = chamfer(BodyFace::FaceSide, BodyFace::FaceEdge, 10);
    easing.otherReach = 4;
    const Polyhedron solid = leg({easing}).toPolyhedron().value();

    EXPECT_NEAR(taken(leg({easing})), 10.0 * 4.0 / 2 * kLong, 1e-6);
    double deepest = 0.0;
    for (const Vec3& p : solid.vertices) {
        deepest = p.z < 1e-9 ? std::max(deepest, kWide - p.y) : deepest;
    }
    EXPECT_NEAR(deepest, kWide - 10, 1e-9) << "the reach into the face side is across it";
}

TEST(Easing, AllFourArrisesMakeAnEightSidedLeg) {
    std::vector<Easing> all;
    for (const auto& [on, with] : kArrises) {
        all.push_back(chamfer(on, with, 8));
    }

    EXPECT_NEAR(taken(leg(all)), 4 * 8.0 * 8.0 / 2 * kLong, 1e-6);
    EXPECT_EQ(leg(all).toPolyhedron()->faces.size(), 10U);
}

// A quarter circle leaves r^2 (1 - pi / 4) in the corner of its square; its facets stay within
// kEasingSagitta of it, inside the wood.
TEST(Easing, ARoundOverTakesWhatAQuarterCircleLeavesOfItsSquare) {
    for (const double radius : {3.0, 6.0, 19.0}) {
        const Body body =
            leg({{EasingProfile::Round, BodyFace::FaceSide, BodyFace::BackEdge, radius, radius}});
        const double exact = radius * radius * (1 - M_PI / 4) * kLong;
        const double facets = kEasingSagitta * radius * M_PI / 2 * kLong;

        EXPECT_GT(taken(body), exact);
        EXPECT_LT(taken(body), exact + facets);
        EXPECT_NEAR(volumeOfPieces(body), body.volume().value(), 1e-6);
    }
}

TEST(Easing, FacetsOfARoundOverAreSmoothAndItsTangentLinesAreDrawn) {
    const Body body = leg({{EasingProfile::Round, BodyFace::FaceSide, BodyFace::FaceEdge, 6, 6}});
    const std::vector<PolyhedronEdge> edges = body.toPolyhedron()->edges();
    const auto drawnAlong = std::count_if(edges.begin(), edges.end(), [&](const auto& edge) {
        const Polyhedron solid = body.toPolyhedron().value();
        const Vec3 a = solid.vertices[static_cast<std::size_t>(edge.ends.low)];
        const Vec3 b = solid.vertices[static_cast<std::size_t>(edge.ends.high)];
        return !edge.isSmooth && std::abs(a.x - b.x) > 1.0;
    });

    EXPECT_EQ(drawnAlong, 3 + 2);
}

// The full stretch is a prism; over a run-out the triangle shrinks to a point, so a third of it.
TEST(Easing, AStoppedChamferRunsOutToNothing) {
    Easing easing = chamfer(BodyFace::BackSide, BodyFace::FaceEdge, 9);
    easing.from = 50;
    easing.to = 350;
    easing.runOut = 12;
    const Body body = leg({easing});

    EXPECT_NEAR(taken(body), 9.0 * 9.0 / 2 * (300 - 24 + 2 * 12 / 3.0), 1e-6);
    EXPECT_NEAR(volumeOfPieces(body), body.volume().value(), 1e-6);
}

TEST(Easing, OneStopLeavesTheOtherEndRunningThrough) {
    Easing easing = chamfer(BodyFace::FaceSide, BodyFace::BackEdge, 9);
    easing.from = 100;
    easing.runOut = 30;

    EXPECT_NEAR(taken(leg({easing})), 9.0 * 9.0 / 2 * (kLong - 130 + 10), 1e-6);
}

TEST(Easing, AStoppedRoundOverRunsOutToNothing) {
    Easing easing{EasingProfile::Round, BodyFace::FaceSide, BodyFace::FaceEdge, 10, 10};
    const double whole = taken(leg({easing})) / kLong;
    easing.from = 50;
    easing.to = 350;
    easing.runOut = 30;

    EXPECT_NEAR(taken(leg({easing})), whole * (240 + 2 * 30 / 3.0), 1e-6);
    EXPECT_NEAR(volumeOfPieces(leg({easing})), leg({easing}).volume().value(), 1e-6);
}

// Prismatoid formula: h / 6 (A + 4 M + B).
TEST(Easing, AChamferAroundAnEndLeavesAPrismatoid) {
    Easing easing = chamfer(BodyFace::FarEnd, std::nullopt, 5);
    easing.otherReach = 8;
    const double end = (kWide - 10) * (kThick - 10);
    const double middle = (kWide - 5) * (kThick - 5);
    const double left = 8.0 / 6 * (kWide * kThick + 4 * middle + end);

    EXPECT_NEAR(taken(leg({easing})), 8 * kWide * kThick - left, 1e-6);
    EXPECT_NEAR(volumeOfPieces(leg({easing})), leg({easing}).volume().value(), 1e-6);
}

TEST(Easing, APyramidLeavesAThirdOfItsPrism) {
    Easing easing{EasingProfile::Pyramid, BodyFace::StartEnd, std::nullopt, 0, 18};
    const Body body = leg({easing});

    EXPECT_NEAR(taken(body), 18 * kWide * kThick * 2 / 3, 1e-6);
    EXPECT_EQ(body.toPolyhedron()->faces.size(), 4U + 4U + 1U) << "the end has gone to a point";
    EXPECT_NEAR(volumeOfPieces(body), body.volume().value(), 1e-6);
}

TEST(Easing, ARoundOverOfHalfTheThicknessMakesTheEndHalfRound) {
    const Body body =
        leg({{EasingProfile::Round, BodyFace::FarEnd, std::nullopt, kThick / 2, kThick / 2}});
    const Polyhedron solid = body.toPolyhedron().value();
    double across = 0.0;
    for (const Vec3& p : solid.vertices) {
        across = p.x > kLong - 1e-9 ? std::max(across, std::abs(p.z - kThick / 2)) : across;
    }

    EXPECT_NEAR(across, 0.0, 1e-6) << "a ridge is left of the end";
    EXPECT_NEAR(solid.bounds().max.x, kLong, 1e-9);
}

TEST(Easing, AnArrisRunsWithTheShapeOfItsEdge) {
    Body body{{{{{0, 0}, -0.2}, {{400, 0}, 0}, {{400, 60}, 0}, {{0, 60}, 0}}}, 30, std::nullopt};
    body.easings = {chamfer(BodyFace::FaceSide, BodyFace::FaceEdge, 5)};
    const FlatOutline flat = body.face.flatten();
    double along = 0.0;
    for (std::size_t i = 0; i + 1 < flat.points.size(); ++i) {
        const Vec2 step = flat.points[i + 1] - flat.points[i];
        along += flat.points[i].y < 59 && flat.points[i + 1].y < 59 && step.x > 0 ? norm(step) : 0;
    }

    EXPECT_NEAR(taken(body), 12.5 * along, 0.03 * 12.5 * along);
    EXPECT_NEAR(volumeOfPieces(body), solidVolume(body), 1e-4 * solidVolume(body));
}

TEST(Easing, AroundASideGoesRoundItsOutline) {
    Body body{{{{{20, 0}, 0}, {{400, 0}, 0}, {{400, 60}, 0}, {{20, 60}, 0.4}}}, 25, std::nullopt};
    body.easings = {{EasingProfile::Chamfer, BodyFace::BackSide, std::nullopt, 3, 3}};
    const Polyhedron solid = body.toPolyhedron().value();
    // The top is the outline drawn in by 3 mm, whose sides are straight but for one arc.
    Box top = {{1e9, 1e9, 0}, {-1e9, -1e9, 0}};
    for (const Vec3& p : solid.vertices) {
        if (p.z > 25 - 1e-9) {
            top = Box::around(top, {{p.x, p.y, 0}, {p.x, p.y, 0}});
        }
    }

    EXPECT_NEAR(top.max.x, 397, 1e-6);
    EXPECT_NEAR(top.min.y, 3, 1e-6);
    EXPECT_NEAR(top.max.y, 57, 1e-6);
    EXPECT_NEAR(top.min.x, body.face.bounds().min.x + 3, 0.02);
    EXPECT_NEAR(volumeOfPieces(body), solidVolume(body), 1e-6 * solidVolume(body));
}

// Beside a sharp corner the facets of an arc are shorter than the easing takes: these are dropped,
// and the top still is the outline drawn in. Of a circle's sector drawn in by c the area is known.
TEST(Easing, GoesRoundASharpCornerOfACurve) {
    constexpr double kRadius = 90;
    Body half{{{{{kRadius, 0}, 1.0}, {{-kRadius, 0}, 0.0}}}, 25, std::nullopt};
    for (OutlineVertex& vertex : half.face.vertices) {
        vertex.point = vertex.point + Vec2{100, 20};
    }
    half.easings = {{EasingProfile::Chamfer, BodyFace::FaceSide, std::nullopt, 7, 7}};
    const Result<Polyhedron> solid = half.toPolyhedron();
    ASSERT_TRUE(solid) << solid.error().message;
    double area = 0.0;
    for (std::size_t f = 0; f < solid->faces.size(); ++f) {
        const Vec3 vector = solid->areaVector(static_cast<int>(f));
        area += vector.z < -0.999 * norm(vector) ? norm(vector) : 0.0;
    }
    // The segment of radius r - c cut off c above its middle, within the facets of its arc.
    const double r = kRadius - 7;
    const double angle = 2 * std::acos(7 / r);
    EXPECT_NEAR(area, r * r * (angle - std::sin(angle)) / 2, kArcSagitta * r * angle);
    EXPECT_NEAR(volumeOfPieces(half), solid->volume(), 1e-3 * solid->volume());
    // A chamfer takes c^2 / 2 for its length, less c^3 / 3 tan(d / 2) where it turns outwards by d,
    // which is d / 2 for a curve.
    const double around = M_PI * kRadius + 2 * kRadius;
    const double turns = 2 * std::tan(M_PI / 4) + M_PI / 2;
    const double exact = 7.0 * 7 / 2 * around - std::pow(7.0, 3) / 3 * turns;
    EXPECT_NEAR(taken(half), exact, 1e-3 * exact);
}

TEST(Easing, TheEndOfATurnedLegTakesAChamferToo) {
    Body body = leg({chamfer(BodyFace::FarEnd, std::nullopt, 4)});
    body.face = Outline::rectangle(kLong, kThick);
    constexpr int kSides = 24;
    for (int i = 0; i < kSides; ++i) {
        const double at = 2 * M_PI * i / kSides;
        const Vec3 normal{0, std::cos(at), std::sin(at)};
        body.planes.push_back({{normal, kThick / 2 + (normal.y + normal.z) * kThick / 2}, 0});
    }
    // Of a polygon around a circle of radius r the area is n r^2 tan(pi / n).
    const auto area = [](double r) { return kSides * r * r * std::tan(M_PI / kSides); };
    const double left = 4.0 / 6 * (area(20) + 4 * area(18) + area(16));

    EXPECT_NEAR(taken(body), 4 * area(20) - left, 1e-5);
    EXPECT_NEAR(volumeOfPieces(body), body.volume().value(), 1e-5);
}

TEST(Easing, AnEndCutToAnAngleIsEasedInItsOwnPlane) {
    Body body = leg({chamfer(BodyFace::FarEnd, std::nullopt, 4)});
    const Vec3 normal = normalised(Vec3{1, 0.2, 0});
    body.planes = {{{normal, dot(normal, Vec3{kLong, kWide, 0}) - 20}}};
    const Polyhedron solid = body.toPolyhedron().value();
    int onEnd = 0;
    for (const Vec3& p : solid.vertices) {
        onEnd += std::abs(body.planes.front().keeps.height(p)) < 1e-6 ? 1 : 0;
    }

    EXPECT_EQ(onEnd, 4);
    EXPECT_GT(taken(body), 0.0);
    EXPECT_NEAR(volumeOfPieces(body), body.volume().value(), 1e-6);
}

TEST(Easing, WhatReachesPastItsFacesIsRefused) {
    EXPECT_FALSE(leg({chamfer(BodyFace::FaceSide, BodyFace::FaceEdge, 55)}).toPolyhedron());
    EXPECT_FALSE(leg({chamfer(BodyFace::FaceSide, BodyFace::FaceEdge, 30),
                      chamfer(BodyFace::FaceSide, BodyFace::BackEdge, 30)})
                     .toPolyhedron());
    EXPECT_FALSE(leg({chamfer(BodyFace::FarEnd, std::nullopt, 30)}).toPolyhedron());
    Easing brief = chamfer(BodyFace::FaceSide, BodyFace::FaceEdge, 5);
    brief.from = 100;
    brief.to = 110;
    brief.runOut = 20;
    EXPECT_FALSE(leg({brief}).toPolyhedron());
}

}  // namespace
}  // namespace shoulderline
