#include "core/resolve/bending.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/resolve/bending_text.h"
#include "core/resolve/end_plane.h"
#include "core/resolve/joint_angles.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::partNamed;
using testing::resolved;
using testing::statedPart;

// Two posts 20 in apart and a rail between them, as `bend` has it.
Piece withBend(const Bend& bend, const char* thickness = "3/4 in") {
    Piece piece = testing::twoPostsAndARail();
    statedPart(piece, "rail").thickness = thickness;
    statedPart(piece, "rail").bend = bend;
    return piece;
}

Bend risingBy(const char* rise) {
    Bend bend;
    bend.rise = rise;
    return bend;
}

Bend ofPlies(const char* rise, const char* plies) {
    Bend bend = risingBy(rise);
    bend.plies = plies;
    return bend;
}

// A chord of 20 in that rises 1 in: radius (20^2 / 4 + 1) / 2 = 50.5 in; of four plies the form is
// 15/16 of that, 47.34375 in.
TEST(BentPart, HasTheRadiusOfItsRiseAndTheFormOfItsPlies) {
    const ResolvedPiece piece = resolved(withBend(ofPlies("1 in", "4")));

    EXPECT_TRUE(piece.troubles.empty());
    const ResolvedPart& rail = partNamed(piece, "rail");
    ASSERT_TRUE(rail.bend);
    EXPECT_NEAR(rail.bend->radius.value.inches(), 50.5, 1e-9);
    EXPECT_NEAR(rail.bend->formRadius.value.inches(), 50.5 * 15 / 16, 1e-9);
    EXPECT_NEAR(rail.bend->ply.value.inches(), 0.75 / 4, 1e-9);
    EXPECT_NEAR(rail.bend->alongCurve().mm(),
                rail.bend->formRadius.value.mm() * 16 / 15 * 4 * std::atan(2.0 / 20.0),
                1e-6);
}

TEST(BentPart, ReachesOutOfItsBlankByItsRiseOnTheSideAcrossFromTheHollow) {
    for (const Face hollow : {Face::FaceSide, Face::BackSide}) {
        Bend bend = ofPlies("1 in", "4");
        bend.hollow = hollow;
        const ResolvedPiece piece = resolved(withBend(bend));
        const ResolvedPart& rail = partNamed(piece, "rail");
        ASSERT_TRUE(rail.body.edge);
        const Rect edge = rail.body.edge->bounds();
        const double inch = 25.4;
        // How far the hollow face dips past the blank at the shoulders, by the circle's equation.
        const auto heightOf = [](double radius) { return std::sqrt(radius * radius - 100.0); };
        const double dip = (heightOf(50.5) - heightOf(50.5 - 0.375) - 0.375) * inch;
        if (hollow == Face::FaceSide) {
            EXPECT_NEAR(edge.max.y, 1.75 * inch, 1e-6);
            EXPECT_NEAR(edge.min.y, -dip, 1e-6);
        } else {
            EXPECT_NEAR(edge.min.y, -1.0 * inch, 1e-6);
            EXPECT_NEAR(edge.max.y, 0.75 * inch + dip, 1e-6);
        }
        EXPECT_NEAR(edge.min.x, 0.0, 1e-9);
        EXPECT_NEAR(edge.max.x, 20 * inch, 1e-9);
    }
}

TEST(BentPart, WhatTheMakerFoundOfSpringbackComesFirst) {
    Bend bend = ofPlies("1 in", "4");
    bend.springback = "(26 mm - 25 mm) / (26 mm)";
    const ResolvedPiece piece = resolved(withBend(bend));
    const ResolvedPart& rail = partNamed(piece, "rail");
    ASSERT_TRUE(rail.bend);
    EXPECT_TRUE(rail.bend->isMeasured);
    EXPECT_NEAR(rail.bend->formRadius.value.inches(), 50.5 * 25 / 26, 1e-9);
}

