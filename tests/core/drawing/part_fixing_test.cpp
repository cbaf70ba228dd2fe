#include "core/drawing/part_fixing.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/key_heights.h"
#include "core/drawing/parts_list.h"
#include "core/measure/length_text.h"
#include "core/resolve/frames.h"
#include "core/resolve/screws_needed.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

PartKind kindHeld(const ResolvedPiece& made, const std::string& name) {
    for (PartKind& kind : partKinds(made)) {
        if (made.parts[kind.parts.front()].of == name) {
            return std::move(kind);
        }
    }
    return {};
}

std::vector<std::string> notesOn(const char* sample, const std::string& part) {
    const Piece piece = testing::sample(sample);
    const ResolvedPiece made = testing::resolved(piece);
    return fixingNotes(piece, made, kindHeld(made, part));
}

bool isTold(const std::vector<std::string>& notes, const std::string& note) {
    return std::find(notes.begin(), notes.end(), note) != notes.end();
}

// The clear width between the posts, less the slats, is what the gaps share.
TEST(FixingNotes, ASlatsSheetSaysHowManyThereAreAndHowFarApart) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece made = testing::resolved(piece);
    const double between = boundsInSpace(testing::partNamed(made, "front post, right")).min.x -
                           boundsInSpace(testing::partNamed(made, "front post, left")).max.x;
    const double gap = (between - 13 * Length::inches(1.375).mm()) / 14;

    const std::vector<std::string> notes = notesOn("armchair", "seat slat");

    EXPECT_TRUE(isTold(notes,
                       "13 in all, sharing the room evenly, gaps " +
                           showLength(Length::mm(gap), piece.style) +
                           ", the first and last equally far from the left and the right front "
                           "post, numbered from the left"))
        << ::testing::PrintToString(notes);
    EXPECT_TRUE(isTold(notes, "lies on front cleat and back cleat; fixing not given"));
}

// The bench's slats lie on four bearers, the middle one on the rail halved over these too; the
// first and last end an eighth before the posts, the others an inch more before the rails, which
// are set back in these.
TEST(FixingNotes, ASlatsSheetSaysAllThatItLiesOnAndItsRoomAtTheEnds) {
    const std::vector<std::string> notes = notesOn("bench", "seat slat");

    EXPECT_TRUE(isTold(notes, "lies on each bearer, 1 of 5 on middle rail too; fixing not given"))
        << ::testing::PrintToString(notes);
    EXPECT_TRUE(isTold(notesOn("bed_frame", "slat"), "clear of side rail by 2 at each end"))
        << ::testing::PrintToString(notesOn("bed_frame", "slat"));
    EXPECT_TRUE(
        isTold(notes, "clear of front post and back post by 1/8, of end rail by 1 1/8 at each end"))
        << ::testing::PrintToString(notes);
}

TEST(FixingNotes, TheSlatsOfAPairAreCountedForOneSide) {
    const std::vector<std::string> notes = notesOn("luggage_stand", "end spindle");

    ASSERT_FALSE(notes.empty());
    EXPECT_EQ(notes.front().find("4 a side, "), 0u) << notes.front();
}

// The name of a mate may have a comma of its own.
TEST(FixingNotes, WhatTheEndsGoIntoIsToldEndByEnd) {
    const std::vector<std::string> notes = notesOn("raked_chair", "cross stretcher");
    EXPECT_TRUE(
        isTold(notes, "left end into side stretcher, left; right end into side stretcher, right"))
        << ::testing::PrintToString(notes);
}

// What is glued to another's face does not stand on it.
TEST(FixingNotes, WhatIsGluedIsGluedAgainstItsMate) {
    const std::vector<std::string> notes = notesOn("chart_cabinet", "frame stile");
    EXPECT_TRUE(isTold(notes, "glued against side along its length"))
        << ::testing::PrintToString(notes);
}

TEST(FixingNotes, TheMakersOwnNoteStandsOnThePartsSheet) {
    EXPECT_TRUE(isTold(
        notesOn("side_chair", "seat"),
        "solid, screwed up through the rails, fast at its middle and free to move from there"));
    const Piece piece = testing::sample("side_chair");
    const ResolvedPiece made = testing::resolved(piece);
    std::string words;
    for (const Sheet& sheet : partSheets(
             piece, made, kindHeld(made, "seat"), {{297.0, 210.0}, 0.0, {}}, testing::kMetrics)) {
        for (const std::string& line : testing::wordsOn(sheet)) {
            words += line + "|";
        }
    }
    EXPECT_NE(words.find("solid, screwed up through the rails"), std::string::npos) << words;
}

