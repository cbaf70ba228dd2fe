// Holes as stated against the solids of Open CASCADE: true cylinders, turned into place by
// rotations and not by the slopes that the program works with.

#include <cmath>

#include <gtest/gtest.h>

#include "tests/reference/solid_geometry/occt_solids.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using reference::Solid;
using reference::SolidPlan;

constexpr double kInch = Length::kMmPerInch;
constexpr double kFarOut = 100.0;  // mm that the cylinder reaches past the wood

// A cylinder about the z axis of `frame`, from z0 up.
Solid cylinder(double radius, double z0, double z1, const Frame& frame) {
    Body body;
    body.face.vertices = {{{radius, 0}, 1.0}, {{-radius, 0}, 1.0}};
    body.thickness = z1 - z0;
    Frame from = frame;
    from.origin = frame.toOuter({0, 0, z0});
    return Solid(SolidPlan{body, from, {}, {}});
}

double takenFromRail(const CutStatement& cut) {
    Piece piece = testing::twoPostsAndARail();
    const double whole = volumeAsMade(testing::partNamed(testing::resolved(piece), "rail"));
    testing::statedPart(piece, "rail").cuts = {cut};
    const ResolvedPiece made = testing::resolved(piece);
    EXPECT_TRUE(made.troubles.empty()) << made.troubles.front().message;
    return whole - volumeAsMade(testing::partNamed(made, "rail"));
}

TEST(TiltedBoreInTheKernel, TakesAsMuchAsATrueCylinderTurnedIntoPlace) {
    const Solid wood(SolidPlan{Box{{0, 0, 0}, {20 * kInch, 3 * kInch, 0.875 * kInch}}, {}, {}, {}});
    struct Case {
        double along;
        double across;
    };
    for (const Case& one : {Case{20, 0}, Case{0, -15}, Case{12, 7}, Case{-30, 25}}) {
        CutStatement bore;
        bore.kind = CutKind::Bore;
        bore.along = "10 in";
        bore.across = "1 1/2 in";
        bore.width = "1/2 in";
        bore.tiltAlong = std::to_string(one.along) + " deg";
        bore.tiltAcross = std::to_string(one.across) + " deg";
        // About y by the view from the edge; then the other way by what is left of the view from
        // the end, whose slope is foreshortened by the first.
        const double first = one.along * M_PI / 180;
        const double second = std::atan(std::tan(one.across * M_PI / 180) * std::cos(first));
        const Frame turned = Frame::turned(
            {10 * kInch, 1.5 * kInch, 0}, Angle::radians(-second), Angle::radians(first), Angle());
        const double theirs =
            reference::common(wood, cylinder(kInch / 4, -kFarOut, kFarOut, turned)).volume();
        // Facets within kArcSagitta inside the circle.
        EXPECT_NEAR(takenFromRail(bore), theirs, theirs * 4 * kArcSagitta / (kInch / 4))
            << one.along << " along, " << one.across << " across";
    }
}

TEST(TiltedBoreInTheKernel, TheWallBetweenTwoOfThemIsTheSame) {
    CutStatement bore;
    bore.kind = CutKind::Bore;
    bore.across = "1 1/2 in";
    bore.width = "1/4 in";
    bore.along = "9 in";
    bore.tiltAlong = "15 deg";
    CutStatement other = bore;
    other.along = "10 in";
    other.tiltAlong = "-10 deg";
    Piece piece = testing::twoPostsAndARail();
    testing::statedPart(piece, "rail").cuts = {bore, other};
    const ResolvedPiece made = testing::resolved(piece);
    const ResolvedPart& rail = testing::partNamed(made, "rail");
    const Box wood = rail.bodyBox();
    const auto inWood = [&](double at, double lean) {
        const Frame frame =
            Frame::turned({at * kInch, 1.5 * kInch, 0}, Angle(), Angle::degrees(lean), Angle());
        return reference::common(Solid(SolidPlan{wood, {}, {}, {}}),
                                 cylinder(kInch / 8, -kFarOut, kFarOut, frame));
    };
    const double theirs = reference::minimumDistance(inWood(9, 15), inWood(10, -10));
    const auto clipped = [&](const ResolvedCut& cut) {
        return *intersection(cut.solid(), ConvexSolid::box(wood));
    };
    EXPECT_NEAR(
        distance(clipped(rail.cuts[0]), clipped(rail.cuts[1])).distance, theirs, 3 * kArcSagitta);
}

}  // namespace
}  // namespace shoulderline