TEST(BentPart, PliesByRuleAreTheFewestThatBendAtEase) {
    const ResolvedPiece piece = resolved(withBend(risingBy("1 in")));
    const ResolvedPart& rail = partNamed(piece, "rail");
    ASSERT_TRUE(rail.bend);
    const double ease = testing::ruleBook()[RuleId::BendPlyComfort].value;
    const int plies = rail.bend->plies;
    EXPECT_GE(rail.bend->formRadius.value / rail.bend->ply.value, ease);
    const int fewer = plies - 1;
    EXPECT_LT(50.5 * (1.0 - 1.0 / (fewer * fewer)) / (0.75 / fewer), ease);
}

TEST(BentPart, ARadiusAndARiseOfTheSameArcGiveTheSameBody) {
    Bend byRadius;
    byRadius.radius = "50 1/2 in";
    byRadius.plies = "4";
    Bend byPoint;
    BowPoint top;
    top.from = Datum::Middle;
    top.rise = "1 in";
    byPoint.through = {top};
    byPoint.plies = "4";
    const double one = volumeAsMade(partNamed(resolved(withBend(ofPlies("1 in", "4"))), "rail"));
    EXPECT_NEAR(volumeAsMade(partNamed(resolved(withBend(byRadius)), "rail")), one, 1e-3);
    EXPECT_NEAR(volumeAsMade(partNamed(resolved(withBend(byPoint)), "rail")), one, 1e-6 * one);
}

TEST(BentPart, WhatCannotBeBentIsTroubleThatSaysWhatCan) {
    const auto troubleOf = [](const Bend& bend) {
        const ResolvedPiece piece = resolved(withBend(bend));
        EXPECT_FALSE(partNamed(piece, "rail").bend);
        return piece.troubles.empty() ? std::string() : piece.troubles.front().message;
    };
    Bend flat;
    flat.radius = "9 in";
    EXPECT_NE(troubleOf(flat).find("a radius of 10"), std::string::npos);
    EXPECT_NE(troubleOf(risingBy("11 in")).find("half the chord, 10"), std::string::npos);
    EXPECT_NE(troubleOf(ofPlies("1 in", "1")).find("2 plies at least"), std::string::npos);
    Bend unlike = ofPlies("1 in", "5");
    unlike.ply = "3/16 in";
    EXPECT_NE(troubleOf(unlike).find("thick"), std::string::npos);
    Bend both = ofPlies("1 in", "4");
    both.radius = "50 in";
    EXPECT_NE(troubleOf(both).find("one of"), std::string::npos);
}

// The circle run on past the shoulder, by its equation: at `past` beyond it lies lower than at the
// shoulder by this much.
TEST(BentPart, ItsBlankRunsOnAlongTheCurvePastTheShoulder) {
    const ResolvedPiece piece = resolved(withBend(ofPlies("1 in", "4")));
    const ResolvedPart& rail = partNamed(piece, "rail");
    ASSERT_TRUE(rail.bend);
    const double radius = 50.5 * 25.4;
    const double half = 0.375 * 25.4;
    const double past = 25.4;
    const double across = 10 * 25.4 + past;
    const auto height = [&](double r) { return std::sqrt(r * r - across * across); };
    const double middle = std::sqrt(radius * radius - 254.0 * 254.0);
    const BlankPastShoulder blank = blankPast(rail, End::Far, past);
    EXPECT_NEAR(blank.off, middle - (height(radius + half) + height(radius - half)) / 2, 1e-6);
    EXPECT_NEAR(blank.thick, height(radius + half) - height(radius - half), 1e-6);
    const BlankPastShoulder other = blankPast(rail, End::Start, past);
    EXPECT_NEAR(other.off, blank.off, 1e-6);
    EXPECT_NEAR(other.thick, blank.thick, 1e-6);
}

Bend cutToItsCurve(const char* rise, const char* plies) {
    Bend bend = ofPlies(rise, plies);
    bend.shoulders = BendShoulders::Curve;
    return bend;
}

