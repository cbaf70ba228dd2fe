#include <QAction>
#include <QActionGroup>
#include <QApplication>
#include <QFileInfo>
#include <QMenuBar>
#include <QMessageBox>
#include <QSettings>
#include <utility>

#include "ui/columns/settle_dialog.h"
#include "ui/columns/survey_dialog.h"
#include "ui/document/recent_files.h"
#include "ui/look/text.h"
#include "ui/look/theme.h"
#include "ui/pages/prints_page.h"
#include "ui/window/main_window.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

QAction* MainWindow::addTo(QMenu& menu,
                           const QString& text,
                           const QList<QKeySequence>& keys,
                           std::function<void()> act) {
    QAction* action = menu.addAction(text);
    action->setShortcuts(keys);
    connect(action, &QAction::triggered, this, std::move(act));
    return action;
}

void MainWindow::makeMenus() {
    makeFileMenu();
    makeEditMenu();
    makeViewMenu();
    makeHelpMenu();
    makePaneKeys();
}

void MainWindow::makeFileMenu() {
    QMenu& file = *menuBar()->addMenu(tr("&File"));
    addTo(file, tr("&New"), {QKeySequence::New}, [this] { newPiece(); });
    addTo(file, tr("New from a S&tarter…"), {QKeySequence(u"Ctrl+Shift+N"_s)}, [this] {
        newFromStarter();
    });
    addTo(file, tr("&Open…"), {QKeySequence::Open}, [this] { open(); });
    recent_ = file.addMenu(tr("Open &Recent"));
    connect(recent_, &QMenu::aboutToShow, this, &MainWindow::showRecent);
    connect(&file, &QMenu::aboutToShow, this, [this] {
        recent_->setEnabled(!recentFiles().isEmpty());
    });
    file.addSeparator();
    addTo(file, tr("&Save"), {QKeySequence::Save}, [this] { save(); });
    addTo(file, tr("Save &As…"), {QKeySequence(u"Ctrl+Shift+S"_s)}, [this] { saveAs(); });
    file.addSeparator();
    addTo(file, tr("&Print…"), {QKeySequence::Print}, [this] {
        showPage(PrintsPageIndex);
        static_cast<PrintsPage*>(all_[PrintsPageIndex])->print();
    });
    file.addSeparator();
    addTo(file, tr("&Quit"), {QKeySequence(u"Ctrl+Q"_s), QKeySequence(u"Ctrl+W"_s)}, [this] {
        close();
    });
}

void MainWindow::showRecent() {
    recent_->clear();
    int number = 1;
    for (const QString& path : recentFiles()) {
        QAction* action = recent_->addAction(
            u"&%1  %2"_s.arg(number++).arg(QFileInfo(path).fileName()), this, [this, path] {
                openFile(path);
            });
        action->setToolTip(path);
        action->setEnabled(QFileInfo::exists(path));
    }
    recent_->addSeparator();
    recent_->addAction(tr("&Clear"), this, [] { clearRecentFiles(); });
}

void MainWindow::makeEditMenu() {
    QMenu& edit = *menuBar()->addMenu(tr("&Edit"));
    QAction* undo = document_.undoStack().createUndoAction(this, tr("&Undo"));
    undo->setShortcuts(QKeySequence::Undo);
    QAction* redo = document_.undoStack().createRedoAction(this, tr("&Redo"));
    redo->setShortcuts({QKeySequence(u"Ctrl+Shift+Z"_s), QKeySequence(u"Ctrl+Y"_s)});
    edit.addAction(undo);
    edit.addAction(redo);
    edit.addSeparator();
    addTo(edit, tr("Rename the &Piece…"), {}, [this] { renamePiece(); });
    edit.addSeparator();
    addTo(edit, tr("&Add Part…"), {QKeySequence(u"Ctrl+Shift+A"_s)}, [this] { addPart(); });
    QAction* remove = addTo(edit, tr("Re&move Part"), {}, [this] { removePart(); });
    edit.addSeparator();
    addTo(edit, tr("Add &Measure…"), {QKeySequence(u"Ctrl+M"_s)}, [this] {
        stated_->measures().add();
    });
    QAction* rename = addTo(edit, tr("R&ename Measure…"), {QKeySequence(u"F2"_s)}, [this] {
        stated_->measures().renameCurrent();
    });
    QAction* note =
        addTo(edit, tr("&Note on Measure…"), {}, [this] { stated_->measures().noteCurrent(); });
    QAction* drop =
        addTo(edit, tr("Remo&ve Measure"), {}, [this] { stated_->measures().removeCurrent(); });
    addTo(
        edit, tr("Survey of an &Original…"), {}, [this] { SurveyDialog(document_, this).exec(); });
    edit.addSeparator();
    addTo(edit, tr("Add &Stock…"), {}, [this] { stated_->stocks().add(); });
    edit.addSeparator();
    addTo(edit, tr("Settle &Joints…"), {QKeySequence(u"Ctrl+J"_s)}, [this] { settleJoints(); });
    connect(&edit, &QMenu::aboutToShow, this, [this, remove, rename, note, drop] {
        remove->setEnabled(document_.chosenPart().has_value());
        const bool hasMeasure = !stated_->measures().current().empty();
        for (QAction* action : {rename, note, drop}) {
            action->setEnabled(hasMeasure);
        }
    });
    connect(&edit, &QMenu::aboutToHide, this, [remove, rename, note, drop] {
        for (QAction* action : {remove, rename, note, drop}) {
            action->setEnabled(true);  // their keys work with the menu closed
        }
    });
}

