#include "core/drawing/part_easings.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/body_on_sheet.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/part_sections.h"
#include "core/drawing/part_sizing.h"
#include "core/drawing/sheets.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::partNamed;
using testing::resolved;
using testing::statedPart;

using testing::kMetrics;

Piece railWith(const EasingStatement& easing) {
    Piece piece = testing::twoPostsAndARail();
    statedPart(piece, "rail").easings = {easing};
    return piece;
}

EasingStatement stoppedChamfer() {
    EasingStatement easing;
    easing.at = Arris::BackSideBackEdge;
    easing.size = "3/8 in";
    easing.fromStart = "2 in";
    easing.fromFar = "3 in";
    return easing;
}

ViewSizes sizesSeen(const Piece& piece, Face face) {
    const ResolvedPiece made = resolved(piece);
    const ResolvedPart& rail = partNamed(made, "rail");
    const PartView view = partView(rail, face);
    SizeWriter writer{view, piece, made, rail, nullptr, {SubjectKind::Part, 0}};
    addEasingSizes(writer);
    return std::move(writer.sizes);
}

// The notes hang under the view: a leader to the far edge would cross all the wood.
TEST(PartEasings, ANoteOnAllArrisesPointsAtTheLowestInTheView) {
    EasingStatement easing;
    easing.at = Arris::AroundFaceSide;
    easing.size = "1/8 in";
    const Piece piece = railWith(easing);
    const double width = partNamed(resolved(piece), "rail").width.value.mm();

    const ViewSizes sizes = sizesSeen(piece, Face::FaceSide);

    ASSERT_EQ(sizes.notes.size(), 1U);
    EXPECT_NEAR(sizes.notes.front().target.y, width, Length::inches(0.125).mm());
}

TEST(PartEasings, AStoppedChamferIsNamedAndItsStopsAreDimensionedFromTheStart) {
    const ViewSizes sizes = sizesSeen(railWith(stoppedChamfer()), Face::FaceSide);

    ASSERT_EQ(sizes.notes.size(), 1U);
    const std::vector<std::string> wanted{
        "chamfer 3/8", "back side and back edge", "stopped, run out over 3/8"};
    EXPECT_EQ(sizes.notes.front().lines, wanted);
    ASSERT_EQ(sizes.along.size(), 2U);
    EXPECT_NEAR(sizes.along[0].value, 2 * Length::kMmPerInch, 1e-9);
    EXPECT_NEAR(sizes.along[1].value, 17 * Length::kMmPerInch, 1e-9);
}

TEST(PartEasings, AreToldOnOneFaceOnly) {
    EXPECT_TRUE(sizesSeen(railWith(stoppedChamfer()), Face::BackEdge).notes.empty());
}

TEST(PartEasings, TwoReachesAreBothToldAndARadiusIsCalledOne) {
    const LengthStyle inches = LengthStyle::fractions(16);
    const auto made = [](EasingKind kind, double size, double second) {
        ResolvedEasing easing;
        easing.kind = kind;
        easing.size = Length::inches(size);
        easing.second = Length::inches(second);
        return easing;
    };

    EXPECT_EQ(easingText(made(EasingKind::Chamfer, 0.25, 0.5), inches), "chamfer 1/4 \u00d7 1/2");
    EXPECT_EQ(easingText(made(EasingKind::RoundOver, 0.25, 0.25), inches), "round-over R 1/4");
    EXPECT_EQ(easingText(made(EasingKind::Cove, 0.25, 0.25), inches), "cove R 1/4");
    EXPECT_EQ(easingText(made(EasingKind::Pyramid, 0.75, 0.75), inches), "pyramid 3/4 high");
}

// Of a part cut across, square inches.
double areaAcross(const ResolvedPart& part, double inches) {
    double twice = 0.0;
    for (const std::vector<Vec2>& ring : bodyAcross(part, inches * Length::kMmPerInch)) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            twice += cross(ring[i], ring[(i + 1) % ring.size()]);
        }
    }
    return std::abs(twice) / 2 / (Length::kMmPerInch * Length::kMmPerInch);
}