TEST(FixingNotes, WhatIsScrewedSaysWithWhat) {
    EXPECT_TRUE(isTold(notesOn("armchair", "back arm bracket"),
                       "held to back post by 2 screws No. 6 \u00d7 1 1/4"));
    EXPECT_TRUE(isTold(notesOn("table", "top"), "held through end rail by 6 screws 5 \u00d7 45"));
    EXPECT_TRUE(
        isTold(notesOn("side_chair", "side rail"), "held to seat by 2 screws No. 6 \u00d7 1 3/4"));
}

// Nothing that the sheets say of screws may be found in no list of them.
TEST(FixingNotes, APieceWhoseNotesSpeakOfScrewsNeedsSome) {
    int speaking = 0;
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece made = testing::resolved(piece);
        const std::vector<NeededScrews> screws = screwsNeeded(made, true);
        for (const PartKind& kind : partKinds(made)) {
            const std::vector<std::string> notes = fixingNotes(piece, made, kind);
            const bool speaks = std::any_of(notes.begin(), notes.end(), [](const auto& note) {
                return note.find("screwed") != std::string::npos;
            });
            speaking += speaks ? 1 : 0;
            const bool isHeld = std::any_of(screws.begin(), screws.end(), [&](const auto& one) {
                const std::string& of = made.parts[kind.parts.front()].of;
                return one.through == of || one.into == of;
            });
            EXPECT_TRUE(!speaks || isHeld) << name << ": " << kind.name;
        }
    }
    EXPECT_GE(speaking, 3) << "the seats and the table's top";
}

TEST(FixingNotes, WhatItsViewsShowIsNotSaidAgain) {
    EXPECT_TRUE(notesOn("armchair", "front rail").empty());
}

// Its two rails hold it at the mitred ends; how high it sits between them nothing else tells.
TEST(FixingNotes, ACornerBlocksSheetSaysHowFarUnderTheRailsItSits) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece made = testing::resolved(piece);
    const double under = boundsInSpace(testing::partNamed(made, "front rail")).max.z -
                         boundsInSpace(testing::partNamed(made, "front corner block, left")).max.z;

    const std::vector<std::string> notes = notesOn("armchair", "front corner block");

    EXPECT_GT(under, 0.0);
    EXPECT_TRUE(isTold(
        notes,
        "top " + showLength(Length::mm(under), piece.style) + " below the top of front rail"))
        << ::testing::PrintToString(notes);
    EXPECT_EQ(std::count_if(notes.begin(),
                            notes.end(),
                            [](const std::string& note) {
                                return note.find(" of front rail") != std::string::npos;
                            }),
              1)
        << "and no more, as both rails hold it";
}

TEST(FixingNotes, ABracketsSheetSaysWhereOnThePostItStands) {
    const ResolvedPiece made = testing::resolved(testing::sample("armchair"));
    const Box bracket = boundsInSpace(testing::partNamed(made, "front arm bracket, left"));
    const Box post = boundsInSpace(testing::partNamed(made, "front post, left"));

    EXPECT_NEAR(bracket.centre().y, post.centre().y, 1e-6);
    EXPECT_TRUE(isTold(notesOn("armchair", "front arm bracket"),
                       "midway from front to back on front post"));
}

// Turned about, such a rail would fit as well, and its mortises stand at the wrong places.
TEST(FixingNotes, ARailWhoseEndsDifferSaysWhichEndGoesWhere) {
    EXPECT_TRUE(isTold(notesOn("raked_chair", "side rail"),
                       "front end into front post; back end into back post"))
        << ::testing::PrintToString(notesOn("raked_chair", "side rail"));
}

