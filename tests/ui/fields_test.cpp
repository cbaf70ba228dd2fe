#include <QKeyEvent>
#include <QLocale>
#include <QTest>
#include <QVBoxLayout>
#include <QWheelEvent>
#include <clocale>

#include <gtest/gtest.h>

#include "tests/ui/ui_test_support.h"
#include "ui/fields/choice_box.h"
#include "ui/fields/length_field.h"
#include "ui/fields/statement_field.h"

namespace shoulderline {
namespace {

using namespace Qt::Literals::StringLiterals;
using testing::measureMm;

// A window with the field of the armchair's seat height (16 3/4 in) and another to go to.
class FieldTest : public ::testing::Test {
  protected:
    FieldTest() : document_(testing::resources()) {
        document_.start(testing::sample("armchair"), {});
        field_ = new StatementField(
            document_,
            shoulderline::Dimension::Length,
            [this](const std::string& statement, Document::Kind kind) {
                return document_.apply(SetMeasure{"seat height", statement}, kind);
            },
            &window_);
        other_ = new QLineEdit(&window_);
        auto* layout = new QVBoxLayout(&window_);
        layout->addWidget(field_);
        layout->addWidget(other_);
        QObject::connect(&document_, &Document::changed, field_, [this] { show(); });
        show();
        window_.resize(400, 200);
        window_.show();
        QApplication::setActiveWindow(&window_);
        other_->setFocus();
    }
    void show() { field_->setStatement(document_.piece().measures.front().expression); }
    void type(const QString& text) {
        field_->setFocus(Qt::TabFocusReason);
        field_->selectAll();
        field_->insert(text);
        field_->setModified(true);
    }
    [[nodiscard]] double seatHeight() const { return measureMm(document_, "seat height"); }

    Document document_;
    QWidget window_;
    StatementField* field_ = nullptr;
    QLineEdit* other_ = nullptr;
};

TEST_F(FieldTest, ShowsItsLengthAtRest) {
    EXPECT_EQ(field_->text(), u"16 3/4"_s);
}

struct Written {
    QString text;
    double mm;
};

// Lengths as makers write them. Expected: 1 in = 25.4 mm exactly (international inch, 1959).
TEST_F(FieldTest, ReadsLengthsAlikeInEveryLocale) {
    const Written all[] = {{u"16 3/4"_s, 425.45},
                           {u"16-3/4"_s, 425.45},
                           {u"16 3/4\""_s, 425.45},
                           {u"16¾"_s, 425.45},
                           {u"1' 4 3/4\""_s, 425.45},
                           {u"1 ft 4 3/4 in"_s, 425.45},
                           {u"16.75"_s, 425.45},
                           {u"16,75"_s, 425.45},
                           {u"425.5 mm"_s, 425.5},
                           {u"425,5 mm"_s, 425.5},
                           {u"42.5cm"_s, 425.0},
                           {u"512.5 mm"_s, 512.5},
                           {u"9/16"_s, 14.2875},
                           {u"16 3/4″"_s, 425.45}};
    const std::pair<const char*, QLocale> locales[] = {{"C", QLocale::c()},
                                                       {"de_DE.UTF-8", QLocale(QLocale::German)},
                                                       {"en_US.UTF-8", QLocale(QLocale::English)},
                                                       {"fr_FR.UTF-8", QLocale(QLocale::French)}};
    for (const auto& [name, locale] : locales) {
        std::setlocale(LC_ALL, name);
        QLocale::setDefault(locale);
        for (const Written& written : all) {
            type(written.text);

            QTest::keyClick(field_, Qt::Key_Return);

            EXPECT_NEAR(seatHeight(), written.mm, 1e-9)
                << name << ": " << written.text.toStdString();
        }
    }
    std::setlocale(LC_ALL, "C");
    QLocale::setDefault(QLocale::c());
}

TEST_F(FieldTest, TypedTextReachesThePieceOnEnterOnly) {
    field_->setFocus(Qt::TabFocusReason);

    QTest::keyClicks(field_, u"17 1/2"_s);

    EXPECT_NEAR(seatHeight(), 425.45, 1e-9);
    QTest::keyClick(field_, Qt::Key_Return);
    EXPECT_NEAR(seatHeight(), 444.5, 1e-9);
}

TEST_F(FieldTest, LeavingItCommits) {
    field_->setFocus(Qt::TabFocusReason);
    QTest::keyClicks(field_, u"18"_s);

    QTest::keyClick(field_, Qt::Key_Tab);

    EXPECT_NEAR(seatHeight(), 457.2, 1e-9);
}

TEST_F(FieldTest, RefusesWhatItCannotReadAndKeepsTheValue) {
    for (const QString& text :
         {u"16 3/"_s, u"sixteen"_s, u"16 x 3"_s, u"16 3/4 kg"_s, u"1.234,5"_s}) {
        type(text);

        QTest::keyClick(field_, Qt::Key_Return);

        EXPECT_FALSE(field_->refusal().isEmpty()) << text.toStdString();
        EXPECT_NEAR(seatHeight(), 425.45, 1e-9) << text.toStdString();
    }
    other_->setFocus();
    EXPECT_EQ(field_->text(), u"16 3/4"_s);
}

TEST_F(FieldTest, RefusesAMeasureThatIsNotThere) {
    type(u"seat hight + 1"_s);

    QTest::keyClick(field_, Qt::Key_Return);

    EXPECT_TRUE(field_->refusal().contains(u"seat hight"_s)) << field_->refusal().toStdString();
    EXPECT_EQ(document_.undoStack().count(), 0);
}

TEST_F(FieldTest, EscapeBringsTheOldTextBack) {
    field_->setFocus(Qt::TabFocusReason);
    QTest::keyClicks(field_, u"99"_s);

    QTest::keyClick(field_, Qt::Key_Escape);

    EXPECT_EQ(field_->text(), u"16 3/4"_s);
    other_->setFocus();
    EXPECT_NEAR(seatHeight(), 425.45, 1e-9);
}

TEST_F(FieldTest, FocusByTabSelectsAll) {
    field_->setFocus(Qt::TabFocusReason);

    EXPECT_EQ(field_->selectedText(), u"16 3/4"_s);
}

TEST_F(FieldTest, StepsByTheSmallestFractionShown) {
    field_->setFocus(Qt::TabFocusReason);

    QTest::keyClick(field_, Qt::Key_Up);
    EXPECT_NEAR(seatHeight(), (16 + 25.0 / 32) * 25.4, 1e-9);
    QTest::keyClick(field_, Qt::Key_PageDown);

    EXPECT_NEAR(seatHeight(), (16 + 17.0 / 32) * 25.4, 1e-9);
}

TEST_F(FieldTest, StepsOfOneBurstAreOneUndoStep) {
    field_->setFocus(Qt::TabFocusReason);
    for (int i = 0; i < 5; ++i) {
        QTest::keyClick(field_, Qt::Key_Up);
    }
    EXPECT_EQ(document_.undoStack().count(), 1);

    document_.undoStack().undo();

    EXPECT_NEAR(seatHeight(), 425.45, 1e-9);
}

TEST_F(FieldTest, WheelDoesNothingWithoutFocus) {
    const auto turn = [this] {
        QWheelEvent event(QPointF(5, 5),
                          field_->mapToGlobal(QPointF(5, 5)),
                          QPoint(),
                          QPoint(0, 120),
                          Qt::NoButton,
                          Qt::NoModifier,
                          Qt::NoScrollPhase,
                          false);
        QApplication::sendEvent(field_, &event);
        return event.isAccepted();
    };

    EXPECT_FALSE(turn());
    EXPECT_NEAR(seatHeight(), 425.45, 1e-9);
    field_->setFocus(Qt::TabFocusReason);
    EXPECT_TRUE(turn());
    EXPECT_NEAR(seatHeight(), (16 + 25.0 / 32) * 25.4, 1e-9);
}

TEST_F(FieldTest, ARoundedTextIsNotCommittedUnchanged) {
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "425 mm"}));
    ASSERT_TRUE(field_->text().startsWith(u"≈"_s)) << field_->text().toStdString();
    const int changes = document_.undoStack().count();

    field_->setFocus(Qt::TabFocusReason);
    EXPECT_EQ(field_->text(), u"425 mm"_s);
    QTest::keyClick(field_, Qt::Key_Return);
    other_->setFocus();

    EXPECT_EQ(document_.undoStack().count(), changes);
    EXPECT_NEAR(seatHeight(), 425.0, 1e-9);
}

