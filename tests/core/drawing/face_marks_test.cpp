// The joiner's marks on sections and ends, and how what lies askew is set out on a part's sheets.
#include <algorithm>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/part_faces.h"
#include "core/drawing/section_drawing.h"
#include "core/drawing/section_marks.h"
#include "core/drawing/trade_marks.h"
#include "core/drawing/turned_mouth.h"
#include "core/resolve/joint_angles.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

std::vector<std::string> wordsOfKind(const char* sample, const std::string& name) {
    const Piece piece = testing::sample(sample);
    const ResolvedPiece resolved = testing::resolved(piece);
    std::vector<std::string> words;
    for (const PartKind& kind : partKinds(resolved)) {
        if (kind.name == name) {
            for (const Sheet& sheet :
                 partSheets(piece, resolved, kind, {{297, 210}, 0.0, "", 1, 9}, kMetrics)) {
                const std::vector<std::string> more = testing::wordsOn(sheet);
                words.insert(words.end(), more.begin(), more.end());
            }
        }
    }
    return words;
}

bool hasWord(const std::vector<std::string>& words, const std::string& word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

// A rail whose upper edge slopes with the seat: the box around it touches the wood at corners only.
TEST(FaceMarks, OfASkewedSectionStandOnItsOwnLines) {
    const std::vector<std::vector<Vec2>> wood{{{0, 4}, {20, 0}, {20, 60}, {0, 64}}};
    FreeSpace space({Stroke{{{0, 4}, {20, 0}, {20, 60}, {0, 64}, {0, 4}}, LineRole::Visible}},
                    kMetrics);

    const std::vector<Op> marks = faceMarksAcross(wood, true, space, 3.5, kMetrics);

    std::vector<Stroke> strokes;
    for (const Op& op : marks) {
        if (const auto* stroke = std::get_if<Stroke>(&op)) {
            strokes.push_back(*stroke);
        }
    }
    ASSERT_EQ(strokes.size(), 2u);
    const Vec2 point = strokes[0].points[1];  // of the V
    EXPECT_NEAR(point.y, 4.0 - 0.2 * point.x, 1e-9);
    EXPECT_NEAR(point.x, 10.0, 1.0) << "in the middle";
    const Vec2 tail = strokes[1].points[0];  // of the loop
    EXPECT_NEAR(tail.x, 0.0, 1e-9);
    EXPECT_NEAR(tail.y, 34.0, 2.0) << "in the middle";
}

// Of the face side as drawn: the point of the face edge's mark, and the line of the blank's edge.
struct EdgeMark {
    Vec2 point;
    double edge = 0.0;
    double along = 0.0;  // from the start end, millimetres of wood
};
EdgeMark edgeMarkOf(const char* sample, const std::string& name) {
    const Piece piece = testing::sample(sample);
    const ResolvedPiece resolved = testing::resolved(piece);
    EdgeMark found;
    double left = 0.0;
    constexpr double kScale = 0.25;
    for (const PartKind& kind : partKinds(resolved)) {
        if (kind.name != name) {
            continue;
        }
        const Sheet sheet = partDrawing(piece, resolved, kind, kScale, false, kMetrics);
        const std::string body = resolved.parts[kind.parts.front()].name + ", ";
        std::vector<std::string> open;
        bool isFaceSide = false;
        for (const Op& op : sheet.ops) {
            if (const auto* group = std::get_if<BeginGroup>(&op)) {
                open.push_back(group->name);
                const bool isBody = group->name.rfind(body, 0) == 0;
                isFaceSide = isBody ? group->name == body + "face side" : isFaceSide;
            } else if (std::holds_alternative<EndGroup>(op)) {
                open.pop_back();
            } else if (isFaceSide && !open.empty()) {
                if (const auto* wood = std::get_if<Fill>(&op);
                    wood != nullptr && open.back() == body + "face side") {
                    found.edge = wood->points.front().y;
                    left = wood->points.front().x;
                }
                if (const auto* mark = std::get_if<Stroke>(&op);
                    mark != nullptr && open.back() == kFaceEdgeGroup) {
                    found.point = mark->points[1];
                    found.along = (found.point.x - left) / kScale;
                    isFaceSide = false;
                }
            }
        }
    }
    return found;
}

// A block mitred at both ends and a seat of eight sides: what slopes is no edge to gauge from.
TEST(FaceMarks, TheFaceEdgesStandsWhereTheEdgeIsTheBlanksOwn) {
    for (const auto& [sample, name] :
         {std::pair{"armchair", "front corner block"}, std::pair{"pilot_stool", "seat"}}) {
        const EdgeMark mark = edgeMarkOf(sample, name);
        EXPECT_GT(mark.edge, 0.0);
        EXPECT_NEAR(mark.point.y, mark.edge, 1e-6) << name;
    }
}

// The bench's back posts have their face edge chamfered between two stops.
TEST(FaceMarks, StandClearOfAStoppedChamfer) {
    const ResolvedPiece bench = testing::resolved(testing::sample("bench"));
    const ResolvedPart& post = testing::partNamed(bench, "back post, right");
    const auto chamfer =
        std::find_if(post.easings.begin(), post.easings.end(), [](const ResolvedEasing& easing) {
            return easing.at == Arris::FaceSideFaceEdge && easing.from && easing.to;
        });
    ASSERT_NE(chamfer, post.easings.end());

    const EdgeMark mark = edgeMarkOf("bench", "back post");

    EXPECT_TRUE(mark.along < chamfer->from->mm() || mark.along > chamfer->to->mm()) << mark.along;
}

// Both front legs enter the seat abreast, one behind the other under its notes.
TEST(MortiseNotes, OfThePairOfLegsOfAStoolEachIsNamedByItsHand) {
    const std::vector<std::string> words = wordsOfKind("pilot_stool", "seat");

    EXPECT_TRUE(hasWord(words, "front leg, left"));
    EXPECT_TRUE(hasWord(words, "front leg, right"));
    EXPECT_TRUE(hasWord(words, "back leg"));
    EXPECT_FALSE(hasWord(words, "front leg"));
}

// ISO 5456-2, first angle: what is seen from the left stands at the right of the view from the
// front. A cabinet's side is stated in millimetres.
TEST(EndViews, InFirstAngleTheLeftEndServesAndComesFirst) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("chart_cabinet"));
    const ResolvedPart& plinth = resolved.parts[*resolved.findPart("plinth rail")];

    const std::vector<EndToShow> first = endsToShow(plinth, false);
    const std::vector<EndToShow> third = endsToShow(plinth, true);

    ASSERT_EQ(first.size(), 2u);
    EXPECT_EQ(first[0].face, Face::StartEnd);
    EXPECT_TRUE(first[0].hasSection);
    EXPECT_FALSE(first[1].hasSection);
    ASSERT_EQ(third.size(), 2u);
    EXPECT_EQ(third[0].face, Face::FarEnd);
    EXPECT_TRUE(third[0].hasSection);
}