// The table is 1300 x 650 over its legs, its top 1400 x 720 and in the middle.
TEST(FixingNotes, ATopTellsHowFarItStandsOutPastItsFrame) {
    EXPECT_TRUE(isTold(notesOn("table", "top"),
                       "stands out past them 50 at the left and the right, 35 at the front and the "
                       "back"))
        << ::testing::PrintToString(notesOn("table", "top"));
    for (const auto& [piece, part] :
         {std::pair{"bench", "seat slat"}, std::pair{"pilot_stool", "seat"}}) {
        for (const std::string& note : notesOn(piece, part)) {
            EXPECT_EQ(note.find("stands out past"), std::string::npos) << note;
        }
    }
}

// Kerfs at one end, wedges outside at the other: made to different sizes.
TEST(PartsList, TellsApartTheWedgesOfATenonsTwoEnds) {
    const Piece piece = testing::sample("luggage_stand");
    Sheet list;
    list.ops = partsList(piece, testing::resolved(piece), testing::kMetrics);
    const std::vector<std::string> words = testing::wordsOn(list);

    EXPECT_EQ(std::count(words.begin(), words.end(), "wedge, lower end rail into front post"), 1);
    EXPECT_EQ(std::count(words.begin(), words.end(), "wedge, lower end rail into back post"), 1);
}

// Two cleats, each with a row of its own in the rail behind it, take screws of one size.
TEST(PartsList, HasTheScrewsOfOneSizeInOneRow) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece made = testing::resolved(piece);
    std::size_t holes = 0;
    for (const char* cleat : {"front cleat", "back cleat"}) {
        for (const ResolvedCut& cut : testing::partNamed(made, cleat).cuts) {
            holes += cut.kind == CutKind::Bore ? 1 : 0;
        }
    }

    Sheet list;
    list.ops = partsList(piece, made, testing::kMetrics);
    const std::vector<std::string> words = testing::wordsOn(list);

    const auto row = std::find(words.begin(), words.end(), "screw No. 10");
    ASSERT_NE(row, words.end());
    EXPECT_EQ(*std::next(row), std::to_string(holes));
    EXPECT_EQ(*std::next(row, 2), "1 1/2");
    EXPECT_EQ(std::count(words.begin(), words.end(), "screw No. 10"), 1);
}

const KeyHeight* heightOf(const std::vector<KeyHeight>& heights, const std::string& word) {
    const auto it = std::find_if(heights.begin(), heights.end(), [&](const KeyHeight& height) {
        return height.word == word;
    });
    return it == heights.end() ? nullptr : &*it;
}

std::vector<KeyHeight> heightsOf(const char* sample) {
    const Piece piece = testing::sample(sample);
    return keyHeights(piece, testing::resolved(piece));
}

TEST(KeyHeights, AChairHasItsSeatAndItsArms) {
    const std::vector<KeyHeight> heights = heightsOf("armchair");

    ASSERT_NE(heightOf(heights, "seat"), nullptr);
    ASSERT_NE(heightOf(heights, "arm"), nullptr);
    EXPECT_NEAR(heightOf(heights, "seat")->at, Length::inches(16.75).mm(), 1e-6);
    EXPECT_NEAR(heightOf(heights, "arm")->at, Length::inches(23.25).mm(), 1e-6);
}

TEST(KeyHeights, ACabinetHasItsShelves) {
    const std::vector<KeyHeight> heights = heightsOf("chart_cabinet");
    const ResolvedPiece made = testing::resolved(testing::sample("chart_cabinet"));

    for (const char* shelf : {"shelf", "top shelf", "bottom shelf"}) {
        ASSERT_NE(heightOf(heights, shelf), nullptr) << shelf;
        EXPECT_NEAR(heightOf(heights, shelf)->at,
                    boundsInSpace(testing::partNamed(made, shelf)).max.z,
                    1e-6);
    }
}

TEST(KeyHeights, EverySampleThatIsSatOnHasItsSeatOnTheElevation) {
    for (const char* name : {"armchair", "side_chair", "raked_chair", "pilot_stool", "bench"}) {
        const Piece piece = testing::sample(name);
        const Sheet sheet = pieceSheet(
            piece, testing::resolved(piece), {{420.0, 297.0}, 0.0, {}}, testing::kMetrics);
        EXPECT_TRUE(std::any_of(sheet.ops.begin(), sheet.ops.end(), [](const Op& op) {
            const auto* size = std::get_if<DimensionOp>(&op);
            return size != nullptr && size->text.rfind("seat ", 0) == 0;
        })) << name;
    }
}

}  // namespace
}  // namespace shoulderline
