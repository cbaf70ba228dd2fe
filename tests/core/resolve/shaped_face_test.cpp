#include "core/resolve/shaped_face.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/resolve/end_plane.h"
#include "core/resolve/joint_angles.h"
#include "core/storage/piece_text.h"
#include "tests/support/pieces.h"

// Slats that meet an arched rail: the edge of the upper rail rises 2 in over its 24 in, an arc of
// (24^2 / 4 + 2^2) / (2 x 2) = 37 in. Worked here by the circle's equation.
namespace shoulderline {
namespace {

using testing::findings;
using testing::ofRule;
using testing::partNamed;
using testing::resolved;

constexpr double kRadius = 37.0;
constexpr double kSlat = 3.0;   // width
constexpr double kFree = 10.0;  // between the rails at the posts

// `bow` of the arc: away from the slats is an arch, towards them a bulge.
Piece archedBack(const char* fit, const char* bow, const char* slats = "3") {
    const std::string text = std::string(R"({"format": "shoulderline piece", "version": 1,
"name": "back", "unit": "in", "stocks": [
 {"name": "post stock", "species": "White oak", "thickness": "2 in"},
 {"name": "rail stock", "species": "White oak", "thickness": "1 in"},
 {"name": "slat stock", "species": "White oak", "thickness": "5/8 in"}],
"parts": [
 {"name": "post", "role": "post", "stock": "post stock", "pair": true,
  "relation": {"kind": "stands", "x": {"face": "right", "at": "14 in"},
   "y": {"face": "centre", "at": "0 in"}, "height": "36 in"}},
 {"name": "lower rail", "role": "rail", "stock": "rail stock", "width": "2 in",
  "relation": {"kind": "spans", "from": "post, left", "to": "post, right",
   "level": {"face": "top", "at": "14 in"}, "set": {"from": "centre"}}},
 {"name": "upper rail", "role": "rail", "stock": "rail stock", "width": "5 in",
  "relation": {"kind": "spans", "from": "post, left", "to": "post, right",
   "level": {"face": "bottom", "at": "24 in"}, "set": {"from": "centre"}},
  "shape": {"back edge": [{"in": ")") +
                             (bow[0] == '-' ? "0 in" : "2 in") + R"(", "run": "arc", "bow": ")" +
                             bow + R"("}, {"from": "far", "in": ")" +
                             (bow[0] == '-' ? "0 in" : "2 in") + R"("}]}},
 {"name": "slat", "role": "slat", "stock": "slat stock", "width": "3 in",
  "relation": {"kind": "spans", "from": "lower rail", "to": "upper rail",
   "set": {"from": "centre"}, "on_shaped_faces": ")" +
                             fit + R"("},
  "spacing": {"after": "post, left", "before": "post, right", "count": ")" +
                             slats + R"("}}]})";
    return readPiece(text).value();
}

// How far the arch, highest in the middle, lies above the posts' level at `x` from the middle.
double archAt(double x) {
    return std::sqrt(kRadius * kRadius - x * x) - (kRadius - 2.0);
}

TEST(ShapedFace, AShoulderUnderAnArchRunsWithTheChordUnderTheSlat) {
    const ResolvedPiece piece = resolved(archedBack("follow", "-2 in"));
    ASSERT_TRUE(piece.troubles.empty()) << piece.troubles.front().message;
    // Three slats of 3 in in 24 in: gaps of 3 3/4 in, the outer one's far side 8 1/4 in out.
    const ResolvedPart& outer = partNamed(piece, "slat 1");
    const double out = archAt(8.25);
    const double in = archAt(5.25);
    EXPECT_NEAR(outer.shoulderLength.value.inches(), kFree + in, 1e-3);
    const End top = endPlaneOf(outer.body, End::Far) ? End::Far : End::Start;
    ASSERT_TRUE(endPlaneOf(outer.body, top));
    EXPECT_NEAR(
        std::abs(std::tan(endAnglesOf(outer, top).mitre.radians())), (in - out) / kSlat, 1e-4);
    // The middle one lies square on the lowest of the arch over it, at its two sides.
    const ResolvedPart& middle = partNamed(piece, "slat 2");
    EXPECT_FALSE(endPlaneOf(middle.body, End::Start));
    EXPECT_FALSE(endPlaneOf(middle.body, End::Far));
    EXPECT_NEAR(middle.shoulderLength.value.inches(), kFree + archAt(1.5), 1e-3);
}

