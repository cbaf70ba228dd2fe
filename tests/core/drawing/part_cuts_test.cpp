#include <algorithm>

#include <gtest/gtest.h>

#include "core/drawing/part_cut_sizes.h"
#include "core/drawing/part_faces.h"
#include "core/drawing/part_sizing.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::partNamed;
using testing::resolved;
using testing::statedPart;

ViewSizes sizesSeen(const ResolvedPart& part, Face face, const Piece& piece) {
    const PartView view = partView(part, face);
    const ResolvedPiece made;
    SizeWriter writer{view, piece, made, part, nullptr, {SubjectKind::Part, 0}};
    addCutSizes(writer);
    return std::move(writer.sizes);
}

bool says(const ViewSizes& sizes, const std::string& text) {
    return std::any_of(sizes.notes.begin(), sizes.notes.end(), [&](const NeededNote& note) {
        return std::find(note.lines.begin(), note.lines.end(), text) != note.lines.end();
    });
}

TEST(PartCuts, ABoreIsSetOutByItsCentre) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece made = resolved(piece);
    const ResolvedPart& stile = partNamed(made, "back stile, right");
    const ViewSizes sizes = sizesSeen(stile, Face::BackEdge, piece);

    ASSERT_EQ(sizes.along.size(), 1u);
    EXPECT_NEAR(sizes.along[0].value, 1.25 * Length::kMmPerInch, 1e-9);
    EXPECT_TRUE(says(sizes, "pivot pin"));
    EXPECT_TRUE(says(sizes, "centre 1/2 from face side"));
    const std::vector<Face> faces = facesToShow(stile, true);
    EXPECT_EQ(std::find(faces.begin(), faces.end(), Face::FaceEdge), faces.end())
        << "through, and told on the edge that is shown anyway";
}

TEST(PartCuts, AGrooveTellsItsSectionItsPlaceAndWhereItStops) {
    const Piece piece = testing::sample("chart_cabinet");
    const ResolvedPiece made = resolved(piece);
    const ViewSizes sizes = sizesSeen(partNamed(made, "frame stile, right"), Face::FaceEdge, piece);

    ASSERT_EQ(sizes.along.size(), 2u);
    EXPECT_NEAR(sizes.along[0].value, 64, 1e-9) << "from the end";
    EXPECT_NEAR(sizes.along[1].value, 400, 1e-9) << "its length";
    EXPECT_TRUE(says(sizes, "groove 8 wide, 10 deep"));
    EXPECT_TRUE(says(sizes, "8 from face side"));
}

TEST(PartCuts, AlikeHolesAreToldOnceWithTheirNumber) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece made = resolved(piece);
    const ResolvedPart& cleat = partNamed(made, "front cleat");
    const ViewSizes sizes = sizesSeen(cleat, Face::FaceSide, piece);

    EXPECT_EQ(sizes.notes.size(), 1u);
    EXPECT_EQ(sizes.notes.front().lines.at(1).rfind("4 × bore", 0), 0u);
    EXPECT_EQ(sizes.along.size(), 4u) << "each has its place";
}

TEST(PartCuts, PegMortisesAreSetOutByTheirMiddlesAndTellTheirPegs) {
    const Piece piece = testing::sample("bench");
    const ResolvedPiece made = resolved(piece);
    const ResolvedPart& post = partNamed(made, "front post, left");
    const ViewSizes sizes = sizesSeen(post, Face::FaceEdge, piece);

    ASSERT_EQ(sizes.along.size(), 2u);
    EXPECT_NEAR(sizes.along[0].value, (17.5 - 1.375) * Length::kMmPerInch, 1e-9);
    EXPECT_NEAR(sizes.along[1].value, (17.5 - 2.625) * Length::kMmPerInch, 1e-9);
    ASSERT_EQ(sizes.notes.size(), 1u);
    const std::vector<std::string> wanted{"2 \u00d7 peg mortise 1/4 square, 1 1/4 deep",
                                          "peg stands 1/16 proud",
                                          "cut with the joint together, tenon too",
                                          "centre 1 7/8 from face side"};
    EXPECT_EQ(sizes.notes.front().lines, wanted);
}

TEST(PartCuts, AFaceWithBlindHolesIsShown) {
    const ResolvedPiece made = resolved(testing::sample("armchair"));
    const std::vector<Face> faces = facesToShow(partNamed(made, "front rail"), true);

    EXPECT_NE(std::find(faces.begin(), faces.end(), Face::BackSide), faces.end())
        << "pilot holes for the cleat's screws";
}