// By the circle's equation, inches, chord along x and the bow up: the centre lies 49 1/2 below the
// middle of the chord, the leading corner where the bow face (50 7/8) crosses the chord's end, and
// the shoulder runs from there towards the hollow face (50 1/8) as the radius to the end does.
TEST(BentPart, AShoulderSquareToTheCurveRunsBackFromItsLeadingCorner) {
    for (const Face hollow : {Face::FaceSide, Face::BackSide}) {
        Bend bend = cutToItsCurve("1 in", "4");
        bend.hollow = hollow;
        const ResolvedPiece piece = resolved(withBend(bend));
        EXPECT_TRUE(piece.troubles.empty());
        const ResolvedPart& rail = partNamed(piece, "rail");
        ASSERT_TRUE(rail.bend);

        const double cornerUp = std::sqrt(50.875 * 50.875 - 100.0);  // from the centre's height
        const double along = (10.0 * 10.0 + cornerUp * 49.5) / 50.5;
        const double aside = (cornerUp * 10.0 - 10.0 * 49.5) / 50.5;
        const double run = along - std::sqrt(50.125 * 50.125 - aside * aside);
        const double open = run * 10.0 / 50.5 * 25.4;

        EXPECT_NEAR(openAtShoulder(rail, End::Start), open, 1e-6);
        EXPECT_NEAR(openAtShoulder(rail, End::Far), open, 1e-6);
        // No wood past the chord's ends, and the angle of the end is that of the radius.
        const Box body = rail.frame.outerBounds(rail.bodyBox());
        EXPECT_NEAR(boundsInSpace(rail).size().x, body.size().x, 1e-6);
        EXPECT_NEAR(
            std::abs(endAnglesOf(rail, End::Start).tilt.radians()), std::asin(10.0 / 50.5), 1e-9);
    }
}

// The tenon stays true to the chord and as it was; only its foot follows the shoulder.
TEST(BentPart, ATenonOnACurvedShoulderIsStraightAndItsMortiseUnchanged) {
    const ResolvedPiece square = resolved(withBend(ofPlies("1 in", "4")));
    const ResolvedPiece curved = resolved(withBend(cutToItsCurve("1 in", "4")));
    ASSERT_EQ(curved.joints.size(), square.joints.size());
    for (std::size_t j = 0; j < curved.joints.size(); ++j) {
        EXPECT_EQ(curved.joints[j].tenon, square.joints[j].tenon);
        EXPECT_EQ(curved.joints[j].mortise, square.joints[j].mortise);
    }
    const ResolvedPart& rail = partNamed(curved, "rail");
    const ResolvedPart& before = partNamed(square, "rail");
    ASSERT_EQ(rail.tenons.size(), before.tenons.size());
    EXPECT_EQ(rail.startTenon, before.startTenon);
    EXPECT_EQ(rail.farTenon, before.farTenon);
    for (std::size_t t = 0; t < rail.tenons.size(); ++t) {
        const Box& was = before.tenons[t].box;
        ASSERT_TRUE(rail.tenons[t].exact);
        const End end = was.max.x <= 0.0 ? End::Start : End::Far;
        // A prism between the shoulder's plane and the tenon's end: its mean length times its
        // section, the plane's place in the middle of the section being the mean.
        const Vec3 middle = was.centre();
        const double shoulder = endAt(rail, end, middle.y, middle.z);
        const double length = end == End::Start ? shoulder - was.min.x : was.max.x - shoulder;
        EXPECT_NEAR(rail.tenons[t].exact->volume(), length * was.size().y * was.size().z, 1e-6);
        EXPECT_GT(length, was.size().x);
    }
}

TEST(BentPart, AShoulderThatMeetsALeaningPostFollowsThePost) {
    const auto leaning = [](BendShoulders shoulders) {
        Piece piece = testing::twoPostsAndARail();
        std::get<Stands>(statedPart(piece, "post").relation).splay = "3 deg";
        Bend bend = ofPlies("1 in", "4");
        bend.shoulders = shoulders;
        statedPart(piece, "rail").thickness = "3/4 in";
        statedPart(piece, "rail").bend = bend;
        return resolved(piece);
    };
    const ResolvedPiece curve = leaning(BendShoulders::Curve);
    const ResolvedPiece chord = leaning(BendShoulders::Chord);
    ASSERT_TRUE(partNamed(curve, "rail").bend);
    ASSERT_FALSE(partNamed(chord, "rail").body.planes.empty());
    EXPECT_EQ(partNamed(curve, "rail").body.planes, partNamed(chord, "rail").body.planes);
}

}  // namespace
}  // namespace shoulderline