TEST_F(FieldTest, ABareNumberTakesTheUnitThatIsShown) {
    ASSERT_TRUE(document_.apply(SetStyle{LengthStyle::millimetres(1)}));
    type(u"430"_s);

    QTest::keyClick(field_, Qt::Key_Return);

    EXPECT_NEAR(seatHeight(), 430.0, 1e-9);
    EXPECT_EQ(document_.piece().measures.front().expression, "430 mm");
}

TEST_F(FieldTest, ShowsAnExpressionWhileItIsEdited) {
    ASSERT_TRUE(document_.apply(SetMeasure{"seat height", "arm height - 6 1/2 in"}));
    EXPECT_EQ(field_->text(), u"16 3/4"_s);

    field_->setFocus(Qt::TabFocusReason);

    EXPECT_EQ(field_->text(), u"arm height - 6 1/2 in"_s);
}

TEST_F(FieldTest, UndoIsThePiecesOwnWhereNothingIsTyped) {
    field_->setFocus(Qt::TabFocusReason);
    QKeyEvent event(QEvent::ShortcutOverride, Qt::Key_Z, Qt::ControlModifier);
    event.ignore();
    QApplication::sendEvent(field_, &event);
    EXPECT_FALSE(event.isAccepted());

    QTest::keyClicks(field_, u"1"_s);
    QKeyEvent typed(QEvent::ShortcutOverride, Qt::Key_Z, Qt::ControlModifier);
    typed.ignore();
    QApplication::sendEvent(field_, &typed);

    EXPECT_TRUE(typed.isAccepted());
}

TEST(ChoiceBoxWheel, DoesNothingWithoutFocus) {
    QWidget window;
    ChoiceBox box(&window);
    box.addItems({u"post"_s, u"rail"_s, u"slat"_s});
    window.show();
    box.clearFocus();
    QWheelEvent event(QPointF(5, 5),
                      box.mapToGlobal(QPointF(5, 5)),
                      QPoint(),
                      QPoint(0, -120),
                      Qt::NoButton,
                      Qt::NoModifier,
                      Qt::NoScrollPhase,
                      false);

    QApplication::sendEvent(&box, &event);

    EXPECT_FALSE(event.isAccepted());
    EXPECT_EQ(box.currentIndex(), 0);
}

TEST(LengthFieldLimits, SayWhichWasHit) {
    LengthField field;
    field.setLength(Length::mm(15), LengthStyle::millimetres(1));
    field.setLimits(Length::mm(10), Length::mm(40), u"10 to 40"_s);
    field.show();
    QApplication::setActiveWindow(&field);
    field.setFocus(Qt::TabFocusReason);
    field.selectAll();
    QTest::keyClicks(&field, u"2 in"_s);

    QTest::keyClick(&field, Qt::Key_Return);

    EXPECT_EQ(field.refusal(), u"10 to 40"_s);
    EXPECT_NEAR(field.length().mm(), 15.0, 1e-12);
}

}  // namespace
}  // namespace shoulderline
