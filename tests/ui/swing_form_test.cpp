#include "ui/columns/swing_form.h"

#include <QApplication>
#include <QTest>
#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "tests/ui/answering_prompts.h"
#include "tests/ui/ui_test_support.h"
#include "ui/look/text_button.h"

namespace shoulderline {
namespace {

using namespace Qt::Literals::StringLiterals;

// The form of the armchair's back that swings.
class SwingFormTest : public ::testing::Test {
  protected:
    SwingFormTest() : document_(testing::resources()), form_(document_, prompts_) {
        document_.start(testing::sample("armchair"), {});
        QObject::connect(
            &document_, &Document::changed, &form_, [this] { form_.show("leaning back"); });
        form_.show("leaning back");
        form_.resize(400, 900);
        QApplication::setActiveWindow(&form_);
    }
    [[nodiscard]] const Swing& swing() const { return *document_.piece().assemblies[1].swing; }
    // The visible field of that name; those with one name count from the top.
    template <class Field>
    Field* field(const QString& label, int which = 0) {
        for (Field* one : form_.findChildren<Field*>()) {
            if (one->isVisible() && one->accessibleName() == u"swing: "_s + label && which-- == 0) {
                return one;
            }
        }
        ADD_FAILURE() << "no field " << label.toStdString();
        return nullptr;
    }
    void type(QLineEdit* into, const QString& text) {
        ASSERT_NE(into, nullptr);
        into->setFocus();
        into->selectAll();
        QTest::keyClicks(into, text);
        QTest::keyClick(into, Qt::Key_Return);
        QApplication::processEvents();
    }
    [[nodiscard]] double lean(std::size_t station) const {
        return document_.resolved().swings.at(0).positions.at(station).lean.degrees();
    }

    Document document_;
    testing::AnsweringPrompts prompts_;
    SwingForm form_;
};

TEST_F(SwingFormTest, ALeanIsTypedAndTheStationMovesAndComesBack) {
    const Length before = document_.resolved().swings.at(0).positions.at(2).behind;

    type(field<StatementField>(u"leans by"_s, 2), u"27 deg"_s);

    EXPECT_EQ(swing().stations[2].lean, "27 deg");
    EXPECT_NEAR(lean(2), 27.0, 1e-9);
    EXPECT_GT(document_.resolved().swings.at(0).positions.at(2).behind, before);
    document_.undoStack().undo();
    EXPECT_NEAR(lean(2), 25.0, 1e-9);
}

// The law of cosines with the bar's top 6 in above the pivot and the back's rear face 1/2 in behind
// it: 3 in behind, cos(angle) = 0.5 / sqrt(45).
TEST_F(SwingFormTest, ADistanceTakesTheLeanOfItsStationBack) {
    type(field<StatementField>(u"bar behind the pivot"_s, 0), u"3 in"_s);

    EXPECT_EQ(swing().stations[0].behind, "3 in");
    EXPECT_EQ(swing().stations[0].lean, "");
    const double lean0 = std::acos(0.5 / std::sqrt(45.0)) - std::atan2(6.0, 3.0);
    EXPECT_NEAR(lean(0), Angle::radians(lean0).degrees(), 1e-9);

    type(field<StatementField>(u"leans by"_s, 0), u"14 deg"_s);
    EXPECT_EQ(swing().stations[0].behind, "");
    EXPECT_NEAR(lean(0), 14.0, 1e-9);
}

TEST_F(SwingFormTest, TheStationThatItIsDrawnAtIsChosenWithTheKeyboard) {
    auto* box = field<ChoiceBox>(u"drawn at"_s);
    ASSERT_NE(box, nullptr);
    EXPECT_EQ(box->currentText(), u"reading"_s);

    box->setFocus();
    QTest::keyClick(box, Qt::Key_Down);

    EXPECT_EQ(swing().at, "resting");
    EXPECT_EQ(document_.resolved().swings.at(0).at, 2u);
}

TEST_F(SwingFormTest, AStationDrawnAtKeepsBeingSoUnderANewName) {
    type(field<QLineEdit>(u"station 2"_s), u"writing"_s);

    EXPECT_EQ(swing().stations[1].name, "writing");
    EXPECT_EQ(swing().at, "writing");
    EXPECT_TRUE(document_.resolved().troubles.empty());
}

TEST_F(SwingFormTest, EveryFieldIsReachedWithTab) {
    std::vector<QWidget*> wanted;
    for (QWidget* one : form_.findChildren<QWidget*>()) {
        if (one->isVisible() && one->accessibleName().startsWith(u"swing: "_s)) {
            wanted.push_back(one);
        }
    }
    ASSERT_GT(wanted.size(), 15u);
    wanted.front()->setFocus();
    const std::size_t presses = 2 * wanted.size();
    for (std::size_t i = 0; i < presses; ++i) {
        std::erase(wanted, QApplication::focusWidget());
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    }

    EXPECT_TRUE(wanted.empty());
    for (const QWidget* one : wanted) {
        ADD_FAILURE() << one->accessibleName().toStdString() << " is not reached";
    }
}

TEST_F(SwingFormTest, AnAssemblyThatStandsStillCanBeLetSwing) {
    form_.show("side frames");
    TextButton* letIt = nullptr;
    for (TextButton* one : form_.findChildren<TextButton*>()) {
        letIt = one->isVisible() && one->text() == u"let it swing"_s ? one : letIt;
    }
    ASSERT_NE(letIt, nullptr);

    QTest::mouseClick(letIt, Qt::LeftButton);

    ASSERT_TRUE(document_.piece().assemblies[0].swing);
    EXPECT_EQ(document_.piece().assemblies[0].swing->leans, "front post");
    EXPECT_EQ(document_.piece().assemblies[0].swing->stations.size(), 2u);
}

TEST_F(SwingFormTest, IsNotThereForAPartOfNoAssembly) {
    form_.show("");
    EXPECT_FALSE(form_.isVisible());
}

}  // namespace
}  // namespace shoulderline
