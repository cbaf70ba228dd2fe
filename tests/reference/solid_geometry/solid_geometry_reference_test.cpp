// Against Open CASCADE Technology 7.6, a general geometry kernel that works on boundary surfaces.

#include <random>
#include <vector>

#include <gtest/gtest.h>

#include "core/geometry/hidden_lines.h"
#include "tests/core/geometry/random_frames.h"
#include "tests/reference/solid_geometry/occt_solids.h"

namespace shoulderline {
namespace {

using reference::Solid;

class RandomBoxes {
  public:
    explicit RandomBoxes(unsigned seed) : random_(seed) {}
    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random_);
    }
    Vec3 point(double low, double high) {
        return {between(low, high), between(low, high), between(low, high)};
    }
    // A box about `centre`, turned any way, every third one in a mirrored frame.
    test::Stick about(Vec3 centre) {
        const Vec3 size = point(5, 60);
        const auto angle = [this] { return Angle::degrees(between(-180, 180)); };
        Frame frame = Frame::turned({}, angle(), angle(), angle());
        if (++count_ % 3 == 0) {
            frame = frame.mirroredInX();
        }
        frame.origin = centre;
        return {{size * -0.5, size * 0.5}, frame};
    }

  private:
    std::mt19937 random_;
    int count_ = 0;
};

double volumeOf(const std::vector<ConvexSolid>& solids) {
    double volume = 0.0;
    for (const ConvexSolid& solid : solids) {
        volume += solid.volume();
    }
    return volume;
}

TEST(ConvexSolidReference, VolumesOfTurnedBoxPairsAgree) {
    RandomBoxes random(11);
    int overlapping = 0;
    for (int i = 0; i < 60; ++i) {
        const test::Stick a = random.about(random.point(-15, 15));
        const test::Stick b = random.about(random.point(-15, 15));
        const std::vector<ConvexSolid> ours{ConvexSolid::box(a.box, a.frame),
                                            ConvexSolid::box(b.box, b.frame)};
        const Solid theirs[] = {Solid({a.box, a.frame, {}, {}}), Solid({b.box, b.frame, {}, {}})};
        const auto shared = intersection(ours[0], ours[1]);
        const double whole = ours[0].volume() + ours[1].volume();
        overlapping += shared ? 1 : 0;

        EXPECT_NEAR(theirs[0].volume(), ours[0].volume(), 1e-6 * whole);
        EXPECT_NEAR(
            common(theirs[0], theirs[1]).volume(), shared ? shared->volume() : 0.0, 1e-6 * whole);
        EXPECT_NEAR(fuse(theirs[0], theirs[1]).volume(), unionVolume(ours), 1e-6 * whole);
        EXPECT_NEAR(cut(theirs[0], theirs[1]).volume(),
                    volumeOf(difference(ours[0], ours[1])),
                    1e-6 * whole);
    }
    EXPECT_GT(overlapping, 30);
}

TEST(ConvexSolidReference, ClippedSolidsAgreeWhenSewnFromTheirFaces) {
    RandomBoxes random(12);
    for (int i = 0; i < 40; ++i) {
        const test::Stick a = random.about(random.point(-10, 10));
        const test::Stick b = random.about(random.point(-10, 10));
        const auto ours =
            intersection(ConvexSolid::box(a.box, a.frame), ConvexSolid::box(b.box, b.frame));
        if (!ours) {
            continue;
        }
        const Solid theirs({*ours, Frame{}, {}, {}});

        EXPECT_NEAR(theirs.volume(), ours->volume(), 1e-6 * ours->volume());
    }
}

TEST(ConvexSolidReference, DistancesOfTurnedBoxPairsAgree) {
    RandomBoxes random(13);
    int apart = 0;
    for (int i = 0; i < 100; ++i) {
        const test::Stick a = random.about(random.point(-40, 40));
        const test::Stick b = random.about(random.point(-40, 40));
        const ConvexSolid ours[] = {ConvexSolid::box(a.box, a.frame),
                                    ConvexSolid::box(b.box, b.frame)};
        const double expected =
            minimumDistance(Solid({a.box, a.frame, {}, {}}), Solid({b.box, b.frame, {}, {}}));
        apart += expected > 0 ? 1 : 0;

        EXPECT_NEAR(distance(ours[0], ours[1]).distance, expected, 1e-6);
    }
    EXPECT_GT(apart, 40);
}

TEST(BodyReference, VolumesOfPrismsAndOfTwoOutlinesAgree) {
    const Outline taper = Outline::polygon({{0, 0}, {400, 0}, {400, 20}, {0, 40}});
    const Outline bracket{{{{0, 0}}, {{80, 0}, 0.2}, {{80, 60}}, {{40, 60}, -0.3}, {{0, 30}}}};
    const Frame frame =
        Frame::turned({10, 20, 30}, Angle::degrees(12), Angle::degrees(34), Angle::degrees(56))
            .mirroredInX();
    const Outline bent =
        Outline::polygon({{0, 30}, {400, 0}, {900, 60}, {900, 90}, {400, 45}, {0, 65}});
    const Outline twoWay =
        Outline::polygon({{0, 6}, {400, 0}, {900, 8}, {900, 30}, {300, 24}, {0, 30}});
    const Body bodies[] = {{bracket, 22, {}}, {taper, 40, taper}, {bent, 30, twoWay}};

    for (const Body& body : bodies) {
        const double expected = Solid({body, frame, {}, {}}).volume();
        EXPECT_NEAR(body.volume().value(), expected, 1e-6 * expected);
    }
}

