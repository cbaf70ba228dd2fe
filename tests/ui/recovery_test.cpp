#include "ui/document/recovery.h"

#include <QFile>
#include <QTemporaryDir>
#include <QTest>
#include <memory>

#include <gtest/gtest.h>

#include "core/storage/piece_text.h"
#include "tests/ui/ui_test_support.h"

namespace shoulderline {
namespace {

using namespace Qt::Literals::StringLiterals;

class RecoveryTest : public ::testing::Test {
  protected:
    RecoveryTest() : folder_(home_.filePath(u"recovery"_s)), document_(testing::resources()) {
        document_.start(testing::sample("armchair"), u"/somewhere/chair.shoulder"_s);
    }
    QTemporaryDir home_;
    QDir folder_;
    Document document_;
};

TEST_F(RecoveryTest, WorkThatWasNotSavedIsFoundAgain) {
    {
        Recovery ended(document_, folder_);
        ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "17 in"}));
        ended.writeNow();
    }
    Document next(testing::resources());
    Recovery recovery(next, folder_);

    const std::vector<LostWork> lost = recovery.find();

    ASSERT_EQ(lost.size(), 1U);
    EXPECT_EQ(writePiece(lost.front().piece), writePiece(document_.piece()));
    EXPECT_EQ(lost.front().path, u"/somewhere/chair.shoulder"_s);
}

TEST_F(RecoveryTest, TheFirstChangeIsKeptWithoutFurtherOnes) {
    Recovery recovery(document_, folder_, 1);

    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "17 in"}));

    EXPECT_TRUE(
        QTest::qWaitFor([this] { return !folder_.entryList({u"*.snapshot"_s}).isEmpty(); }));
}

TEST_F(RecoveryTest, ALiveProgramsSnapshotIsLeftAlone) {
    Recovery alive(document_, folder_);
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "17 in"}));
    alive.writeNow();
    Document next(testing::resources());
    Recovery recovery(next, folder_);

    EXPECT_TRUE(recovery.find().empty());
}

TEST_F(RecoveryTest, NothingIsWrittenWhereNothingIsUnsaved) {
    Recovery recovery(document_, folder_);

    recovery.writeNow();

    EXPECT_TRUE(folder_.entryList({u"*.snapshot"_s}).isEmpty());
}

TEST_F(RecoveryTest, ForgettingRemovesTheSnapshot) {
    Recovery recovery(document_, folder_);
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "17 in"}));
    recovery.writeNow();
    ASSERT_EQ(folder_.entryList({u"*.snapshot"_s}).size(), 1);

    recovery.forget();

    EXPECT_TRUE(folder_.entryList(QDir::Files).isEmpty())
        << folder_.entryList(QDir::Files).join(u' ').toStdString();
}

TEST_F(RecoveryTest, ASecondCrashLosesNothing) {
    {
        Recovery ended(document_, folder_);
        ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "17 in"}));
        ended.writeNow();
    }
    {
        Document next(testing::resources());
        Recovery recovery(next, folder_);
        const std::vector<LostWork> lost = recovery.find();
        ASSERT_EQ(lost.size(), 1U);
        next.start(lost.front().piece, lost.front().path, true);
        recovery.adopt(lost.front());
        EXPECT_TRUE(next.isModified());
    }
    Document third(testing::resources());
    Recovery recovery(third, folder_);

    EXPECT_EQ(recovery.find().size(), 1U);
}

TEST_F(RecoveryTest, ASnapshotThatCannotBeReadIsSetAside) {
    ASSERT_TRUE(folder_.mkpath(u"."_s));
    QFile broken(folder_.filePath(u"broken.snapshot"_s));
    ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
    broken.write("{\"piece\": \"{ not a piece");
    broken.close();
    Recovery recovery(document_, folder_);

    EXPECT_TRUE(recovery.find().empty());

    EXPECT_TRUE(QFile::exists(folder_.filePath(u"broken.snapshot.unreadable"_s)));
    EXPECT_TRUE(recovery.find().empty());
}

}  // namespace
}  // namespace shoulderline
