#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QTest>

#include <gtest/gtest.h>

#include "tests/ui/answering_prompts.h"
#include "tests/ui/ui_test_support.h"
#include "ui/pages/calibration_dialog.h"
#include "ui/pages/prints_page.h"
#include "ui/printing/printer_correction.h"

namespace shoulderline {
namespace {

using namespace Qt::Literals::StringLiterals;

template <typename Widget>
Widget* named(QWidget& parent, const QString& name) {
    for (Widget* widget : parent.findChildren<Widget*>()) {
        if (widget->accessibleName() == name) {
            return widget;
        }
    }
    return nullptr;
}

QPushButton* button(QWidget& parent, const QString& text) {
    for (QPushButton* one : parent.findChildren<QPushButton*>()) {
        if (one->text().remove(u'&') == text) {
            return one;
        }
    }
    return nullptr;
}

bool shows(QWidget& parent, const QString& part) {
    for (const QLabel* label : parent.findChildren<QLabel*>()) {
        if (label->isVisible() && label->text().contains(part)) {
            return true;
        }
    }
    return false;
}

void type(LengthField* field, const QString& text) {
    QApplication::setActiveWindow(field->window());
    field->setFocus(Qt::TabFocusReason);
    field->selectAll();
    QTest::keyClicks(field, text);
    QTest::keyClick(field, Qt::Key_Return);
}

class CalibrationTest : public ::testing::Test {
  protected:
    CalibrationTest()
        : paper_(*findPaper("A4")), dialog_(printers(), paper_, false, "2026-11-24", prompts_) {
        dialog_.show();
        dialog_.activateWindow();
    }
    ~CalibrationTest() override { forgetMeasured(u"bench printer"_s, paper_); }
    static QStringList printers() { return {u"bench printer"_s, u"office, 2nd floor"_s}; }

    testing::AnsweringPrompts prompts_;
    Paper paper_;
    CalibrationDialog dialog_;
};

TEST_F(CalibrationTest, WhatIsMeasuredIsKeptForThePrinterAndPaper) {
    type(named<LengthField>(dialog_, u"measured across"_s), u"169.15"_s);
    type(named<LengthField>(dialog_, u"measured up"_s), u"9.47 in"_s);
    ASSERT_TRUE(dialog_.isVisible()) << "Enter takes the figure, not the dialog";
    QTest::mouseClick(button(dialog_, u"Keep"_s), Qt::LeftButton);

    EXPECT_FALSE(dialog_.isVisible());
    const ScaleCorrection kept = correctionFor(u"bench printer"_s, paper_);
    EXPECT_NEAR(kept.shortSide, 170.0 / 169.15, 1e-9);
    EXPECT_NEAR(kept.longSide, 240.0 / (9.47 * 25.4), 1e-9);
    EXPECT_TRUE(correctionFor(u"office, 2nd floor"_s, paper_).isNone());
    EXPECT_TRUE(correctionFor(u"bench printer"_s, *findPaper("A3")).isNone());
}

TEST_F(CalibrationTest, AFittedSheetIsToldAndNotKept) {
    type(named<LengthField>(dialog_, u"measured across"_s), u"155.5"_s);

    EXPECT_TRUE(shows(dialog_, u"fitted to the printer's margins"_s));
    EXPECT_FALSE(button(dialog_, u"Keep"_s)->isEnabled());
}

TEST_F(CalibrationTest, WhatWasKeptIsShownAndForgotten) {
    keepMeasured(u"bench printer"_s, paper_, {{169.0, 240.0}, u"2026-11-24"_s});
    CalibrationDialog again(printers(), paper_, false, "2026-11-24", prompts_);
    again.show();

    EXPECT_EQ(named<LengthField>(again, u"measured across"_s)->length(), Length::mm(169.0));
    QTest::mouseClick(button(again, u"Forget"_s), Qt::LeftButton);
    EXPECT_FALSE(measuredFor(u"bench printer"_s, paper_));
    EXPECT_EQ(named<LengthField>(again, u"measured across"_s)->length(), Length::mm(170.0));
}

TEST_F(CalibrationTest, APrinterMustBeNamed) {
    auto* printer = named<QComboBox>(dialog_, u"printer"_s);
    printer->setCurrentText(u"  "_s);

    EXPECT_FALSE(button(dialog_, u"Keep"_s)->isEnabled());
    EXPECT_TRUE(shows(dialog_, u"Name the printer"_s));
}

class PrintsPageTest : public ::testing::Test {
  protected:
    PrintsPageTest() : document_(testing::resources()), page_(document_, prompts_) {
        document_.start(testing::sample("armchair"), {});
        page_.resize(900, 700);
        page_.show();
    }
    void choose(const QString& box, int index) {
        auto* choice = named<QComboBox>(page_, box);
        choice->setCurrentIndex(index);
        Q_EMIT choice->activated(index);
    }

    Document document_;
    testing::AnsweringPrompts prompts_;
    PrintsPage page_;
};

// The table's list of parts is short enough to stand beside its views.
TEST_F(PrintsPageTest, OnePageIsOnePage) {
    document_.start(testing::sample("table"), {});
    choose(u"what to print"_s, 3);

    EXPECT_TRUE(shows(page_, u"1 page of"_s));
    EXPECT_FALSE(shows(page_, u"1 pages"_s));
}

TEST_F(PrintsPageTest, OnlyWhatCountsIsShown) {
    choose(u"what to print"_s, 0);
    EXPECT_TRUE(named<LengthField>(page_, u"overlap of pages"_s)->isVisible());
    EXPECT_FALSE(named<QComboBox>(page_, u"scale"_s)->isVisible());
    choose(u"what to print"_s, 1);
    EXPECT_FALSE(named<LengthField>(page_, u"overlap of pages"_s)->isVisible());
    EXPECT_TRUE(named<QComboBox>(page_, u"scale"_s)->isVisible());
    EXPECT_FALSE(named<QComboBox>(page_, u"part to print"_s)->isVisible());
}

TEST_F(PrintsPageTest, AScaleTooLargeForThePaperIsTold) {
    choose(u"what to print"_s, 3);
    choose(u"scale"_s, 1);

    EXPECT_TRUE(shows(page_, u"does not fit on"_s));
    page_.savePdf();
    EXPECT_EQ(prompts_.told.size(), 1);
}

TEST_F(PrintsPageTest, EveryKindOfPrintGivesPages) {
    for (int i = 0; i < named<QComboBox>(page_, u"what to print"_s)->count(); ++i) {
        choose(u"what to print"_s, i);
        EXPECT_TRUE(shows(page_, u" page"_s)) << i;
    }
}

}  // namespace
}  // namespace shoulderline
