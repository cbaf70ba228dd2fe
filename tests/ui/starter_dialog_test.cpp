#include "ui/window/starter_dialog.h"

#include <QApplication>
#include <QDialogButtonBox>
#include <QTest>

#include <gtest/gtest.h>

#include "tests/ui/ui_test_support.h"
#include "ui/fields/statement_field.h"

namespace shoulderline {
namespace {

using namespace Qt::Literals::StringLiterals;

Resources withStarters() {
    Resources resources = testing::resources();
    for (const char* name : {"stool", "adjustable_armchair"}) {
        resources.starters.push_back(testing::pieceAt(std::string("resources/starters/") + name));
    }
    return resources;
}

class StarterDialogTest : public ::testing::Test {
  protected:
    StarterDialogTest() : dialog_(withStarters()) {
        dialog_.show();
        QApplication::setActiveWindow(&dialog_);
        QApplication::processEvents();
    }
    [[nodiscard]] QStringList asked() const {
        QStringList names;
        for (const StatementField* field : dialog_.findChildren<StatementField*>()) {
            if (field->isVisible()) {
                names << field->accessibleName();
            }
        }
        return names;
    }
    [[nodiscard]] StatementField* field(const QString& measure) const {
        for (StatementField* one : dialog_.findChildren<StatementField*>()) {
            if (one->isVisible() && one->accessibleName() == u"measure: "_s + measure) {
                return one;
            }
        }
        ADD_FAILURE() << "no field " << measure.toStdString();
        return nullptr;
    }
    [[nodiscard]] double mm(const char* measure) const {
        for (const Measure& one : dialog_.piece().measures) {
            if (one.name == measure) {
                const ResolvedPiece resolved = testing::resolved(dialog_.piece());
                return resolved
                    .measures[static_cast<std::size_t>(&one - dialog_.piece().measures.data())]
                    .value->asLength()
                    ->mm();
            }
        }
        return -1.0;
    }

    StarterDialog dialog_;
};

TEST_F(StarterDialogTest, BeginsWithTheFirstAndAsksTheMeasuresThatHaveLimits) {
    const Piece stool = testing::pieceAt("resources/starters/stool");
    int limited = 0;
    for (const Measure& measure : stool.measures) {
        limited += measure.least.empty() && measure.most.empty() ? 0 : 1;
    }

    EXPECT_EQ(dialog_.piece(), stool);
    EXPECT_EQ(asked().size(), limited);
}

TEST_F(StarterDialogTest, AnotherStarterAsksItsOwn) {
    QTest::keyClick(dialog_.findChild<QListWidget*>(), Qt::Key_Down);
    QApplication::processEvents();

    EXPECT_EQ(dialog_.piece().name, "Armchair with an adjustable back");
    EXPECT_TRUE(asked().contains(u"measure: back lean"_s));
}

TEST_F(StarterDialogTest, AMeasureIsTypedAndThePieceFollows) {
    QTest::keyClick(dialog_.findChild<QListWidget*>(), Qt::Key_Down);
    QApplication::processEvents();
    StatementField* height = field(u"arm height"_s);
    ASSERT_NE(height, nullptr);

    height->setFocus();
    height->selectAll();
    QTest::keyClicks(height, u"24 1/2"_s);
    QTest::keyClick(height, Qt::Key_Tab);

    EXPECT_NEAR(mm("arm height"), 24.5 * 25.4, 1e-9);
    EXPECT_TRUE(testing::resolved(dialog_.piece()).troubles.empty());
}

TEST_F(StarterDialogTest, ANameIsTyped) {
    QLineEdit* name = nullptr;
    for (QLineEdit* one : dialog_.findChildren<QLineEdit*>()) {
        name = one->accessibleName() == u"name of the piece"_s ? one : name;
    }
    ASSERT_NE(name, nullptr);

    name->setFocus();
    name->selectAll();
    QTest::keyClicks(name, u"Deck stool"_s);

    EXPECT_EQ(dialog_.piece().name, "Deck stool");
}

}  // namespace
}  // namespace shoulderline
