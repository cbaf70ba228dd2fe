#include "core/geometry/polyhedron.h"

#include <algorithm>
#include <numbers>

#include <gtest/gtest.h>

#include "tests/core/geometry/outlines.h"

namespace shoulderline {
namespace {

using testing::kAngle;
const Outline kDisc{{{{-10, 0}, 1}, {{10, 0}, 1}}};

TEST(Polyhedron, ABoxHasTwelveEdgesEachBetweenTwoFaces) {
    const std::vector<PolyhedronEdge> edges = Polyhedron::box({{0, 0, 0}, {1, 2, 3}}).edges();

    EXPECT_EQ(edges.size(), 12U);
    EXPECT_TRUE(std::all_of(edges.begin(), edges.end(), [](const PolyhedronEdge& e) {
        return e.left >= 0 && e.right >= 0 && e.left != e.right;
    }));
}

TEST(Polyhedron, APrismOfAnAngleHasItsVolumeAndBounds) {
    const Polyhedron solid = Polyhedron::prism(kAngle, 5, 9);

    EXPECT_DOUBLE_EQ(solid.volume(), 500 * 4);
    EXPECT_EQ(solid.bounds(), (Box{{0, 0, 5}, {30, 30, 9}}));
}

TEST(Polyhedron, EdgesBetweenFacetsOfAnArcAreSmooth) {
    const Polyhedron solid = Polyhedron::prism(kDisc, 0, 50);
    const std::vector<PolyhedronEdge> edges = solid.edges();
    const auto smooth = std::count_if(
        edges.begin(), edges.end(), [](const PolyhedronEdge& e) { return e.isSmooth; });

    EXPECT_EQ(static_cast<std::size_t>(smooth) * 3, edges.size());
    EXPECT_NEAR(solid.volume(), std::numbers::pi * 100 * 50, 50 * 2 * std::numbers::pi * 10 * 0.01);
}

TEST(Polyhedron, FacesLookOutwards) {
    const Polyhedron solid = Polyhedron::box({{0, 0, 0}, {10, 10, 10}});

    for (int f = 0; f < 6; ++f) {
        const Vec3 onFace = solid.vertices[static_cast<std::size_t>(
            solid.faces[static_cast<std::size_t>(f)].loop[0])];
        EXPECT_GT(dot(solid.areaVector(f), onFace - Vec3{5, 5, 5}), 0);
        EXPECT_DOUBLE_EQ(norm(solid.areaVector(f)), 100);
    }
}

TEST(Polyhedron, TheMirrorTwinKeepsItsVolumeAndItsFacesOutwards) {
    const Frame frame =
        Frame::turned({100, 50, 20}, Angle::degrees(10), Angle::degrees(20), Angle::degrees(30));

    EXPECT_NEAR(Polyhedron::prism(kAngle, 0, 4).transformed(frame).volume(), 2000, 1e-9);
    EXPECT_NEAR(
        Polyhedron::prism(kAngle, 0, 4).transformed(frame.mirroredInX()).volume(), 2000, 1e-9);
}

}  // namespace
}  // namespace shoulderline
