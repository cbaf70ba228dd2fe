#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <random>

#include <gtest/gtest.h>

#include "core/storage/piece_text.h"
#include "tests/ui/ui_test_support.h"

namespace shoulderline {
namespace {

using namespace Qt::Literals::StringLiterals;

class DocumentTest : public ::testing::Test {
  protected:
    DocumentTest() : document_(testing::resources()) {
        document_.start(testing::sample("armchair"), {});
    }
    [[nodiscard]] std::string written() const { return writePiece(document_.piece()); }
    Document document_;
};

// One change of every kind, and all of them at random.
std::vector<Edit> someEdits(const Piece& piece) {
    Stock stock = piece.stocks.front();
    stock.measuredThickness = "2.11 in";
    Part part = piece.parts[2];
    part.width = "4 1/4 in";
    Part renamed = piece.parts[3];
    renamed.name = "bottom side rail";
    JointStatement joint;
    joint.tenoned = "front rail";
    joint.mortised = "front post";
    joint.note = "fit by hand";
    return {SetMeasure{"rail thickness", "1 1/8 in"},
            SetMeasure{"foot gap", "1 in"},
            RenameMeasure{"arm width", "width of arm"},
            SetMeasureNote{"seat height", "without cushion"},
            RemoveMeasure{"slat width"},
            SetStock{stock},
            RemoveStock{"slat stock"},
            SetPart{part.name, part},
            SetPart{piece.parts[3].name, renamed},
            RemovePart{"side slat"},
            SetJoint{joint},
            SetJointSize{"side rail, upper",
                         "front post",
                         SizeName::TenonLength,
                         {SizeState::Stated, "1 1/4 in"}},
            SetJointKind{"front rail", "front post", JointKind::Through},
            SetHouseRule{"tenon.thickness.share", "0.4"},
            SetStyle{LengthStyle::millimetres(1)},
            SetPieceName{"Pilot's chair"}};
}

TEST_F(DocumentTest, EveryKindOfChangeIsTakenBackToTheByte) {
    const std::string before = written();
    for (const Edit& edit : someEdits(document_.piece())) {
        ASSERT_TRUE(document_.apply(edit)) << nameOf(edit);
        ASSERT_NE(written(), before) << nameOf(edit);

        document_.undoStack().undo();

        EXPECT_EQ(written(), before) << nameOf(edit);
    }
}

TEST_F(DocumentTest, UndoAllAndRedoAllGiveTheSameBytes) {
    std::mt19937 random(20261124);
    const std::string before = written();
    const std::vector<Edit> edits = someEdits(document_.piece());
    for (int i = 0; i < 60; ++i) {
        static_cast<void>(document_.apply(edits[random() % edits.size()]));
        static_cast<void>(
            document_.apply(SetMeasure{"seat height", std::to_string(14 + random() % 6) + " in"}));
    }
    const std::string after = written();
    QUndoStack& stack = document_.undoStack();
    EXPECT_GT(stack.count(), 20);

    stack.setIndex(0);
    EXPECT_EQ(written(), before);
    stack.setIndex(stack.count());

    EXPECT_EQ(written(), after);
}

TEST_F(DocumentTest, AChangeThatChangesNothingIsNoStep) {
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "16 3/4 in"}));

    EXPECT_EQ(document_.undoStack().count(), 0);
    EXPECT_FALSE(document_.isModified());
}

TEST_F(DocumentTest, ARefusedChangeLeavesThePieceAlone) {
    const std::string before = written();

    const Result<void> done = document_.apply(SetMeasure{"seat height", "16 3/"});

    EXPECT_FALSE(done);
    EXPECT_EQ(written(), before);
    EXPECT_EQ(document_.undoStack().count(), 0);
}

TEST_F(DocumentTest, StepsOfOneTargetMergeUntilTheBurstEnds) {
    const auto step = [this](const char* text) {
        ASSERT_TRUE(document_.apply(SetMeasure{"seat height", text}, Document::Kind::Step));
    };
    step("17 in");
    step("17 1/32 in");
    EXPECT_EQ(document_.undoStack().count(), 1);
    document_.endBurst();
    step("17 1/16 in");
    EXPECT_EQ(document_.undoStack().count(), 2);
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "18 in"}));
    EXPECT_EQ(document_.undoStack().count(), 3);
}