TEST(ShapedFace, ALevelledFaceGoesToTheDeepestWoodAndTheShoulderStaysSquare) {
    const ResolvedPiece piece = resolved(archedBack("level", "-2 in"));
    ASSERT_TRUE(piece.troubles.empty()) << piece.troubles.front().message;
    const ResolvedPart& outer = partNamed(piece, "slat 1");
    EXPECT_TRUE(outer.body.planes.empty());
    EXPECT_NEAR(outer.shoulderLength.value.inches(), kFree + archAt(5.25), 1e-3);
    EXPECT_NEAR(partNamed(piece, "slat 2").shoulderLength.value.inches(), kFree + 2.0, 1e-3);
    const ResolvedPart& rail = partNamed(piece, "upper rail");
    ASSERT_EQ(rail.cuts.size(), 3u);
    for (const ResolvedCut& cut : rail.cuts) {
        EXPECT_EQ(cut.kind, CutKind::Notch);
        EXPECT_NEAR(cut.box.size().x, kSlat * testing::kInch, 1e-6);
        EXPECT_NEAR(cut.box.size().z, 1.0 * testing::kInch, 1e-6);
    }
}

// The rail's own edge is shaped 2 in in at its ends: the tenon keeps the usual shoulder from the
// wood that is there.
TEST(ShapedFace, AShoulderIsMeasuredFromTheShapedEdgeThatTheTenonLeavesFrom) {
    Piece stated = archedBack("follow", "2 in");
    const Tenon arched = testing::jointNamed(resolved(stated), "upper rail into post, left").tenon;
    testing::statedPart(stated, "upper rail").shape.clear();
    const Tenon plain = testing::jointNamed(resolved(stated), "upper rail into post, left").tenon;
    EXPECT_NEAR(arched.shoulders.backEdge.value.inches(), 2.0 + 0.25, 1e-6);
    EXPECT_EQ(arched.shoulders.backEdge.reasons.front().rule, RuleId::ClearsShape);
    EXPECT_LT(plain.shoulders.backEdge.value.inches(), 2.0);
    EXPECT_NEAR(
        (arched.shoulders.faceEdge.value + arched.width.value + arched.shoulders.backEdge.value)
            .inches(),
        5.0,
        1e-9);
}

// The mortises are cut in the square blank, before the arch is sawn: the tool goes in square, and
// to tilt it by what the face leans there would have the mortise stand askew to its tenon.
TEST(ShapedFace, AMortiseUnderAnArchIsCutSquareToTheBlank) {
    const ResolvedPiece piece = resolved(archedBack("follow", "-2 in"));
    const ResolvedJoint& joint = testing::jointNamed(piece, "slat 1 into upper rail");
    EXPECT_NEAR(anglesOf(piece, joint).mortise.radians(), 0.0, 1e-12);
    bool isTold = false;
    for (const std::string& line : jointSettings(piece, joint)) {
        EXPECT_EQ(line.find("tilted"), std::string::npos) << line;
        isTold = isTold || line.find("square to the blank") != std::string::npos;
    }
    EXPECT_TRUE(isTold);
}

// No slat runs into its rail, whichever way the edge goes, but its tenons; and each tenon is as
// long behind the face as those on straight rails, near enough.
TEST(ShapedFace, ShouldersTouchTheWoodAndDoNotRunIntoIt) {
    for (const char* fit : {"follow", "level"}) {
        for (const char* bow : {"-2 in", "2 in"}) {
            const Piece stated = archedBack(fit, bow);
            const ResolvedPiece piece = resolved(stated);
            ASSERT_TRUE(piece.troubles.empty()) << piece.troubles.front().message;
            EXPECT_TRUE(ofRule(findings(stated), RuleId::PartsClear).empty()) << fit << bow;
            EXPECT_TRUE(ofRule(findings(stated), RuleId::MouthOnFace).empty()) << fit << bow;
            const ResolvedPart& rail = partNamed(piece, "upper rail");
            for (const MortiseSolid& mortise : rail.mortises) {
                const ResolvedJoint& joint = piece.joints[mortise.joint];
                EXPECT_GT(joint.tenon.length.value.inches(), 0.4) << joint.name;
                EXPECT_NEAR(
                    joint.mortise.depth.value.inches(), joint.tenon.length.value.inches(), 0.15)
                    << joint.name;
            }
        }
    }
}

}  // namespace
}  // namespace shoulderline