// tan 20 degrees is 1 in 2.75, tan 10 degrees 1 in 5.67.
TEST(PartCuts, ATiltedBoreIsSetOutByItsMouthWithBothItsAngles) {
    const Piece piece = testing::sample("table");
    const ResolvedPiece made = resolved(piece);
    const ViewSizes sizes = sizesSeen(partNamed(made, "top"), Face::FaceSide, piece);

    ASSERT_EQ(sizes.along.size(), 1u);
    EXPECT_NEAR(sizes.along[0].value, 1400 - 180, 1e-9);
    EXPECT_TRUE(says(sizes, "bore \u230010, 16 deep along it"));
    EXPECT_TRUE(says(sizes,
                     "leans 20\u00b0, 1 in 2.7, towards the right end and 10\u00b0, 1 in 5.7, away "
                     "from the face edge"));
    EXPECT_TRUE(says(sizes, "centre 90 from face edge"));
}

TEST(PartCuts, AScrewHoleTellsItsSlotAndItsCounterbore) {
    const Piece piece = testing::sample("table");
    const ResolvedPiece made = resolved(piece);
    const ViewSizes sizes = sizesSeen(partNamed(made, "end rail, right"), Face::BackEdge, piece);

    EXPECT_TRUE(says(sizes, "screw hole \u23005, through"));
    EXPECT_TRUE(says(sizes, "counterbore \u230010, 66 deep"));
    const bool tellsSlots =
        std::any_of(sizes.notes.begin(), sizes.notes.end(), [](const NeededNote& note) {
            return std::any_of(note.lines.begin(), note.lines.end(), [](const std::string& line) {
                return line.rfind("2 \u00d7 slot 5 \u00d7 ", 0) == 0;
            });
        });
    EXPECT_TRUE(tellsSlots);
    // The slot is 9.5 long and 5 wide; the wider hole is as much longer than wide.
    EXPECT_TRUE(says(sizes, "counterbore 10 \u00d7 14.5, 66 deep"));
}

// The chair's front rail is hollowed 1/2 in below its middle, where its screw goes up: the head is
// sunk 1 1/4 in from the straight edge of the blank.
TEST(PartCuts, AHoleInAHollowedEdgeIsToldAsBoredBeforeItIsShaped) {
    const Piece chair = testing::sample("side_chair");
    const ResolvedPiece made = resolved(chair);
    const std::string before = "before the blank is shaped";

    const ViewSizes hollowed = sizesSeen(partNamed(made, "front rail"), Face::BackEdge, chair);
    const ViewSizes straight =
        sizesSeen(partNamed(made, "side rail, right"), Face::BackEdge, chair);

    EXPECT_TRUE(says(hollowed, "counterbore \u23005/16, 1 1/4 deep"));
    EXPECT_TRUE(says(hollowed, before));
    EXPECT_FALSE(says(straight, before));
}

TEST(PartCuts, WhatABoreTookOutOfTheWasteIsNotDrawn) {
    const ResolvedPiece made = resolved(testing::sample("side_chair"));
    const ResolvedPart& rail = partNamed(made, "front rail");
    const double middle = rail.shoulderLength.value.mm() / 2;
    const double hollow = (2.5 - 0.5) * Length::kMmPerInch;

    double lowest = 0.0;
    for (const PartLine& line : linesOf(rail, partView(rail, Face::FaceSide))) {
        if (!line.isVisible && std::abs(line.a.x - middle) < 5.0) {
            lowest = std::max({lowest, line.a.y, line.b.y});
        }
    }

    EXPECT_NEAR(lowest, hollow, 0.1) << "the hole is drawn down to the hollow, and no further";
}

// Peg holes in a tenon lie past the shoulder, where the rail's body has ended.
TEST(PartCuts, HolesInTheTenonsOfAShapedPartAreDrawn) {
    Piece piece = testing::sample("side_chair");
    for (JointStatement& joint : piece.joints) {
        if (joint.tenoned == "front rail") {
            joint.features = {JointFeature::Drawbored};
        }
    }
    const ResolvedPiece made = resolved(piece);
    const ResolvedPart& rail = partNamed(made, "front rail");
    const auto holes = std::count_if(rail.cuts.begin(), rail.cuts.end(), [](const auto& cut) {
        return cut.kind == CutKind::Bore && cut.box.max.x < 0.0;
    });
    ASSERT_GE(holes, 1);

    const std::vector<PartLine> lines = linesOf(rail, partView(rail, Face::FaceEdge));

    EXPECT_GE(std::count_if(lines.begin(),
                            lines.end(),
                            [](const PartLine& line) {
                                return !line.isVisible && line.a.x < 0.0 && line.b.x < 0.0 &&
                                       std::abs(line.a.x - line.b.x) < 1e-9;
                            }),
              2 * holes)
        << "both sides of each";
}

}  // namespace
}  // namespace shoulderline
