#pragma once

#include <QMainWindow>
#include <QMenu>
#include <QSplitter>
#include <QStackedWidget>
#include <functional>
#include <vector>

#include "ui/columns/columns.h"
#include "ui/columns/findings_strip.h"
#include "ui/document/document.h"
#include "ui/document/recovery.h"
#include "ui/help/help_window.h"
#include "ui/look/afterglow.h"
#include "ui/pages/board_page.h"
#include "ui/prompts/prompts.h"
#include "ui/window/top_strip.h"

namespace shoulderline {

// The window on one piece.
class MainWindow final : public QMainWindow {
    Q_OBJECT
  public:
    enum PageIndex { PiecePageIndex, PartsPageIndex, JointsPageIndex, PrintsPageIndex };

    // `recoveryFolder` is where snapshots of unsaved work go.
    MainWindow(Resources resources, Prompts& prompts, const QDir& recoveryFolder);
    ~MainWindow() override;

    [[nodiscard]] Document& document() { return document_; }
    [[nodiscard]] BoardPage& page(PageIndex page) const { return *all_[page]; }
    void showPage(int page);
    // Opens a file in the place of the piece, asking for unsaved work first. False if it was not
    // opened.
    bool openFile(const QString& path);
    // Offers work that was not saved when the program ended; true if some was opened.
    bool offerLostWork();

  protected:
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    void changeEvent(QEvent* event) override;

  private:
    void makeCentre();
    void makePages();
    void makeMenus();
    void makeFileMenu();
    void makeEditMenu();
    void makeViewMenu();
    void makeHelpMenu();
    void makePaneKeys();
    QAction* addTo(QMenu& menu,
                   const QString& text,
                   const QList<QKeySequence>& keys,
                   std::function<void()> act);

    void newPiece();
    void newFromStarter();
    void begin(Piece piece);
    void open();
    bool save();
    bool saveAs();
    bool saveTo(const QString& path);
    [[nodiscard]] bool mayLeavePiece();
    void renamePiece();
    void addPart();
    void removePart();
    void showRecent();
    void showTitle();
    void showScale();
    void leadToChosen();
    void chooseTheme(const QString& name);
    void showStrengthHelp();
    void showJointHelp();
    void settleJoints();
    void showAbout();
    void showShortcuts();
    void focusNextPane(bool isBack);
    void restoreLayout();
    void keepLayout() const;
    [[nodiscard]] QString folder() const;

    Prompts& prompts_;
    Document document_;
    Recovery recovery_;
    Afterglow glow_;
    TopStrip* strip_ = nullptr;
    StatedColumn* stated_ = nullptr;
    FollowingColumn* following_ = nullptr;
    FindingsStrip* findings_ = nullptr;
    QStackedWidget* pages_ = nullptr;
    std::vector<BoardPage*> all_;
    QSplitter* across_ = nullptr;
    QSplitter* down_ = nullptr;
    QMenu* recent_ = nullptr;
    HelpWindow* help_ = nullptr;  // made when first asked for
};

}  // namespace shoulderline
