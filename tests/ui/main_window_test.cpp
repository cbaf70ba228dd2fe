#include "ui/window/main_window.h"

#include <QAccessible>
#include <QFile>
#include <QLabel>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "tests/ui/answering_prompts.h"
#include "tests/ui/ui_test_support.h"
#include "ui/columns/joint_panel.h"
#include "ui/fields/statement_field.h"
#include "ui/look/text_button.h"
#include "ui/pages/piece_canvas.h"
#include "ui/pages/prints_page.h"

namespace shoulderline {
namespace {

using namespace Qt::Literals::StringLiterals;
using testing::AnsweringPrompts;

// The line of a rod at that place; the first and a failure where there is none.
std::size_t lineAtMm(const Rod& rod, double at) {
    for (std::size_t i = 0; i < rod.lines.size(); ++i) {
        if (std::abs(rod.lines[i].at - at) < 0.01) {
            return i;
        }
    }
    ADD_FAILURE() << "no line at " << at << " mm";
    return 0;
}

class MainWindowTest : public ::testing::Test {
  protected:
    MainWindowTest()
        : window_(testing::resources(), prompts_, QDir(home_.filePath(u"recovery"_s))) {
        window_.resize(1440, 900);
        window_.show();
        QApplication::setActiveWindow(&window_);
        EXPECT_TRUE(
            window_.openFile(QStringLiteral(SHOULDERLINE_SOURCE_DIR "/samples/armchair.shoulder")));
        QApplication::processEvents();
    }
    ~MainWindowTest() override {
        prompts_.saveAnswer = Prompts::SaveAnswer::Discard;
        window_.close();
    }
    [[nodiscard]] Document& document() { return window_.document(); }
    void state(const QString& measure, const QString& text) {
        auto* field = window_.findChild<StatementField*>(u"measure:"_s + measure);
        ASSERT_NE(field, nullptr) << measure.toStdString();
        field->setFocus(Qt::TabFocusReason);
        QTest::keyClicks(field, text);
        QTest::keyClick(field, Qt::Key_Return);
        QApplication::processEvents();
    }
    // A button by the beginning of its accessible name or text.
    [[nodiscard]] TextButton* button(const QString& name) {
        for (TextButton* one : window_.findChildren<TextButton*>()) {
            if (one->isVisible() &&
                (one->accessibleName().startsWith(name) || one->text().startsWith(name))) {
                return one;
            }
        }
        ADD_FAILURE() << "no button " << name.toStdString();
        return nullptr;
    }
    [[nodiscard]] bool showsLabel(const QString& accessibleName) {
        const QList<QLabel*> labels = window_.findChildren<QLabel*>();
        return std::any_of(labels.begin(), labels.end(), [&](const QLabel* label) {
            return label->isVisible() && label->accessibleName().startsWith(accessibleName);
        });
    }

