#include <cmath>

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::partNamed;
using testing::resolved;
using testing::statedPart;
using testing::twoPostsAndARail;

using testing::kInch;

ResolvedPart rail(const Shape& shape, const std::vector<CutStatement>& cuts = {}) {
    Piece piece = twoPostsAndARail();
    statedPart(piece, "rail").shape = shape;
    statedPart(piece, "rail").cuts = cuts;
    const ResolvedPiece made = resolved(piece);
    EXPECT_TRUE(made.troubles.empty()) << made.troubles.front().message;
    return partNamed(made, "rail");
}

TEST(Shaping, AStraightPartIsItsBlank) {
    EXPECT_TRUE(rail({}).body.isBox());
}

// A trapezoid: half the sum of both ends times the length, 20 in here.
TEST(Shaping, ATaperTakesAWedgeOffOneEdge) {
    const ResolvedPart part = rail({{Face::BackEdge,
                                     {{Datum::Start, "", "0", Run::Line, "", {}},
                                      {Datum::Far, "", "1 in", Run::Line, "", {}}}}});

    EXPECT_NEAR(part.body.face.area(), (3.0 + 2.0) / 2 * 20 * kInch * kInch, 1e-6);
}

TEST(Shaping, ATaperMayStopShortAndRunsStraightOnFromThere) {
    const ResolvedPart part = rail({{Face::BackEdge,
                                     {{Datum::Start, "5 in", "0", Run::Line, "", {}},
                                      {Datum::Start, "15 in", "1 in", Run::Line, "", {}}}}});

    EXPECT_NEAR(part.body.face.area(), (3.0 * 5 + 2.5 * 10 + 2.0 * 5) * kInch * kInch, 1e-6);
}

// Area between an arc and its chord: R^2 (a - sin a) / 2 with R = (c^2 / 4 + h^2) / 2h and
// sin(a / 2) = c / 2R (circular segment, common geometry).
TEST(Shaping, AnArchedLowerEdgeTakesACircularSegment) {
    const ResolvedPart part = rail({{Face::BackEdge,
                                     {{Datum::Start, "3 in", "", Run::Arc, "-1 in", {}},
                                      {Datum::Far, "3 in", "", Run::Line, "", {}}}}});
    const double chord = 14;
    const double radius = (chord * chord / 4 + 1) / 2;
    const double angle = 2 * std::asin(chord / 2 / radius);
    const double segment = radius * radius * (angle - std::sin(angle)) / 2;

    EXPECT_NEAR(part.body.face.area(), (60 - segment) * kInch * kInch, 1e-6);
    EXPECT_TRUE(part.body.face.contains({10 * kInch, 1.99 * kInch}));
    EXPECT_FALSE(part.body.face.contains({10 * kInch, 2.01 * kInch}));
}

TEST(Shaping, ARoundedEndIsAHalfCircle) {
    const ResolvedPart part = rail({{Face::FarEnd,
                                     {{Datum::Start, "", "1 1/2 in", Run::Arc, "1 1/2 in", {}},
                                      {Datum::Far, "", "1 1/2 in", Run::Line, "", {}}}}});

    EXPECT_NEAR(part.body.face.area(), (18.5 * 3 + M_PI * 1.5 * 1.5 / 2) * kInch * kInch, 1e-6);
    EXPECT_EQ(part.body.face.vertices.size(), 4U) << "the edges end where the round begins";
}

TEST(Shaping, ACurveRunsThroughItsPointsOnBothEdgesAlike) {
    const ShapedEdge wave{{Datum::Start, "", "0", Run::Curve, "", {}},
                          {Datum::Start, "6 in", "3/4 in", Run::Curve, "", {}},
                          {Datum::Start, "14 in", "1/4 in", Run::Curve, "", {}},
                          {Datum::Far, "", "1/2 in", Run::Line, "", {}}};
    const double low = rail({{Face::FaceEdge, wave}}).body.face.area();
    const double high = rail({{Face::BackEdge, wave}}).body.face.area();

    EXPECT_NEAR(low, high, 1e-6);
    const ResolvedPart part = rail({{Face::FaceEdge, wave}});
    EXPECT_TRUE(part.body.face.contains({6 * kInch, 0.7501 * kInch}));
    EXPECT_FALSE(part.body.face.contains({6 * kInch, 0.7499 * kInch}));
}

