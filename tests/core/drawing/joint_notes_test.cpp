#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include <gtest/gtest.h>

#include "core/drawing/joint_drawing.h"
#include "core/drawing/joint_names.h"
#include "core/drawing/joint_sheets.h"
#include "core/drawing/joint_twins.h"
#include "core/drawing/notes.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

// What the maker says of a joint is read where the joint is cut.
namespace shoulderline {
namespace {

using testing::kMetrics;
using testing::resolved;
using testing::sample;

// All words of the sheets, lines one after the other.
std::string wordsOf(const std::vector<Sheet>& sheets) {
    std::string words;
    for (const Sheet& sheet : sheets) {
        for (const Op& op : sheet.ops) {
            if (const auto* text = std::get_if<TextOp>(&op)) {
                const std::size_t from = text->text.find_first_not_of(' ');
                words += from == std::string::npos ? "" : text->text.substr(from) + " ";
            }
        }
    }
    return words;
}

TEST(NoteOnAJoint, StandsOnItsSheet) {
    int seen = 0;
    for (const char* name : {"bed_frame", "armchair", "luggage_stand"}) {
        const Piece piece = sample(name);
        const ResolvedPiece made = resolved(piece);
        SheetFrame frame;
        frame.paper = {210.0, 297.0};
        const std::string words = wordsOf(jointSheets(piece, made, frame, kMetrics));
        for (const JointStatement& stated : piece.joints) {
            if (stated.note.empty() || stated.kind == JointKind::Rests) {
                continue;
            }
            EXPECT_NE(words.find("note: " + stated.note), std::string::npos)
                << name << ": " << stated.note;
            ++seen;
        }
    }
    EXPECT_GT(seen, 5);
}

// The berth's head boards lap by 8 over tongues 9 long; its wedges are wider out of their slots.
TEST(SizesUnderAJointsName, SayWhereWhatHasTwoIsMeasured) {
    const Piece piece = sample("bed_frame");
    SheetFrame frame;
    frame.paper = {297.0, 210.0};
    const std::string words = wordsOf(jointSheets(piece, resolved(piece), frame, kMetrics));

    EXPECT_NE(words.find("tongue length 8 in the groove and 9 from its shoulder"),
              std::string::npos);
    EXPECT_NE(words.find("wedge width 37.5 at the slot's wide end and 42.2 at its own"),
              std::string::npos);
}

TEST(ScrewsInARow, AreHeadedByTheirNumberAndAreOnThePartTheyHoldTo) {
    const Piece piece = sample("bed_frame");
    SheetFrame frame;
    frame.paper = {297.0, 210.0};
    const std::string words = wordsOf(jointSheets(piece, resolved(piece), frame, kMetrics));

    EXPECT_NE(words.find("cleat on side rail make 2, 13 screws each; screwed; "), std::string::npos)
        << words;
}

// The stand's spindles stand under an arch, the outer two higher up in their rail.
TEST(SizesUnderAJointsName, TellADepthFromTheBlankAndWhichOfARowHaveIt) {
    const Piece piece = sample("luggage_stand");
    SheetFrame frame;
    frame.paper = {297.0, 210.0};
    const std::string words = wordsOf(jointSheets(piece, resolved(piece), frame, kMetrics));

    for (const auto& [name, depth] :
         {std::pair{"end spindle 1 and end spindle 4 into end rail", "\u224831/32"},
          std::pair{"end spindle 2 and end spindle 3 into end rail", "\u22481 3/16"}}) {
        const std::size_t at = words.find(name);
        ASSERT_NE(at, std::string::npos) << name;
        const std::string told =
            std::string("mortise ") + depth + " deep from the blank's back edge";
        const std::size_t next = words.find("mortise ", at);
        EXPECT_EQ(words.compare(next, told.size(), told), 0) << words.substr(at, 200);
    }
}

TEST(NoteOnAJoint, IsNotThereWhereNothingIsSaid) {
    const Piece piece = testing::twoPostsAndARail();
    SheetFrame frame;
    frame.paper = {210.0, 297.0};
    const std::string words = wordsOf(jointSheets(piece, resolved(piece), frame, kMetrics));
    EXPECT_EQ(words.find("note:"), std::string::npos);
}

// Slats that follow an arch differ: each of their drawings says which of them it is of, as do those
// of a left and a right leg that are not alike in their set-ups.
TEST(NameOfAJoint, TellsWhichOfASetWhereTheyDiffer) {
    for (const char* name : {"side_chair", "pilot_stool", "table"}) {
        const ResolvedPiece made = resolved(sample(name));
        std::set<std::string> names;
        for (const JointGroup& group : jointGroups(made)) {
            EXPECT_TRUE(names.insert(nameOfGroup(made, group)).second)
                << name << ": " << nameOfGroup(made, group);
        }
        EXPECT_EQ(names.contains("back slat 2 into crest rail"), std::string(name) == "side_chair");
    }
}

// The table's end rails enter front and back legs alike: one drawing, with both names, and of the
// second only what its tools are set to otherwise.
TEST(JointsDrawnAlike, ShareOneDrawing) {
    const Piece piece = sample("table");
    const ResolvedPiece made = resolved(piece);
    const std::vector<JointGroup> all = jointGroups(made);
    const std::vector<JointGroup> once = drawnOnce(piece, made, all, kMetrics);
    std::size_t joints = 0;
    for (const JointGroup& group : once) {
        joints += group.joints.size();
        for (const std::vector<std::size_t>& alike : group.alike) {
            joints += alike.size();
            const ResolvedJoint& a = made.joints[group.joints.front()];
            const ResolvedJoint& b = made.joints[alike.front()];
            EXPECT_EQ(a.tenon.width.value, b.tenon.width.value) << a.name << ", " << b.name;
            EXPECT_EQ(a.mortise.depth.value, b.mortise.depth.value) << a.name << ", " << b.name;
            EXPECT_EQ(a.mortise.fromFace.value, b.mortise.fromFace.value);
        }
    }
    std::size_t cut = 0;
    for (const JointGroup& group : all) {
        cut += group.joints.size();
    }
    EXPECT_EQ(joints, cut) << "none is lost";
    EXPECT_LT(once.size(), all.size());

    SheetFrame frame;
    frame.paper = {210.0, 297.0};
    const std::string words = wordsOf(jointSheets(piece, made, frame, kMetrics));
    EXPECT_NE(words.find("end rail into front leg, into back leg"), std::string::npos);
    EXPECT_NE(words.find("make 4: 2 of each"), std::string::npos) << words;
    EXPECT_NE(words.find("end rail into back leg: the same, but"), std::string::npos);
    EXPECT_NE(words.find("- mortise, back leg: 8 hollow chisel"), std::string::npos);
}

// Common practice: the loop on the face side and the V on the face edge tell which faces the gauge
// bore on; on the picture of a joint as on the part.
TEST(FaceMarksOnAJoint, StandOnBothMembers) {
    const Piece piece = testing::twoPostsAndARail();
    const ResolvedPiece made = resolved(piece);
    const std::size_t joint = jointGroups(made).front().joints.front();
    const JointStyle marked{1.0, {2.5, 7.0, 6.5}, false, true};
    const JointStyle bare{1.0, {2.5, 7.0, 6.5}, false, false};
    const auto count = [&](const JointStyle& style, bool isLoop) {
        int found = 0;
        for (const Op& op : drawJoint(piece, made, joint, style, kMetrics).ops) {
            const auto* stroke = std::get_if<Stroke>(&op);
            found += stroke != nullptr && stroke->role == LineRole::Dimension &&
                             (isLoop ? stroke->points.size() > 20 : stroke->points.size() == 3)
                         ? 1
                         : 0;
        }
        return found;
    };
    EXPECT_GE(count(marked, true), 2) << "a loop on the rail and one on the post";
    EXPECT_GE(count(marked, false), 2) << "a V likewise";
    EXPECT_EQ(count(bare, true), 0);
}

// The plugs sit under a curve: how deep their holes are bored, before it is sawn, and how long the
// plugs are, are two figures, and each is told as what it is, on the joint's sheet as in the list.
TEST(SizesOfAPluggedScrew, UnderACurveAreTheHolesFromTheBlankAndThePlugs) {
    const Piece piece = sample("armchair");
    SheetFrame frame;
    frame.paper = {210.0, 297.0};
    const std::string words = wordsOf(jointSheets(piece, resolved(piece), frame, kMetrics));

    EXPECT_NE(
        words.find("plug hole \u22482 1/4 deep from the blank, plugs up to \u22481 13/16 long"),
        std::string::npos);
    EXPECT_EQ(words.find("plug depth"), std::string::npos);
}

// A maker at the machine has one sheet in hand: the settings stand by the drawing.
TEST(SettingsOfAJoint, StandByItsDrawingWhereASheetHasRoomForBoth) {
    for (const char* name :
         {"armchair", "side_chair", "raked_chair", "pilot_stool", "bench", "table"}) {
        const Piece piece = sample(name);
        SheetFrame frame;
        frame.paper = {210.0, 297.0};
        frame.number = 1;
        for (const Sheet& sheet : jointSheets(piece, resolved(piece), frame, kMetrics)) {
            EXPECT_NE(sheet.title.rfind("set-ups for", 0), 0u) << name << ": " << sheet.title;
            for (const std::string& word : testing::wordsOn(sheet)) {
                EXPECT_EQ(word.find("set-ups on sheet"), std::string::npos) << name << ": " << word;
            }
        }
    }
}

TEST(JointSheets, OfOnePartFollowOneAnother) {
    for (const char* name : {"armchair", "side_chair", "raked_chair", "bench", "bed_frame"}) {
        const Piece piece = sample(name);
        std::set<std::string> done;
        std::string before;
        SheetFrame frame;
        frame.paper = {210.0, 297.0};
        for (const Sheet& sheet : jointSheets(piece, resolved(piece), frame, kMetrics)) {
            if (sheet.title.find(", 1 of ") == std::string::npos &&
                sheet.title.find(" of ", 10) == std::string::npos) {
                continue;  // of a part with one sheet
            }
            const std::string part = sheet.title.substr(0, sheet.title.rfind(", "));
            EXPECT_TRUE(part == before || done.insert(part).second) << name << ": " << sheet.title;
            before = part;
        }
    }
}

// A leader through one hole on the way to another says the same of both.
TEST(NotesOnHoles, InOneLineDownTheViewHaveLeadersThatPassEachOtherBy) {
    const std::vector<Vec2> holes{{50.0, 20.0}, {50.0, 60.0}};
    const std::vector<Op> ops = placeNotes(
        {{holes[0], {"upper hole, 3/4 bit"}, {}}, {holes[1], {"lower hole, 3/4 bit"}, {}}},
        0.0,
        80.0,
        3.5,
        kMetrics);

    for (const Op& op : ops) {
        const auto* leader = std::get_if<Stroke>(&op);
        if (leader == nullptr || norm(leader->points.front() - holes[0]) > 1e-9) {
            continue;
        }
        const Vec2 way = leader->points[1] - leader->points[0];
        const double off = std::abs(cross(way, holes[1] - holes[0])) / norm(way);
        EXPECT_GT(off, 1.0) << "from the lower hole";
    }
}

// The head post of the berth faces the other way than its foot post: marks of the faces would be
// right for one of the two only, and the drawing that stands for both has none.
TEST(DrawingOfTwoJoints, HasMarksOfFacesOnlyWhereTheyAreRightForBoth) {
    const Piece piece = sample("bed_frame");
    const ResolvedPiece berth = resolved(piece);
    int seen = 0;
    for (const JointGroup& group : drawnOnce(piece, berth, jointGroups(berth), kMetrics)) {
        if (nameOfGroup(berth, group) != "side rail into foot post, into head post") {
            continue;
        }
        ++seen;
        const auto marked = [&](std::size_t joint) {
            return drawJoint(piece, berth, joint, {0.5, {2.5, 7.0, 6.5}, false, true}, kMetrics)
                .ops;
        };
        EXPECT_EQ(group.areMarksAlike,
                  marked(group.joints.front()) == marked(group.alike.front().front()));
        EXPECT_FALSE(group.areMarksAlike);
    }
    EXPECT_EQ(seen, 1);
}

}  // namespace
}  // namespace shoulderline
