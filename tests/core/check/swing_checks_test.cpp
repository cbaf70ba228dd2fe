#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

// Backs that swing: what is found of them, on the sample armchair and on it with one thing changed.
namespace shoulderline {
namespace {

using testing::findings;
using testing::ofRule;
using testing::resolved;

Swing& swingOf(Piece& piece) {
    return *std::find_if(piece.assemblies.begin(), piece.assemblies.end(), [](const Assembly& a) {
                return a.swing.has_value();
            })->swing;
}

TEST(SwingChecks, TheArmchairSwingsFree) {
    for (const Finding& finding : findings(testing::sample("armchair"))) {
        EXPECT_EQ(finding.severity, Severity::Note) << finding.message;
    }
}

// The bar without its hollow stands in the way of the lowest slat; how much they would share is
// told, and at which station.
TEST(SwingChecks, ABarThatSlatsBulgeIntoIsFoundAtTheirStation) {
    Piece piece = testing::sample("armchair");
    testing::statedPart(piece, "rest bar").shape.clear();

    const std::vector<Finding> found = ofRule(findings(piece), RuleId::SwingClear);

    ASSERT_FALSE(found.empty());
    EXPECT_NE(found[0].message.find("station 'upright'"), std::string::npos) << found[0].message;
    EXPECT_NEAR(found[0].value, 12.0, 1e-9);
}

// Slats bent to 2 in: the second one's bulge only grazes the bar when the back is down.
TEST(SwingChecks, AGrazeIsToldInCubicMillimetres) {
    Piece piece = testing::sample("armchair");
    testing::statedPart(piece, "back slat").bend->rise = "2 in";

    const std::vector<Finding> found = ofRule(findings(piece), RuleId::SwingClear);

    const auto grazes = [](const Finding& finding) {
        return finding.message.find(" mm\u00b3") != std::string::npos;
    };
    EXPECT_TRUE(std::any_of(found.begin(), found.end(), grazes));
    for (const Finding& finding : found) {
        EXPECT_EQ(finding.message.find("share 0 "), std::string::npos) << finding.message;
    }
}

// A thin stick across the chair that only the crest rail meets, at about 10 degrees: neither of the
// stations, nor a lean half way or a quarter between them, touches it.
TEST(SwingChecks, WhatIsHitOnlyOnTheWayIsFoundToo) {
    Piece piece = testing::sample("armchair");
    swingOf(piece).stations = {{"forward", "", "2 deg", {}}, {"resting", "", "25 deg", {}}};
    swingOf(piece).at = "resting";
    Part bar = testing::statedPart(piece, "cross stretcher");
    bar.name = "stick";
    Free free;
    const double up = 21.5;  // in the middle of the crest rail, in inches from the pivot
    const double lean = 10.6 * std::acos(-1.0) / 180.0;
    free.x = "-4 in";
    free.y = "pivot depth + " + std::to_string(up * std::sin(lean)) + " in";
    free.z = "pivot height + " + std::to_string(up * std::cos(lean)) + " in";
    free.length = "8 in";
    bar.width = "1/8 in";
    bar.thickness = "1/8 in";
    bar.relation = free;
    piece.parts.push_back(bar);

    const std::vector<Finding> found = ofRule(findings(piece), RuleId::SwingClear);

    ASSERT_EQ(found.size(), 1u);
    EXPECT_NE(found[0].message.find("on the way to station 'resting'"), std::string::npos)
        << found[0].message;
}

// Stiles are 1 3/8 in from the posts on either side.
TEST(SwingChecks, ASpacerThickerThanItsRoomIsFound) {
    Piece piece = testing::sample("armchair");
    swingOf(piece).spacer = "1 1/2 in";

    const std::vector<Finding> found = ofRule(findings(piece), RuleId::SwingSpacer);

    ASSERT_EQ(found.size(), 1u);
    EXPECT_NEAR(found[0].value, 1.375 * 25.4, 1e-6);
    EXPECT_NEAR(found[0].limit, 1.5 * 25.4, 1e-6);

    swingOf(piece).spacer = "1 3/8 in";
    EXPECT_TRUE(ofRule(findings(piece), RuleId::SwingSpacer).empty());
}

// Arms reach from 10 1/4 in to 14 3/4 in from the middle; a bar that ends 1/4 in past their inner
// edges bears 1/4 in.
TEST(SwingChecks, ABarThatBarelyLiesOnTheArmsIsFound) {
    Piece piece = testing::sample("armchair");
    auto& overhang = std::get<Caps>(testing::statedPart(piece, "rest bar").relation).overhang;
    overhang[Side::Left] = "-4 1/4 in";
    overhang[Side::Right] = "-4 1/4 in";

    const std::vector<Finding> found = ofRule(findings(piece), RuleId::SwingBearing);

    ASSERT_EQ(found.size(), 1u);
    EXPECT_NEAR(found[0].value, 0.25 * 25.4, 1e-6);
}

TEST(SwingChecks, AStationOutOfReachIsAFinding) {
    Piece piece = testing::sample("armchair");
    swingOf(piece).stations.push_back({"lying", "60 in", "", {}});

    const std::vector<Finding> found = ofRule(findings(piece), RuleId::SwingReach);

    ASSERT_FALSE(found.empty());
    EXPECT_NE(found[0].message.find("nearest"), std::string::npos);
}

}  // namespace
}  // namespace shoulderline