TEST(MortiseNotes, OfALooseTenonNameItAndWhatItGoesInto) {
    EXPECT_TRUE(hasWord(wordsOfKind("chart_cabinet", "plinth rail"), "loose tenon, side"));
}

// The upper back post leans 9.1 degrees in its blank and its slots run along it: a slot 5/16 wide
// for a 1 7/8 tenon would fill a box of 1.9 by 0.6 in.
TEST(MortiseNotes, OfATurnedSlotTellItsMiddleItsOwnSizesAndItsTurn) {
    const std::vector<std::string> words = wordsOfKind("raked_chair", "back post");

    EXPECT_TRUE(hasWord(words, "5/16 \u00d7 1 7/8, turned 9.1\u00b0, 1 in 6.3,"));
    EXPECT_TRUE(hasWord(words, "to the right away from the face edge"));
}

TEST(TurnedMouth, LiesAlongTheLeanOfItsPost) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("raked_chair"));
    const ResolvedPart& post = resolved.parts[*resolved.findPart("back post, right")];
    int turned = 0;
    for (const MortiseSolid& mortise : post.mortises) {
        if (const auto mouth = turnedMouthOf(resolved, post, mortise)) {
            ++turned;
            EXPECT_NEAR(mouth->turn.degrees(), 9.1, 0.05);
            EXPECT_NEAR(mouth->width, 25.4 * 5 / 16, 0.05);
        }
    }
    EXPECT_EQ(turned, 2) << "the crest rail and the lower back rail";
}

