#include "core/drawing/part_sections.h"

#include <algorithm>
#include <cmath>
#include <set>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/sheets.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

// A post of 40 x 60, 500 long, with a mortise in its face edge and one in its back side beside it,
// a row of three more on the face edge, and a tenon.
ResolvedPiece postWithMortises() {
    ResolvedPiece resolved;
    ResolvedPart post;
    post.name = post.of = "post";
    post.shoulderLength.value = Length::mm(500.0);
    post.width.value = Length::mm(60.0);
    post.thickness.value = Length::mm(40.0);
    post.body.face = Outline::rectangle(500.0, 60.0);
    post.body.thickness = 40.0;
    ResolvedPart rail;
    rail.name = rail.of = "rail";
    ResolvedPart slat;
    slat.name = slat.of = "slat";
    const auto add = [&](Face face, const Box& box, std::size_t mate) {
        ResolvedJoint joint;
        joint.tenoned = mate;
        resolved.joints.push_back(joint);
        post.mortises.push_back({resolved.joints.size() - 1, face, box, box, false});
    };
    add(Face::FaceEdge, {{100, 0, 10}, {140, 25, 20}}, 1);
    add(Face::BackSide, {{110, 30, 22}, {150, 40, 40}}, 1);
    for (const double at : {300.0, 340.0, 380.0}) {
        add(Face::FaceEdge, {{at, 0, 16}, {at + 20, 12, 24}}, 2);
    }
    resolved.joints.emplace_back();
    post.farTenon = Length::mm(30.0);
    post.tenons.push_back({resolved.joints.size() - 1, {{500, 10, 10}, {530, 50, 30}}});
    resolved.parts = {post, rail, slat};
    return resolved;
}

TEST(SectionPlan, CutsEveryKindOfMortiseOnceAndTheTenons) {
    const ResolvedPiece resolved = postWithMortises();
    const SectionPlan plan(resolved, resolved.parts[0], true);

    ASSERT_EQ(plan.sections().size(), 3u);
    EXPECT_EQ(plan.sections()[0].mortises.size(), 2u) << "two that lie beside one another";
    EXPECT_GT(plan.sections()[0].at, 110.0);
    EXPECT_LT(plan.sections()[0].at, 140.0);
    EXPECT_EQ(plan.letterOf(0, false), "A");
    EXPECT_EQ(plan.letterOf(1, false), "A");
    EXPECT_EQ(plan.letterOf(4, false), "B") << "the third of the row is as the first";
    EXPECT_EQ(plan.letterOf(End::Far), "C");
    EXPECT_EQ(plan.letterOf(End::Start), "");
}

// The cabinet's back stiles: the haunches of the top and bottom rails are as deep as the groove,
// and look like the middle rail's stub; the mortises of those rails are three times as deep. A note
// that named the section of the haunch would have the mortise cut too shallow.
TEST(SectionPlan, AMortiseIsNamedByItsOwnSectionAndNotByThatOfItsHaunch) {
    const ResolvedPiece made = testing::resolved(testing::sample("chart_cabinet"));
    int haunched = 0;
    for (const ResolvedPart& part : made.parts) {
        if (part.of != "back stile") {
            continue;
        }
        const SectionPlan plan(made, part, false);
        for (const MortiseSolid& mortise : part.mortises) {
            const std::string letter = plan.letterOf(mortise.joint, mortise.isHaunch);
            for (const PartSection& section : plan.sections()) {
                if (section.letter != letter) {
                    continue;
                }
                double deepest = 0.0;
                for (const std::size_t m : section.mortises) {
                    deepest = std::max(deepest, part.mortises[m].box.size().y);
                }
                EXPECT_NEAR(deepest, mortise.box.size().y, 1e-6) << part.name << letter;
            }
            haunched += mortise.isHaunch ? 1 : 0;
        }
    }
    EXPECT_EQ(haunched, 4);
}

TEST(SectionPlan, DimensionsWidthPlaceAndDepth) {
    const ResolvedPiece resolved = postWithMortises();
    const SectionPlan plan(resolved, resolved.parts[0], true);
    Piece piece;
    piece.style = LengthStyle::millimetres(1);

    std::multiset<std::string> told;
    for (const SectionSize& s : sizesIn(plan.sections()[0], piece, resolved, resolved.parts[0])) {
        told.insert(s.size.of + " " + s.size.text);
    }

    EXPECT_EQ(told,
              (std::multiset<std::string>{"from face 10",
                                          "from face 30",
                                          "mortise depth 18",
                                          "mortise depth 25",
                                          "mortise width 10",
                                          "mortise width 10"}));
}