void MainWindow::makeViewMenu() {
    QMenu& view = *menuBar()->addMenu(tr("&View"));
    const QString names[] = {tr("&Piece"), tr("P&arts"), tr("&Joints"), tr("P&rints")};
    for (int i = 0; i < 4; ++i) {
        addTo(view, names[i], {QKeySequence(u"Ctrl+%1"_s.arg(i + 1))}, [this, i] { showPage(i); });
    }
    view.addSeparator();
    const auto canvas = [this]() -> Canvas* {
        return all_[static_cast<std::size_t>(pages_->currentIndex())]->canvas();
    };
    const auto onCanvas = [canvas](void (*act)(Canvas&)) {
        return [canvas, act] {
            if (Canvas* one = canvas()) {
                act(*one);
            }
        };
    };
    addTo(view,
          tr("Zoom &In"),
          {QKeySequence(u"Ctrl++"_s), QKeySequence(u"Ctrl+="_s)},
          onCanvas([](Canvas& c) { c.zoomBy(1.2); }));
    addTo(view, tr("Zoom &Out"), {QKeySequence(u"Ctrl+-"_s)}, onCanvas([](Canvas& c) {
              c.zoomBy(1 / 1.2);
          }));
    addTo(view, tr("&Fit"), {QKeySequence(u"Ctrl+0"_s)}, onCanvas([](Canvas& c) { c.fit(); }));
    addTo(view, tr("&True Size"), {QKeySequence(u"Ctrl+Shift+0"_s)}, onCanvas([](Canvas& c) {
              c.showTrueSize();
          }));
    view.addSeparator();
    QMenu& colours = *view.addMenu(tr("&Colours"));
    auto* group = new QActionGroup(this);
    const QString now = QSettings().value(u"window/colours"_s, u"system"_s).toString();
    const std::pair<QString, QString> themes[] = {
        {u"system"_s, tr("As the &System")}, {u"light"_s, tr("&Light")}, {u"dark"_s, tr("&Dark")}};
    for (const auto& theme : themes) {
        const QString name = theme.first;
        QAction* action =
            colours.addAction(theme.second, this, [this, name] { chooseTheme(name); });
        action->setCheckable(true);
        action->setChecked(name == now);
        group->addAction(action);
    }
    addTo(view, tr("Full &Screen"), {QKeySequence(u"F11"_s)}, [this] {
        setWindowState(windowState() ^ Qt::WindowFullScreen);
    });
}

void MainWindow::chooseTheme(const QString& name) {
    QSettings().setValue(u"window/colours"_s, name);
    const bool isDark =
        name == u"dark"_s || (name == u"system"_s && qApp->property("systemIsDark").toBool());
    const Theme theme = isDark ? Theme::dark() : Theme::light();
    QApplication::setPalette(theme.palette());
    qApp->setStyleSheet(theme.styleSheet());
    update();
}

void MainWindow::makeHelpMenu() {
    QMenu& help = *menuBar()->addMenu(tr("&Help"));
    addTo(help, tr("&Joints"), {QKeySequence(u"F1"_s)}, [this] { showJointHelp(); });
    addTo(help, tr("&Keys"), {QKeySequence(u"Shift+F1"_s)}, [this] { showShortcuts(); });
    addTo(help, tr("&Strength and Movement"), {}, [this] { showStrengthHelp(); });
    addTo(help, tr("&About Shoulderline"), {}, [this] { showAbout(); });
}

// Opens at the family of the chosen joint, where one is chosen.
void MainWindow::showJointHelp() {
    if (help_ == nullptr) {
        help_ = new HelpWindow(HelpPages(), document_.resources(), this);
    }
    const std::optional<std::size_t> joint = document_.chosenJoint();
    if (joint) {
        help_->showWord(qt(wordFor(document_.resolved().joints[*joint].kind)));
    }
    help_->show();
    help_->raise();
    help_->activateWindow();
}

void MainWindow::settleJoints() {
    SettleDialog dialog(document_, this);
    dialog.exec();
}

