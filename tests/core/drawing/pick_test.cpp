#include "core/drawing/pick.h"

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

constexpr Subject kPart{SubjectKind::Part, 3};
constexpr Subject kJoint{SubjectKind::Joint, 7};

Sheet twoRectangles() {
    Sheet sheet;
    const std::vector<Vec2> large{{0, 0}, {100, 0}, {100, 50}, {0, 50}};
    const std::vector<Vec2> small{{40, 20}, {60, 20}, {60, 30}, {40, 30}};
    sheet.ops = {BeginGroup{kPart, "part"},
                 Fill{large, true},
                 Stroke{{{0, 0}, {100, 0}}, LineRole::Visible},
                 BeginGroup{kJoint, "joint"},
                 Fill{small, true},
                 EndGroup{},
                 EndGroup{}};
    return sheet;
}

TEST(Pick, TheSmallestAreaThatHoldsThePoint) {
    EXPECT_EQ(subjectAt(twoRectangles(), {50, 25}, 1.0), kJoint);
    EXPECT_EQ(subjectAt(twoRectangles(), {10, 25}, 1.0), kPart);
}

TEST(Pick, ALineWithinReachGoesBeforeAreas) {
    EXPECT_EQ(subjectAt(twoRectangles(), {50, -0.5}, 1.0), kPart);
}

TEST(Pick, NothingBesideTheDrawing) {
    EXPECT_EQ(subjectAt(twoRectangles(), {50, 80}, 1.0), std::nullopt);
}

TEST(Pick, WhatBelongsToNothingIsPassedOver) {
    Sheet sheet;
    sheet.ops = {Stroke{{{0, 0}, {10, 0}}, LineRole::Visible},
                 BeginGroup{{}, ""},
                 Fill{{{0, 0}, {9, 0}, {9, 9}}, true},
                 EndGroup{}};

    EXPECT_EQ(subjectAt(sheet, {5, 0}, 1.0), std::nullopt);
}

}  // namespace
}  // namespace shoulderline