    QTemporaryDir home_;
    AnsweringPrompts prompts_;
    MainWindow window_;
};

TEST_F(MainWindowTest, NamesThePieceInItsTitle) {
    EXPECT_EQ(window_.windowTitle(), u"[*]Waiting-room armchair - Shoulderline"_s);
    EXPECT_FALSE(window_.isWindowModified());
}

TEST_F(MainWindowTest, ThickerRailsMoveTheirTenonsAndUndoBringsThemBack) {
    state(u"rail thickness"_s, u"1 1/8"_s);

    EXPECT_TRUE(window_.isWindowModified());
    EXPECT_TRUE(showsLabel(u"side rail, upper into front post, tenon thickness: 3/8, was 5/16"_s));
    QTest::mouseClick(button(u"take back"_s), Qt::LeftButton);
    EXPECT_FALSE(window_.isWindowModified());
    EXPECT_NEAR(testing::measureMm(document(), "rail thickness"), 22.225, 1e-9);
}

// The first change puts "not saved" beside the name; the hand that goes for a page finds it.
TEST_F(MainWindowTest, ThePagesStayWhereTheyAreWithTheFirstChange) {
    const TextButton* joints = button(u"Joints"_s);
    ASSERT_NE(joints, nullptr);
    const QPoint before = joints->mapTo(&window_, QPoint(0, 0));
    state(u"rail thickness"_s, u"1 1/8"_s);
    ASSERT_TRUE(window_.isWindowModified());
    EXPECT_EQ(joints->mapTo(&window_, QPoint(0, 0)), before);
}

TEST_F(MainWindowTest, AFindingLeadsToItsJoint) {
    state(u"rail thickness"_s, u"1 1/8"_s);
    ASSERT_FALSE(document().findings().empty());
    const Finding first = document().findings().front();

    QTest::mouseClick(button(u"must mend: "_s), Qt::LeftButton);

    EXPECT_EQ(document().chosenJoint(), first.joint);
}

TEST_F(MainWindowTest, AMendAppliesInOneStep) {
    state(u"rail thickness"_s, u"1 1/8"_s);
    const Finding first = document().findings().front();
    const auto mend = std::find_if(
        first.mends.begin(), first.mends.end(), [](const Mend& one) { return one.edit; });
    ASSERT_NE(mend, first.mends.end());
    const int steps = document().undoStack().index();

    ASSERT_TRUE(document().apply(*mend->edit));

    EXPECT_EQ(document().undoStack().index(), steps + 1);
}

TEST_F(MainWindowTest, EveryPageDraws) {
    for (int page = 0; page < 4; ++page) {
        window_.showPage(page);
        QApplication::processEvents();

        const QImage image =
            window_.page(static_cast<MainWindow::PageIndex>(page)).grab().toImage();

        const QRgb corner = image.pixel(2, image.height() - 3);
        int other = 0;
        for (int y = 0; y < image.height(); y += 3) {
            for (int x = 0; x < image.width(); x += 3) {
                other += image.pixel(x, y) != corner ? 1 : 0;
            }
        }
        EXPECT_GT(other, 400) << "page " << page;
    }
}

TEST_F(MainWindowTest, APartPickedInTheDrawingIsPickedInTheList) {
    auto* canvas = static_cast<PieceCanvas*>(window_.page(MainWindow::PiecePageIndex).canvas());
    const auto& items = canvas->items();
    const auto rail = std::find_if(items.begin(), items.end(), [](const CanvasItem& item) {
        return item.name == u"front rail"_s;
    });
    ASSERT_NE(rail, items.end());

    QTest::mouseClick(
        canvas, Qt::LeftButton, Qt::NoModifier, canvas->toScreen(rail->area).center().toPoint());

    auto* tree = window_.findChild<QTreeWidget*>(u"parts"_s);
    ASSERT_NE(tree->currentItem(), nullptr);
    EXPECT_EQ(tree->currentItem()->text(0), u"front rail"_s);
}

TEST_F(MainWindowTest, AssistiveToolsSeeEveryPartOnTheCanvas) {
    QAccessibleInterface* canvas =
        QAccessible::queryAccessibleInterface(window_.page(MainWindow::PiecePageIndex).canvas());
    ASSERT_NE(canvas, nullptr);
    EXPECT_EQ(canvas->role(), QAccessible::Canvas);
    int named = 0;
    for (int i = 0; i < canvas->childCount(); ++i) {
        named += canvas->child(i)->role() == QAccessible::Graphic &&
                 !canvas->child(i)->text(QAccessible::Name).isEmpty();
    }
    EXPECT_EQ(named, static_cast<int>(document().resolved().parts.size()));
}

TEST_F(MainWindowTest, ARodsLineTakesATypedValue) {
    auto* canvas = static_cast<PieceCanvas*>(window_.page(MainWindow::PiecePageIndex).canvas());
    const std::size_t line = lineAtMm(canvas->rod(RodKind::Heights), 425.45);
    QTest::mouseClick(canvas,
                      Qt::LeftButton,
                      Qt::NoModifier,
                      canvas->rodLineAt(RodKind::Heights, line).toPoint());
    auto* field = canvas->findChild<StatementField*>();
    ASSERT_TRUE(field != nullptr && field->isVisible());

    QTest::keyClicks(field, u"17 1/4"_s);
    QTest::keyClick(field, Qt::Key_Return);

    EXPECT_NEAR(testing::measureMm(document(), "seat height"), 438.15, 1e-9);
}

// The seat's line is dragged up by so many pixels as 1/2 in takes.
TEST_F(MainWindowTest, ARodsLineFollowsThePointerAndTheDragIsOneStepToUndo) {
    auto* canvas = static_cast<PieceCanvas*>(window_.page(MainWindow::PiecePageIndex).canvas());
    const std::size_t line = lineAtMm(canvas->rod(RodKind::Heights), 425.45);
    const QPoint from = canvas->rodLineAt(RodKind::Heights, line).toPoint();
    const QPoint to = from - QPoint(0, static_cast<int>(std::lround(12.7 * canvas->scale())));
    const double scale = canvas->scale();
    const int steps = document().undoStack().count();

    QTest::mousePress(canvas, Qt::LeftButton, {}, from);
    QTest::mouseMove(canvas, from - QPoint(0, 40));
    QTest::mouseMove(canvas, to);

    const double now = testing::measureMm(document(), "seat height");
    EXPECT_NEAR(now, 425.45 + 12.7, 0.5 / scale + 0.5 * 25.4 / 16 + 1e-9);
    const std::size_t moved = lineAtMm(canvas->rod(RodKind::Heights), now);
    EXPECT_NEAR(canvas->rodLineAt(RodKind::Heights, moved).y(), to.y(), scale * 25.4 / 32 + 1.5)
        << "it stays under the pointer";
    QTest::mouseRelease(canvas, Qt::LeftButton, {}, to);
    EXPECT_TRUE(canvas->isFitted());
    EXPECT_EQ(document().undoStack().count(), steps + 1);
    document().undoStack().undo();
    EXPECT_NEAR(testing::measureMm(document(), "seat height"), 425.45, 1e-9);
}

TEST_F(MainWindowTest, EscapeTakesADragOfARodsLineBack) {
    auto* canvas = static_cast<PieceCanvas*>(window_.page(MainWindow::PiecePageIndex).canvas());
    const std::size_t line = lineAtMm(canvas->rod(RodKind::Heights), 425.45);
    const QPoint from = canvas->rodLineAt(RodKind::Heights, line).toPoint();
    QTest::mousePress(canvas, Qt::LeftButton, {}, from);
    QTest::mouseMove(canvas, from - QPoint(0, 30));
    ASSERT_GT(testing::measureMm(document(), "seat height"), 425.5);

    QTest::keyClick(canvas, Qt::Key_Escape);

    EXPECT_NEAR(testing::measureMm(document(), "seat height"), 425.45, 1e-9);
    EXPECT_TRUE(canvas->isFitted());
}

TEST_F(MainWindowTest, AJointsSizeIsStatedAndGoesBackToTheRule) {
    const auto joint = document().resolved().findJoint("front rail into front post, left");
    ASSERT_TRUE(joint);
    document().chooseJoint(joint);
    QApplication::processEvents();
    StatementField* field = nullptr;
    for (StatementField* one : window_.findChildren<StatementField*>()) {
        if (one->isVisible() && one->accessibleName() == u"tenon width"_s) {
            field = one;
        }
    }
    ASSERT_NE(field, nullptr);
    const Length byRule = document().resolved().joints[*joint].tenon.width.value;

    field->setFocus(Qt::TabFocusReason);
    QTest::keyClicks(field, u"1 3/4"_s);
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_NEAR(document().resolved().joints[*joint].tenon.width.value.mm(), 44.45, 1e-9);
    EXPECT_EQ(document().resolved().joints[*joint].tenon.width.state, SizeState::Stated);
    field->selectAll();
    QTest::keyClick(field, Qt::Key_Delete);
    QTest::keyClick(field, Qt::Key_Return);

    EXPECT_EQ(document().resolved().joints[*joint].tenon.width.value, byRule);
    EXPECT_EQ(document().resolved().joints[*joint].tenon.width.state, SizeState::ByRule);
}

TEST_F(MainWindowTest, SavesAPdfOfAllParts) {
    window_.showPage(MainWindow::PrintsPageIndex);
    prompts_.path = home_.filePath(u"parts.pdf"_s);

    static_cast<PrintsPage&>(window_.page(MainWindow::PrintsPageIndex)).savePdf();

    QFile pdf(prompts_.path);
    ASSERT_TRUE(pdf.open(QIODevice::ReadOnly));
    EXPECT_TRUE(pdf.read(5) == "%PDF-");
    EXPECT_TRUE(prompts_.told.isEmpty()) << prompts_.told.join(u' ').toStdString();
}

TEST_F(MainWindowTest, ClosingAsksOnceAndCancelKeepsItOpen) {
    state(u"rail thickness"_s, u"1 1/8"_s);
    prompts_.saveAnswer = Prompts::SaveAnswer::Cancel;

    EXPECT_FALSE(window_.close());

    EXPECT_EQ(prompts_.asked, 1);
    EXPECT_TRUE(window_.isVisible());
}

TEST_F(MainWindowTest, ClosingDoesNotAskWhereNothingWasChanged) {
    window_.showPage(MainWindow::JointsPageIndex);

    EXPECT_TRUE(window_.close());

    EXPECT_EQ(prompts_.asked, 0);
}

TEST_F(MainWindowTest, AnUnreadableFileIsToldOfAndThePieceStays) {
    const QString path = home_.filePath(u"broken.shoulder"_s);
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("{\"format\": \"shoulderline piece\", \"version\": 1, ");
    file.close();

    EXPECT_FALSE(window_.openFile(path));

    ASSERT_EQ(prompts_.told.size(), 1);
    EXPECT_TRUE(prompts_.told.front().contains(u"broken.shoulder"_s))
        << prompts_.told.front().toStdString();
    EXPECT_EQ(document().piece().name, "Waiting-room armchair");
}

TEST_F(MainWindowTest, LostWorkIsOpenedAsModified) {
    {
        Document lost(testing::resources());
        Recovery ended(lost, QDir(home_.filePath(u"recovery"_s)));
        lost.start(testing::sample("bench"), {});
        ASSERT_TRUE(lost.apply(SetPieceName{"Lost bench"}));
        ended.writeNow();
    }

    EXPECT_TRUE(window_.offerLostWork());

    EXPECT_EQ(document().piece().name, "Lost bench");
    EXPECT_TRUE(window_.isWindowModified());
}

TEST_F(MainWindowTest, EveryWidgetThatTakesTheFocusHasAName) {
    for (int page = 0; page < 4; ++page) {
        window_.showPage(page);
        QApplication::processEvents();
        for (QWidget* widget : window_.findChildren<QWidget*>()) {
            if (!widget->isVisible() || (widget->focusPolicy() & Qt::TabFocus) == 0) {
                continue;
            }
            QAccessibleInterface* seen = QAccessible::queryAccessibleInterface(widget);
            ASSERT_NE(seen, nullptr);
            EXPECT_FALSE(seen->text(QAccessible::Name).isEmpty())
                << widget->metaObject()->className() << " " << widget->objectName().toStdString();
        }
    }
}

}  // namespace
}  // namespace shoulderline