TEST(Shaping, TapersInBothElevationsMakeATwoWayTaper) {
    const ShapedEdge taper{{Datum::Start, "", "1/4 in", Run::Line, "", {}},
                           {Datum::Start, "12 in", "", Run::Line, "", {}}};
    const ResolvedPart part = rail({{Face::BackEdge, taper}, {Face::BackSide, taper}});
    // Prismatoid formula: h / 6 (A + 4 M + B), then the straight rest.
    const double foot = 2.75 * 0.625;
    const double middle = 2.875 * 0.75;
    const double top = 3 * 0.875;

    ASSERT_TRUE(part.body.edge);
    EXPECT_NEAR(part.body.volume().value(),
                (12.0 / 6 * (foot + 4 * middle + top) + 8 * top) * std::pow(kInch, 3),
                1e-3);
}

TEST(Shaping, AnOutlineThatCrossesItselfIsToldAndTheBlankKept) {
    Piece piece = twoPostsAndARail();
    statedPart(piece, "rail").shape = {{Face::BackEdge,
                                        {{Datum::Start, "", "4 in", Run::Line, "", {}},
                                         {Datum::Far, "", "0", Run::Line, "", {}}}}};
    const ResolvedPiece made = resolved(piece);

    ASSERT_EQ(made.troubles.size(), 1U);
    EXPECT_NE(made.troubles.front().message.find("shape"), std::string::npos);
    EXPECT_NE(made.troubles.front().message.find(
                  "Point 1 of the back edge can be set in by up to 2 15/16"),
              std::string::npos)
        << made.troubles.front().message;
    EXPECT_TRUE(partNamed(made, "rail").body.isBox());
}

TEST(Cuts, ARabbetTakesItsSectionOffTheWholeLength) {
    CutStatement rabbet;
    rabbet.kind = CutKind::Rabbet;
    rabbet.width = "3/4 in";
    rabbet.depth = "3/8 in";
    const ResolvedPart with = rail({}, {rabbet});

    EXPECT_NEAR(
        volumeAsMade(rail({})) - volumeAsMade(with), 20 * 0.75 * 0.375 * std::pow(kInch, 3), 1e-6);
}

TEST(Cuts, ABoreIsPlacedByItsCentre) {
    CutStatement bore;
    bore.kind = CutKind::Bore;
    bore.alongFrom = Datum::Far;
    bore.along = "4 in";
    bore.acrossFrom = Datum::Middle;
    bore.width = "1/2 in";
    const ResolvedPart part = rail({}, {bore});

    ASSERT_EQ(part.cuts.size(), 1U);
    EXPECT_TRUE(part.cuts.front().isThrough);
    EXPECT_NEAR(part.cuts.front().box.centre().x, 16 * kInch, 1e-9);
    EXPECT_NEAR(part.cuts.front().box.centre().y, 1.5 * kInch, 1e-9);
    // A cylinder: pi d^2 / 4 times its length, within its facets.
    EXPECT_NEAR(part.cuts.front().solid().volume() / std::pow(kInch, 3), M_PI / 16 * 0.875, 0.002);
}

TEST(Cuts, AStoppedGrooveOnAnEdgeIsMeasuredFromTheFaceSide) {
    CutStatement groove;
    groove.face = Face::FaceEdge;
    groove.along = "2 in";
    groove.length = "16 in";
    groove.across = "1/4 in";
    groove.width = "1/4 in";
    groove.depth = "3/8 in";
    const Box box = rail({}, {groove}).cuts.front().box;

    EXPECT_NEAR(box.min.x, 2 * kInch, 1e-9);
    EXPECT_NEAR(box.max.x, 18 * kInch, 1e-9);
    EXPECT_NEAR(box.min.z, 0.25 * kInch, 1e-9);
    EXPECT_NEAR(box.max.z, 0.5 * kInch, 1e-9);
    EXPECT_NEAR(box.max.y, 0.375 * kInch, 1e-9);
}

TEST(Cuts, ACutOutsideTheWoodIsTold) {
    Piece piece = twoPostsAndARail();
    CutStatement bore;
    bore.kind = CutKind::Bore;
    bore.along = "30 in";
    bore.width = "1/2 in";
    statedPart(piece, "rail").cuts = {bore};

    EXPECT_EQ(resolved(piece).troubles.size(), 1U);
}

}  // namespace
}  // namespace shoulderline