// Dragged from 16 3/4 in by two steps, the seat is told to have risen by both.
TEST_F(DocumentTest, ABurstTellsWhatItMovedFromWhereItBegan) {
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "17 in"}, Document::Kind::Step));
    const std::size_t movedByOne = document_.lastChange().moved.size();
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "17 1/4 in"}, Document::Kind::Step));

    const LastChange& last = document_.lastChange();
    EXPECT_EQ(last.before, QStringLiteral("16 3/4"));
    EXPECT_EQ(last.after, QStringLiteral("17 1/4"));
    ASSERT_EQ(last.moved.size(), movedByOne);
    for (const Moved& moved : last.moved) {
        if (moved.before && moved.after) {
            EXPECT_NEAR(std::abs((*moved.after - *moved.before).inches()), 0.5, 1e-6)
                << moved.subject << ", " << moved.size;
        }
    }
    document_.endBurst();
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "18 in"}, Document::Kind::Step));
    EXPECT_EQ(document_.lastChange().before, QStringLiteral("17 1/4"));
}

TEST_F(DocumentTest, ABurstBackToWhereItBeganIsNoStep) {
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "17 in"}, Document::Kind::Step));
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "16 3/4 in"}, Document::Kind::Step));

    EXPECT_EQ(document_.undoStack().count(), 0);
    EXPECT_FALSE(document_.isModified());
}

TEST_F(DocumentTest, SavingMovesTheCleanMarkAndUndoLeavesIt) {
    const QTemporaryDir folder;
    const QString path = folder.filePath(u"chair.shoulder"_s);
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "17 in"}));
    EXPECT_TRUE(document_.isModified());

    ASSERT_TRUE(document_.save(path));
    EXPECT_FALSE(document_.isModified());
    document_.undoStack().undo();
    EXPECT_TRUE(document_.isModified());
    document_.undoStack().redo();

    EXPECT_FALSE(document_.isModified());
    Document again(testing::resources());
    ASSERT_TRUE(again.open(path));
    EXPECT_EQ(writePiece(again.piece()), written());
}

TEST_F(DocumentTest, AFailedSaveLeavesItModified) {
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "17 in"}));

    const Result<void> saved = document_.save(u"/no such folder/chair.shoulder"_s);

    ASSERT_FALSE(saved);
    EXPECT_NE(saved.error().message.find("chair.shoulder"), std::string::npos)
        << saved.error().message;
    EXPECT_TRUE(document_.isModified());
    EXPECT_TRUE(document_.path().isEmpty());
}

TEST_F(DocumentTest, NoticesThatItsFileWasChanged) {
    const QTemporaryDir folder;
    const QString path = folder.filePath(u"chair.shoulder"_s);
    ASSERT_TRUE(document_.save(path));
    EXPECT_FALSE(document_.isChangedOnDisk());
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));

    ASSERT_TRUE(file.setFileTime(QDateTime::currentDateTime().addSecs(100),
                                 QFileDevice::FileModificationTime));
    file.close();

    EXPECT_TRUE(document_.isChangedOnDisk());
}

TEST_F(DocumentTest, UndoBringsBackWhatWasChosen) {
    const auto post = document_.resolved().findPart("front post, left");
    const auto rail = document_.resolved().findPart("front rail");
    ASSERT_TRUE(post && rail);
    document_.choosePart(post);
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "17 in"}));
    document_.choosePart(rail);

    document_.undoStack().undo();

    EXPECT_EQ(document_.chosenPart(), post);
}

TEST_F(DocumentTest, WhatIsChosenFollowsANewName) {
    document_.choosePart(document_.resolved().findPart("front post, left"));
    Part part = document_.piece().parts.front();
    ASSERT_EQ(part.name, "front post");
    part.name = "fore leg";

    ASSERT_TRUE(document_.apply(SetPart{"front post", part}));

    ASSERT_TRUE(document_.chosenPart());
    EXPECT_EQ(document_.resolved().parts[*document_.chosenPart()].name, "fore leg, left");
}

TEST_F(DocumentTest, TellsWhatTheLastChangeMoved) {
    ASSERT_TRUE(document_.apply(SetMeasure{"rail thickness", "1 1/8 in"}));

    const LastChange& last = document_.lastChange();
    EXPECT_EQ(last.name, u"rail thickness"_s);
    EXPECT_EQ(last.before, u"7/8"_s);
    EXPECT_EQ(last.after, u"1 1/8"_s);
    EXPECT_FALSE(last.moved.empty());
    document_.undoStack().undo();
    EXPECT_TRUE(document_.lastChange().isUndo);
}

}  // namespace
}  // namespace shoulderline
