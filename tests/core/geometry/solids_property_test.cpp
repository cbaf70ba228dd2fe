#include <vector>

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/geometry/box_solids.h"
#include "core/geometry/convex_solid.h"

namespace shoulderline {
namespace {

// Whole tenths of a millimetre, so that faces often coincide.
double tenths(int low, int high) {
    return *rc::gen::inRange(low, high) / 10.0;
}

Box anyBox() {
    const Vec3 min{tenths(-100, 100), tenths(-100, 100), tenths(-100, 100)};
    return {min, min + Vec3{tenths(1, 200), tenths(1, 200), tenths(1, 200)}};
}

Frame anyFrame() {
    const auto angle = [] { return Angle::degrees(*rc::gen::inRange(-1800, 1800) / 10.0); };
    const Frame frame = Frame::turned(
        {tenths(-100, 100), tenths(-100, 100), tenths(-100, 100)}, angle(), angle(), angle());
    return *rc::gen::arbitrary<bool>() ? frame.mirroredInX() : frame;
}

// A turned box, half of the time with a corner cut off through its centre region.
ConvexSolid anySolid() {
    const ConvexSolid solid = ConvexSolid::box(anyBox(), anyFrame());
    if (*rc::gen::arbitrary<bool>()) {
        return solid;
    }
    const Vec3 normal = anyFrame().x;
    return solid.clipped({normal, dot(normal, solid.centroid()) + tenths(0, 20)}).value_or(solid);
}

double volumeOf(const std::optional<ConvexSolid>& solid) {
    return solid ? solid->volume() : 0.0;
}

double volumeOf(const std::vector<ConvexSolid>& solids) {
    double volume = 0.0;
    for (const ConvexSolid& solid : solids) {
        volume += solid.volume();
    }
    return volume;
}

void expectClose(double a, double b, double scale) {
    RC_ASSERT(std::abs(a - b) <= 1e-6 + 1e-9 * scale);
}

RC_GTEST_PROP(ConvexSolidVolumes, UnionAndIntersectionMakeUpBoth, ()) {
    const std::vector<ConvexSolid> both{anySolid(), anySolid()};
    const double sum = both[0].volume() + both[1].volume();

    expectClose(unionVolume(both) + volumeOf(intersection(both[0], both[1])), sum, sum);
}

RC_GTEST_PROP(ConvexSolidVolumes, DifferenceAndIntersectionMakeUpTheFirst, ()) {
    const ConvexSolid a = anySolid();
    const ConvexSolid b = anySolid();

    expectClose(volumeOf(difference(a, b)) + volumeOf(intersection(a, b)), a.volume(), a.volume());
}

RC_GTEST_PROP(ConvexSolidVolumes, IntersectionIsTheSameEitherWay, ()) {
    const ConvexSolid a = anySolid();
    const ConvexSolid b = anySolid();

    expectClose(volumeOf(intersection(a, b)), volumeOf(intersection(b, a)), a.volume());
}

RC_GTEST_PROP(ConvexSolidVolumes, UnionOfThreeFollowsInclusionAndExclusion, ()) {
    const std::vector<ConvexSolid> s{anySolid(), anySolid(), anySolid()};
    const auto ab = intersection(s[0], s[1]);
    const double pairs =
        volumeOf(ab) + volumeOf(intersection(s[0], s[2])) + volumeOf(intersection(s[1], s[2]));
    const double all = ab ? volumeOf(intersection(*ab, s[2])) : 0.0;
    const double sum = s[0].volume() + s[1].volume() + s[2].volume();

    expectClose(unionVolume(s), sum - pairs + all, sum);
}

RC_GTEST_PROP(ConvexSolidClip, TheTwoSidesOfAPlaneMakeUpTheWholeAndStayClosed, ()) {
    const ConvexSolid solid = anySolid();
    const Vec3 normal = anyFrame().y;
    const HalfSpace plane{normal, dot(normal, solid.centroid()) + tenths(-50, 50)};
    const auto below = solid.clipped(plane);
    const auto above = solid.clipped(plane.opposite());

    expectClose(volumeOf(below) + volumeOf(above), solid.volume(), solid.volume());
    for (const PolyhedronEdge& e : below.value_or(solid).toPolyhedron().edges()) {
        RC_ASSERT(e.left >= 0 && e.right >= 0);
    }
}

RC_GTEST_PROP(ConvexSolidDistance, IsTheSameEitherWayAndLiesBetweenItsPoints, ()) {
    const ConvexSolid a = anySolid();
    const ConvexSolid b = anySolid().transformed({{tenths(0, 400), tenths(0, 400), 0}});
    const ClosestPoints there = distance(a, b);
    const ClosestPoints back = distance(b, a);

    RC_ASSERT(std::abs(there.distance - back.distance) <= 1e-6);
    RC_ASSERT(std::abs(norm(there.onFirst - there.onSecond) - there.distance) <= 1e-6);
    RC_ASSERT(a.contains(there.onFirst, 1e-6) && b.contains(there.onSecond, 1e-6));
}

RC_GTEST_PROP(ConvexSolidDistance, APlaneSquareToItPartsTheSolids, ()) {
    const ConvexSolid a = anySolid();
    const ConvexSolid b = anySolid().transformed({{tenths(0, 400), tenths(0, 400), 0}});
    const ClosestPoints closest = distance(a, b);
    RC_PRE(closest.distance > 1e-3);

    // No part of either solid lies between the planes through the two points: so none is nearer.
    const Vec3 way = (closest.onSecond - closest.onFirst) * (1.0 / closest.distance);
    RC_ASSERT(a.extentAlong(way).max <= dot(way, closest.onFirst) + 1e-6);
    RC_ASSERT(b.extentAlong(way).min >= dot(way, closest.onSecond) - 1e-6);
}

RC_GTEST_PROP(BoxTwin, OverlapDistanceAndSubtractAgreeWithConvexSolids, ()) {
    const Box a = anyBox();
    const Box b = anyBox();
    const Frame frame = anyFrame();
    const ConvexSolid solidA = ConvexSolid::box(a, frame);
    const ConvexSolid solidB = ConvexSolid::box(b, frame);
    const std::optional<Box> shared = overlap(a, b);

    expectClose(
        shared ? shared->volume() : 0.0, volumeOf(intersection(solidA, solidB)), a.volume());
    RC_ASSERT(std::abs(distance(a, b) - distance(solidA, solidB).distance) <= 1e-6);
    expectClose(unionVolume(subtract(a, b)), volumeOf(difference(solidA, solidB)), a.volume());
}

RC_GTEST_PROP(BoxTwin, UnionVolumeAgreesWithConvexSolids, ()) {
    std::vector<Box> boxes;
    std::vector<ConvexSolid> solids;
    const Frame frame = anyFrame();
    for (int i = *rc::gen::inRange(1, 6); i > 0; --i) {
        boxes.push_back(anyBox());
        solids.push_back(ConvexSolid::box(boxes.back(), frame));
    }

    expectClose(unionVolume(boxes), unionVolume(solids), unionVolume(boxes));
}

}  // namespace
}  // namespace shoulderline