std::multiset<std::string> toldInSections(const Piece& piece,
                                          const ResolvedPiece& resolved,
                                          const ResolvedPart& part) {
    const SectionPlan plan(resolved, part, piece.unit == Unit::Inch);
    std::multiset<std::string> told;
    for (const PartSection& section : plan.sections()) {
        for (const SectionSize& s : sizesIn(section, piece, resolved, part)) {
            told.insert(s.size.of + " " + s.size.text);
        }
    }
    return told;
}

// A bore is set out by its middle and made by its bit. The legs of the stool go into its seat with
// a lean, so that a section cuts their bores askew: these are told by their notes.
TEST(SectionPlan, DimensionsABoreByItsMiddleAndItsBit) {
    const Piece piece = testing::sample("pilot_stool");
    const ResolvedPiece resolved = testing::resolved(piece);

    EXPECT_EQ(toldInSections(piece, resolved, testing::partNamed(resolved, "front stretcher")),
              (std::multiset<std::string>{
                  "bore centre 7/16", "bore diameter \u23003/8", "mortise depth 9/16"}));
    for (const std::string& told :
         toldInSections(piece, resolved, testing::partNamed(resolved, "seat"))) {
        EXPECT_EQ(told.rfind("bore centre ", 0), 0u) << told;
    }
    std::vector<std::string> words;
    for (const PartKind& kind : partKinds(resolved)) {
        for (const Sheet& sheet :
             partSheets(piece, resolved, kind, {{297, 210}, 0.0, "", 0, 0}, kMetrics)) {
            const std::vector<std::string> more = testing::wordsOn(sheet);
            words.insert(words.end(), more.begin(), more.end());
        }
    }
    EXPECT_NE(std::find(words.begin(), words.end(), "B\u2013B, blind, 3/4 bit, 7/8 deep along it"),
              words.end());
}

// The area of a section by hand: 40 x 60 less 10 x 25 and 18 x 10.
TEST(SectionPlan, AcrossAPlainPartIsItsWidthByItsThickness) {
    const ResolvedPiece resolved = postWithMortises();
    const std::vector<std::vector<Vec2>> across = bodyAcross(resolved.parts[0], 120.0);
    ASSERT_EQ(across.size(), 1u);
    EXPECT_NEAR(Outline::polygon(across[0]).area(), 40.0 * 60.0, 1e-9);
    EXPECT_TRUE(bodyAcross(resolved.parts[0], 510.0).empty());
}

TEST(PartSheet, HasEverySectionWithItsCuttingPlane) {
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        for (const Vec2 paper : {Vec2{297, 210}, Vec2{420, 297}}) {
            for (const PartKind& kind : partKinds(resolved)) {
                const SectionPlan plan(
                    resolved, resolved.parts[kind.parts.front()], piece.unit == Unit::Inch);
                std::vector<std::string> words;
                for (const Sheet& sheet :
                     partSheets(piece, resolved, kind, {paper, 0.0, "", 0, 0}, kMetrics)) {
                    const std::vector<std::string> more = testing::wordsOn(sheet);
                    words.insert(words.end(), more.begin(), more.end());
                }
                for (const PartSection& section : plan.sections()) {
                    const std::string title = section.letter + "\u2013" + section.letter;
                    EXPECT_TRUE(std::any_of(words.begin(),
                                            words.end(),
                                            [&](const auto& w) {
                                                return w == title ||
                                                       w.rfind(title + ", 1 : ", 0) == 0 ||
                                                       w.find("end") != std::string::npos ||
                                                       w.find(", foot") != std::string::npos ||
                                                       w.find(", top") != std::string::npos;
                                            }))
                        << name << ", " << kind.name << ": " << title;
                    EXPECT_GE(std::count(words.begin(), words.end(), section.letter), 1)
                        << name << ", " << kind.name << ": no cutting plane " << section.letter
                        << " on " << paper.x;
                }
            }
        }
    }
}

}  // namespace
}  // namespace shoulderline