void MainWindow::showShortcuts() {
    QMessageBox box(QMessageBox::NoIcon, tr("Keys"), QString(), QMessageBox::Close, this);
    box.setTextFormat(Qt::RichText);
    box.setText(
        tr("<h3>Keys</h3><table cellpadding='3'>"
           "<tr><td>Ctrl+1 … Ctrl+4</td><td>Piece, Parts, Joints, Prints</td></tr>"
           "<tr><td>F1, Shift+F1</td><td>help on the chosen joint, these keys</td></tr>"
           "<tr><td>Ctrl+Shift+N</td><td>new from a starter</td></tr>"
           "<tr><td>Ctrl+J</td><td>settle the joints that meet</td></tr>"
           "<tr><td>F6, Shift+F6</td><td>next pane, pane before</td></tr>"
           "<tr><td>Ctrl+Z, Ctrl+Shift+Z or Ctrl+Y</td><td>undo, redo</td></tr>"
           "<tr><td>Enter, Esc in a field</td><td>take it, bring the old value back</td></tr>"
           "<tr><td>Up, Down in a field</td><td>a step; Page Up, Page Down: eight steps</td></tr>"
           "<tr><td>+ 1/16 in a joint's size</td><td>a sixteenth over what the rule gives</td></tr>"
           "<tr><td>Tab, Enter in a drawing</td><td>next part, choose it</td></tr>"
           "<tr><td>Page Up, Page Down, Enter there</td><td>lines of the rods, state one "
           "anew</td></tr>"
           "<tr><td>+ - 0 and arrows there</td><td>zoom, fit, move about</td></tr>"
           "<tr><td>Ctrl+wheel, middle button, Space and drag</td><td>the same with the "
           "mouse</td></tr>"
           "</table><p>Unsaved work is kept aside within seconds of each change and offered again "
           "after a crash.</p>"));
    box.exec();
}

void MainWindow::showStrengthHelp() {
    QMessageBox box(
        QMessageBox::NoIcon, tr("Strength and Movement"), QString(), QMessageBox::Close, this);
    box.setTextFormat(Qt::RichText);
    box.setText(
        tr("<h3>Strength</h3><p>The Joints page compares joints. What one bears is a range: from "
           "where "
           "the weakest of glue face, tenon with its shoulder, and mortise wall first yields, to "
           "the "
           "most that it can give. Figures are shown only where tests cover the joint: published "
           "ones, "
           "or your own, stated beside it. Elsewhere joints are ranked.</p>"
           "<p>Loads come from published standards where the piece has a seat (a part of that "
           "role, or "
           "a measure named seat height), and from you. They are carried to the joints by statics. "
           "<i>Worked</i> is what the hardest load asks over what counts of the joint's strength: "
           "a "
           "share of it, smaller for loads that come many times over.</p>"
           "<p><b>%1</b></p>"
           "<h3>Movement</h3><p>Wood moves across its grain with the moisture in the air. The "
           "driest "
           "and dampest air of the year are stated from a part's movement line; each part's "
           "movement "
           "follows from its species, cut and size.</p>")
            .arg(qt(document_.resources().strength.caution())));
    box.exec();
}

void MainWindow::showAbout() {
    QMessageBox::about(this,
                       tr("About Shoulderline"),
                       tr("<h3>Shoulderline %1</h3><p>Plans framed furniture: state the piece in "
                          "the terms of the trade, and "
                          "every tenon, mortise and shoulder follows.</p><p>Its figures are for "
                          "planning and comparing. "
                          "They certify nothing: a piece that has to carry people is for the "
                          "maker, the codes that hold "
                          "where it stands, and licensed practice to judge.</p>")
                           .arg(QApplication::applicationVersion()));
}

void MainWindow::makePaneKeys() {
    for (const bool isBack : {false, true}) {
        auto* action = new QAction(this);
        action->setShortcut(QKeySequence(isBack ? u"Shift+F6"_s : u"F6"_s));
        connect(action, &QAction::triggered, this, [this, isBack] { focusNextPane(isBack); });
        addAction(action);
    }
}

void MainWindow::focusNextPane(bool isBack) {
    QWidget* const panes[] = {strip_, stated_, pages_->currentWidget(), following_, findings_};
    constexpr int kCount = 5;
    int now = 0;
    for (int i = 0; i < kCount; ++i) {
        if (panes[i]->isAncestorOf(QApplication::focusWidget())) {
            now = i;
        }
    }
    for (int step = 1; step <= kCount; ++step) {
        QWidget* pane = panes[(now + (isBack ? kCount - step : step)) % kCount];
        for (QWidget* widget : pane->findChildren<QWidget*>()) {
            if (widget->isVisible() && widget->isEnabled() &&
                (widget->focusPolicy() & Qt::TabFocus) != 0) {
                widget->setFocus(Qt::ShortcutFocusReason);
                return;
            }
        }
    }
}

}  // namespace shoulderline