// A round tenon 3/4 in thick is made of facets inside the round; what is told is the tenon.
TEST(RoundTenons, AreToldByTheirStatedDiameter) {
    const Piece piece = testing::sample("pilot_stool");
    const ResolvedPiece resolved = testing::resolved(piece);
    int told = 0;
    for (const PartKind& kind : partKinds(resolved)) {
        for (const Sheet& sheet :
             partSheets(piece, resolved, kind, {{297, 210}, 0.0, "", 1, 9}, kMetrics)) {
            for (const DimensionOp& op : testing::dimensionsOf(sheet, "tenon diameter")) {
                ++told;
                EXPECT_EQ(op.text.find("\u2248"), std::string::npos)
                    << kind.name << ": " << op.text;
            }
        }
    }
    EXPECT_GT(told, 0);
}

// The hollow of a bore drawn in section begins at the round of a leg, 1 1/4 in thick.
TEST(RoundParts, HaveTheirBoresDrawnWithinTheWood) {
    const Piece piece = testing::sample("pilot_stool");
    const ResolvedPiece resolved = testing::resolved(piece);
    const std::size_t leg = *resolved.findPart("back leg");
    const SectionPlan plan(resolved, resolved.parts[leg], true);
    int hollows = 0;
    for (const PartSection& section : plan.sections()) {
        if (section.tenonsAt) {
            continue;
        }
        bool isInJoint = false;
        for (const Op& op : sectionOps(section, piece, resolved, leg, 1.0, {}, kMetrics)) {
            if (const auto* group = std::get_if<BeginGroup>(&op)) {
                isInJoint = group->subject.kind == SubjectKind::Joint;
            } else if (const auto* stroke = std::get_if<Stroke>(&op);
                       stroke != nullptr && isInJoint && stroke->role == LineRole::Visible) {
                ++hollows;
                for (const Vec2& p : stroke->points) {
                    constexpr double kRadius = 25.4 * 5 / 8;
                    EXPECT_LT(norm(p - Vec2{kRadius, kRadius}), kRadius + 0.01);
                }
            }
        }
    }
    EXPECT_GT(hollows, 0);
}

// A tongue 6 long at each end of a panel: what is told of the rabbets there is how deep they are,
// not the panel's width.
TEST(CutNotes, ARabbetAcrossAPanelIsNotAsWideAsThePanel) {
    const std::vector<std::string> words = wordsOfKind("chart_cabinet", "upper panel");

    EXPECT_TRUE(hasWord(words, "2 \u00d7 rabbet across, 4 deep"));
    EXPECT_TRUE(std::none_of(words.begin(), words.end(), [](const std::string& word) {
        return word.find("518.5 wide") != std::string::npos;
    }));
}

// tan 4.6 = 1 in 12.4, tan 4.8 = 1 in 11.9: both would be 1 in 12.
TEST(Slopes, AreToldToATenthOfTheRunUpToOneInTwenty) {
    EXPECT_EQ(slopeText(Angle::degrees(4.6)), "4.6\u00b0, 1 in 12.4");
    EXPECT_EQ(slopeText(Angle::degrees(4.8)), "4.8\u00b0, 1 in 11.9");
    EXPECT_EQ(slopeText(Angle::degrees(2.0)), "2\u00b0, 1 in 29");
}

}  // namespace
}  // namespace shoulderline