// Of a section 7/8 x 3 in the chamfer takes one corner of 3/8 in.
TEST(PartEasings, TheSectionHasTheCornerOff) {
    const ResolvedPiece made = resolved(railWith(stoppedChamfer()));
    const ResolvedPart& rail = partNamed(made, "rail");

    EXPECT_NEAR(areaAcross(rail, 1.0), 7.0 / 8 * 3, 1e-6);
    EXPECT_NEAR(areaAcross(rail, 10.0), 7.0 / 8 * 3 - 9.0 / 128, 1e-6);
    EXPECT_NEAR(areaAcross(rail, 19.0), 7.0 / 8 * 3, 1e-6);
}

// Of a cove it is one ring that goes round the hollow, each of its corners at the radius.
TEST(PartEasings, TheSectionOfACoveShowsItsHollow) {
    EasingStatement cove = stoppedChamfer();
    cove.kind = EasingKind::Cove;
    const ResolvedPiece made = resolved(railWith(cove));
    const ResolvedPart& rail = partNamed(made, "rail");
    const std::vector<std::vector<Vec2>> rings = bodyAcross(rail, 10.0 * Length::kMmPerInch);
    ASSERT_EQ(rings.size(), 1U);
    const Vec2 arris = Vec2{7.0 / 8, 3.0} * Length::kMmPerInch;
    const double radius = 3.0 / 8 * Length::kMmPerInch;
    const auto onHollow = std::count_if(rings[0].begin(), rings[0].end(), [&](Vec2 p) {
        return std::abs(norm(p - arris) - radius) < 1e-6;
    });

    EXPECT_EQ(onHollow, easingFacets(radius) + 1);
    EXPECT_NEAR(areaAcross(rail, 10.0), 7.0 / 8 * 3 - M_PI / 4 * 9 / 64, 1e-3);
    EXPECT_NEAR(areaAcross(rail, 1.0), 7.0 / 8 * 3, 1e-6);
}

TEST(PartEasings, TheSheetLettersThemClearOfEverything) {
    const Piece piece = railWith(stoppedChamfer());
    const ResolvedPiece made = resolved(piece);
    const std::vector<PartKind> kinds = partKinds(made);
    const auto rail = std::find_if(
        kinds.begin(), kinds.end(), [](const PartKind& kind) { return kind.name == "rail"; });
    ASSERT_NE(rail, kinds.end());
    for (const Sheet& sheet :
         partSheets(piece, made, *rail, {{297, 210}, 0.0, "", 0, 0}, kMetrics)) {
        EXPECT_EQ(testing::overlapsOn(sheet, kMetrics), std::vector<std::string>{});
    }
}

TEST(BodyOnSheet, IsFoundByTheViewThatShowsIt) {
    const Piece piece = testing::twoPostsAndARail();
    const ResolvedPiece made = resolved(piece);
    const std::vector<PartKind> kinds = partKinds(made);
    const auto kind = std::find_if(
        kinds.begin(), kinds.end(), [](const PartKind& one) { return one.name == "rail"; });
    const Sheet sheet = partDrawing(piece, made, *kind, 0.25, false, kMetrics);
    const ResolvedPart& rail = made.parts[kind->parts.front()];

    const std::optional<Vec2> corner = bodyCornerOn(sheet, rail, Face::FaceSide);

    ASSERT_TRUE(corner);
    const std::vector<DimensionOp> length = testing::dimensionsOf(sheet, "shoulder length");
    ASSERT_FALSE(length.empty());
    EXPECT_NEAR(std::min(length.front().from.x, length.front().to.x), corner->x, 1e-9);
    EXPECT_FALSE(bodyCornerOn(sheet, rail, Face::BackSide));
}

}  // namespace
}  // namespace shoulderline