TEST(BodyReference, ABowedSlatAgreesWithinItsFacets) {
    const Outline bow{{{{0, 0}, -0.1}, {{500, 0}}, {{500, 8}, 0.1}, {{0, 8}}}};
    const Body slat{Outline::rectangle(500, 60), 70, bow};
    const double expected = Solid({slat, Frame{}, {}, {}}).volume();

    EXPECT_NEAR(slat.volume().value(), expected, 2 * 500 * 60 * kArcSagitta);
}

// Open CASCADE 7.6 takes visible edges of a box, even of one alone, for hidden when a face of it is
// seen within about half a degree of edge-on. A box alone and askew has three hidden edges just, so
// that is its error; such sticks are not compared.
bool showsAFaceNearlyEdgeOn(const test::Stick& stick, const View& view) {
    for (int i = 0; i < 3; ++i) {
        if (std::abs(view.nearness(stick.frame.axis(i))) < 0.02) {
            return true;
        }
    }
    return false;
}

std::vector<Polyhedron> polyhedra(const std::vector<test::Stick>& sticks) {
    std::vector<Polyhedron> solids;
    for (const test::Stick& stick : sticks) {
        solids.push_back(Polyhedron::box(stick.box, stick.frame));
    }
    return solids;
}

std::vector<Solid> kernelSolids(const std::vector<test::Stick>& sticks) {
    std::vector<Solid> solids;
    for (const test::Stick& stick : sticks) {
        solids.push_back(Solid({stick.box, stick.frame, {}, {}}));
    }
    return solids;
}

reference::SeenLengths lengthsOf(const std::vector<ViewEdge>& edges) {
    reference::SeenLengths lengths;
    for (const ViewEdge& e : edges) {
        (e.visible ? lengths.visible : lengths.hidden) += norm(e.b - e.a);
    }
    return lengths;
}

void expectSameLengths(const std::vector<test::Stick>& sticks, const View& view) {
    const reference::SeenLengths ours = lengthsOf(hiddenLines(polyhedra(sticks), view));
    const reference::SeenLengths theirs = seenLengths(kernelSolids(sticks), view);

    EXPECT_NEAR(ours.visible, theirs.visible, 1e-3 * theirs.visible);
    EXPECT_NEAR(ours.hidden, theirs.hidden, 1e-3 * theirs.hidden);
}

std::vector<test::Stick> comparableSticks(unsigned seed, const View& view) {
    std::vector<test::Stick> sticks = test::layeredSticks(seed, 24, 8.0);
    std::erase_if(sticks, [&](const auto& s) { return showsAFaceNearlyEdgeOn(s, view); });
    return sticks;
}

TEST(HiddenLinesReference, LayeredSticksFromTheFrontAgree) {
    if (!reference::kHiddenLinesAreSound) {
        GTEST_SKIP() << "the kernel's hidden lines are not sound in this build";
    }
    for (unsigned seed = 101; seed <= 110; ++seed) {
        const std::vector<test::Stick> sticks = comparableSticks(seed, View::front());
        EXPECT_GE(sticks.size(), 7U);
        expectSameLengths(sticks, View::front());
    }
}

TEST(HiddenLinesReference, LayeredSticksAskewAgree) {
    if (!reference::kHiddenLinesAreSound) {
        GTEST_SKIP() << "the kernel's hidden lines are not sound in this build";
    }
    const View view = View::axonometric(Angle::degrees(30), Angle::degrees(20));
    for (unsigned seed = 201; seed <= 210; ++seed) {
        const std::vector<test::Stick> sticks = comparableSticks(seed, view);
        EXPECT_GE(sticks.size(), 7U);
        expectSameLengths(sticks, view);
    }
}

TEST(HiddenLinesReference, FlushFramesWithTenonsInTheirPostsAgreeAskew) {
    if (!reference::kHiddenLinesAreSound) {
        GTEST_SKIP() << "the kernel's hidden lines are not sound in this build";
    }
    const View view = View::axonometric(Angle::degrees(30), Angle::degrees(20));
    for (unsigned seed = 301; seed <= 312; ++seed) {
        expectSameLengths(test::framedSticks(seed, 2, 2), view);
    }
}

// Edges on one line count once here, as each side reports different ones of them.
TEST(HiddenLinesReference, FlushFramesWithTenonsInTheirPostsShowTheSameLinesSquareOn) {
    if (!reference::kHiddenLinesAreSound) {
        GTEST_SKIP() << "the kernel's hidden lines are not sound in this build";
    }
    for (unsigned seed = 401; seed <= 412; ++seed) {
        const std::vector<test::Stick> sticks = test::framedSticks(seed, 2, 2);
        for (const View& view : {View::front(), View::side(), View::plan()}) {
            std::vector<ViewEdge> theirs;
            for (const reference::SeenEdge& e : visibleEdges(kernelSolids(sticks), view)) {
                theirs.push_back({e.a, e.b, true, 0, 0});
            }
            const double expected = lengthsOf(mergeCoincident(theirs)).visible;
            const double found =
                lengthsOf(mergeCoincident(hiddenLines(polyhedra(sticks), view))).visible;

            EXPECT_NEAR(found, expected, 1e-3 * expected) << "seed " << seed;
        }
    }
}

}  // namespace
}  // namespace shoulderline
