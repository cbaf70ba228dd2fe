// Proportions, house rules, strength, loads and air in the window.

#include <QApplication>
#include <QDialog>
#include <QLabel>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTest>
#include <QTimer>
#include <functional>

#include <gtest/gtest.h>

#include "tests/ui/ui_test_support.h"
#include "ui/columns/air_dialog.h"
#include "ui/columns/house_rule_dialog.h"
#include "ui/columns/loads_dialog.h"
#include "ui/columns/proportion_list.h"
#include "ui/columns/strength_panel.h"
#include "ui/document/document.h"
#include "ui/pages/joint_table.h"

namespace shoulderline {
namespace {

using namespace Qt::Literals::StringLiterals;

class JudgementTest : public ::testing::Test {
  protected:
    JudgementTest() : document_(testing::resources()) {
        document_.start(testing::sample("armchair"), {});
        document_.chooseJoint(
            document_.resolved().findJoint("side rail, upper, right into front post, right"));
    }

    // The first button of a dialog or panel whose text begins so, mnemonics left out.
    static QAbstractButton* button(const QWidget& in, const QString& text) {
        for (QAbstractButton* one : in.findChildren<QAbstractButton*>()) {
            QString plain = one->text();
            plain.remove(u'&');
            if (plain.startsWith(text) || one->accessibleName().startsWith(text)) {
                return one;
            }
        }
        ADD_FAILURE() << "no button " << text.toStdString();
        return nullptr;
    }
    [[nodiscard]] Length tenonThickness() const {
        return document_.resolved().joints[*document_.chosenJoint()].tenon.thickness.value;
    }

    Document document_;
};

TEST_F(JudgementTest, EachProportionTellsItsFigureRangeAndSource) {
    ProportionList list(document_);
    list.refresh();

    const auto proportions = proportionsOf(document_.resolved(), *document_.chosenJoint());
    ASSERT_GE(proportions.size(), 8u);
    QStringList told;
    for (const QLabel* label : list.findChildren<QLabel*>()) {
        told << label->text();
    }
    const QString all = told.join(u"\n"_s);
    for (const Proportion& one : proportions) {
        EXPECT_TRUE(
            all.contains(QString::fromStdString(document_.resolved().rules[one.rule].source)))
            << one.subject;
    }
}

TEST_F(JudgementTest, AProportionOpensTheReasonsOfItsSize) {
    ProportionList list(document_);
    list.refresh();

    QTest::mouseClick(button(list, u"tenon thickness to stock"_s), Qt::LeftButton);

    EXPECT_TRUE(list.findChild<WhyBox*>()->text().contains(u"nearest chisel"_s));
}

TEST_F(JudgementTest, AHouseRuleIsForeseenBeforeItIsTaken) {
    HouseRuleDialog dialog(document_, RuleId::TenonThicknessShare);
    auto* value = dialog.findChild<QLineEdit*>(u"houseRuleValue"_s);
    const auto* moves = dialog.findChild<QPlainTextEdit*>(u"houseRuleMoves"_s);

    value->setText(u"0.4"_s);

    EXPECT_TRUE(
        moves->toPlainText().contains(u"side rail, upper into front post, tenon thickness: 5/16"_s))
        << moves->toPlainText().toStdString();
    EXPECT_NEAR(tenonThickness().inches(), 5.0 / 16, 1e-9) << "nothing is changed yet";
    EXPECT_FALSE(document_.isModified());
}

TEST_F(JudgementTest, AHouseRuleIsTakenInOneStepAndUndone) {
    HouseRuleDialog dialog(document_, RuleId::TenonThicknessShare);
    dialog.findChild<QLineEdit*>(u"houseRuleValue"_s)->setText(u"0.4"_s);

    QTest::mouseClick(button(dialog, u"Take It"_s), Qt::LeftButton);

    EXPECT_NEAR(tenonThickness().inches(), 3.0 / 8, 1e-9);
    ASSERT_EQ(document_.piece().houseRules.size(), 1u);
    document_.undoStack().undo();
    EXPECT_NEAR(tenonThickness().inches(), 5.0 / 16, 1e-9);
}

TEST_F(JudgementTest, AHouseRuleGoesBackToTheBook) {
    ASSERT_TRUE(document_.apply(SetHouseRule{"tenon.thickness.share", "0.4"}));
    HouseRuleDialog dialog(document_, RuleId::TenonThicknessShare);

    QTest::mouseClick(button(dialog, u"Back to the Rule Book"_s), Qt::LeftButton);

    EXPECT_TRUE(document_.piece().houseRules.empty());
}

TEST_F(JudgementTest, AFigureThatCannotBeIsNotTaken) {
    HouseRuleDialog dialog(document_, RuleId::MortiseWallLeast);
    auto* value = dialog.findChild<QLineEdit*>(u"houseRuleValue"_s);
    for (const char* text : {"", "1/4 in +", "half", "12 deg"}) {
        value->setText(QString::fromLatin1(text));
        EXPECT_FALSE(button(dialog, u"Take It"_s)->isEnabled()) << text;
    }
    value->setText(u"3/8 in"_s);
    EXPECT_TRUE(button(dialog, u"Take It"_s)->isEnabled());
}

QString allText(const QWidget& widget) {
    QStringList told;
    for (const QLabel* label : widget.findChildren<QLabel*>()) {
        told << label->text();
    }
    return told.join(u"\n"_s);
}

TEST_F(JudgementTest, StrengthOutsideTheTestsHasARankAndNoFigure) {
    StrengthPanel panel(document_);
    panel.refresh();

    EXPECT_TRUE(allText(panel).contains(u"outside the sizes tested"_s));
    for (const QLabel* label : panel.findChildren<QLabel*>()) {
        EXPECT_FALSE(label->accessibleName().startsWith(u"drawn out: "_s));
    }
    EXPECT_TRUE(allText(panel).contains(u"no proof"_s)) << "the caution";
}

TEST_F(JudgementTest, StrengthInsideTheTestsHasItsRangeAndWhatGoverns) {
    document_.chooseJoint(document_.resolved().findJoint("back rail, lower into back stile, left"));
    StrengthPanel panel(document_);
    panel.refresh();

    EXPECT_TRUE(allText(panel).contains(u"glue face governs"_s)) << allText(panel).toStdString();
    EXPECT_TRUE(allText(panel).contains(u"drawn out"_s));
    EXPECT_TRUE(allText(panel).contains(u"Taken for granted"_s));
}

TEST_F(JudgementTest, ATestOfTheMakersOwnMeasuresTheJoint) {
    StrengthPanel panel(document_);
    panel.refresh();
    auto* test = panel.findChild<StatementField*>(u"ownTest"_s);
    panel.show();
    QApplication::setActiveWindow(&panel);
    test->setFocus(Qt::TabFocusReason);
    QTest::keyClicks(test, u"250"_s);
    QTest::keyClick(test, Qt::Key_Return);

    ASSERT_EQ(document_.piece().use.tests.size(), 1u);
    EXPECT_EQ(document_.piece().use.tests[0].newtonMetres, "250");
    panel.refresh();
    EXPECT_TRUE(allText(panel).contains(u"by your own test"_s)) << allText(panel).toStdString();
    document_.undoStack().undo();
    EXPECT_TRUE(document_.piece().use.tests.empty());
}

TEST_F(JudgementTest, ALoadIsStatedAndTakenAway) {
    LoadsDialog dialog(document_);
    const int before = dialog.findChild<QListWidget*>(u"loadList"_s)->count();
    dialog.findChild<QLineEdit*>(u"loadName"_s)->setText(u"swell"_s);
    dialog.findChild<QLineEdit*>(u"loadNewtons"_s)->setText(u"300"_s);

    QTest::mouseClick(button(dialog, u"State It"_s), Qt::LeftButton);

    EXPECT_EQ(dialog.findChild<QListWidget*>(u"loadList"_s)->count(), before + 1);
    ASSERT_EQ(document_.piece().use.loads.size(), 1u);
    QTest::mouseClick(button(dialog, u"Take Away"_s), Qt::LeftButton);
    EXPECT_TRUE(document_.piece().use.loads.empty());
}

TEST_F(JudgementTest, ALoadThatCannotBeReadIsToldOf) {
    LoadsDialog dialog(document_);
    dialog.findChild<QLineEdit*>(u"loadName"_s)->setText(u"swell"_s);
    dialog.findChild<QLineEdit*>(u"loadNewtons"_s)->setText(u"300 +"_s);

    QTest::mouseClick(button(dialog, u"State It"_s), Qt::LeftButton);

    EXPECT_TRUE(document_.piece().use.loads.empty());
    EXPECT_TRUE(allText(dialog).contains(u"expected"_s)) << allText(dialog).toStdString();
}

TEST_F(JudgementTest, TheAirTellsWhatItComesToBeforeItIsStated) {
    AirDialog dialog(document_);
    EXPECT_TRUE(allText(dialog).contains(u"from 6.2 to 11 %"_s)) << allText(dialog).toStdString();
    for (QLineEdit* line : dialog.findChildren<QLineEdit*>()) {
        if (line->accessibleName() == u"dampest of the year, relative humidity, %"_s) {
            line->setText(u"80"_s);
        }
    }

    EXPECT_TRUE(allText(dialog).contains(u"to 16 %"_s)) << allText(dialog).toStdString();
    QTest::mouseClick(button(dialog, u"State It"_s), Qt::LeftButton);
    EXPECT_EQ(document_.piece().use.climate.damp.humidity, "80");
}

TEST_F(JudgementTest, TheTableOfJointsComparesAndSortsByWork) {
    const JointTable table(document_);
    const auto row = static_cast<int>(*document_.chosenJoint());
    const int first = static_cast<int>(document_.strength().order.front());

    EXPECT_TRUE(table.index(row, JointTable::Worked).data().toString().startsWith(u"rank "_s));
    EXPECT_EQ(table.index(first, JointTable::Worked).data(JointTable::kSortRole).toInt(), 1);
}

}  // namespace
}  // namespace shoulderline
