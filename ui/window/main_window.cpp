#include "ui/window/main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QFileInfo>
#include <QLocale>
#include <QMimeData>
#include <QScreen>
#include <QSettings>
#include <QStandardPaths>
#include <QStyle>
#include <QUrl>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>
#include <utility>

#include "ui/document/recent_files.h"
#include "ui/look/text.h"
#include "ui/look/theme.h"
#include "ui/pages/joints_page.h"
#include "ui/pages/parts_page.h"
#include "ui/pages/piece_page.h"
#include "ui/pages/prints_page.h"
#include "ui/window/add_part_dialog.h"
#include "ui/window/starter_dialog.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

MainWindow::MainWindow(Resources resources, Prompts& prompts, const QDir& recoveryFolder)
    : prompts_(prompts),
      document_(std::move(resources)),
      recovery_(document_, recoveryFolder),
      glow_(QApplication::style()->styleHint(QStyle::SH_Widget_Animation_Duration) > 0) {
    setObjectName(u"mainWindow"_s);
    setAcceptDrops(true);
    setMinimumSize(900, 600);
    makeCentre();
    makePages();
    makeMenus();
    connect(&document_, &Document::changed, this, [this] {
        if (document_.lastChange().name.isEmpty()) {
            glow_.stop();
        } else {
            glow_.start();
        }
        showTitle();
    });
    connect(&document_, &Document::fileChanged, this, &MainWindow::showTitle);
    connect(findings_, &FindingsStrip::led, this, &MainWindow::leadToChosen);
    restoreLayout();
    showPage(PiecePageIndex);
    showTitle();
    all_[PiecePageIndex]->canvas()->setFocus(Qt::OtherFocusReason);
}

MainWindow::~MainWindow() = default;

void MainWindow::makeCentre() {
    auto* desk = new QWidget(this);
    desk->setObjectName(u"desk"_s);
    auto* layout = new QVBoxLayout(desk);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(1);
    strip_ = new TopStrip(document_, {tr("Piece"), tr("Parts"), tr("Joints"), tr("Prints")}, desk);
    layout->addWidget(strip_);
    down_ = new QSplitter(Qt::Vertical, desk);
    down_->setHandleWidth(1);
    down_->setChildrenCollapsible(false);
    across_ = new QSplitter(Qt::Horizontal, down_);
    across_->setHandleWidth(1);
    across_->setChildrenCollapsible(false);
    stated_ = new StatedColumn(document_, glow_, prompts_, across_);
    stated_->setMinimumWidth(242);
    auto* board = new QWidget(across_);
    board->setObjectName(u"desk"_s);
    board->setAttribute(Qt::WA_StyledBackground);
    auto* boardLayout = new QVBoxLayout(board);
    boardLayout->setContentsMargins(12, 12, 12, 12);
    pages_ = new QStackedWidget(board);
    boardLayout->addWidget(pages_);
    following_ = new FollowingColumn(document_, prompts_, across_);
    following_->setMinimumWidth(320);
    across_->setStretchFactor(0, 0);
    across_->setStretchFactor(1, 1);
    across_->setStretchFactor(2, 0);
    findings_ = new FindingsStrip(document_, prompts_, down_);
    findings_->setMinimumHeight(76);
    down_->setStretchFactor(0, 1);
    down_->setStretchFactor(1, 0);
    layout->addWidget(down_, 1);
    setCentralWidget(desk);
    connect(strip_, &TopStrip::pageChosen, this, &MainWindow::showPage);
    connect(strip_, &TopStrip::renameAsked, this, &MainWindow::renamePiece);
    connect(stated_, &StatedColumn::addPartAsked, this, &MainWindow::addPart);
}

void MainWindow::makePages() {
    all_ = {new PiecePage(document_, glow_, pages_),
            new PartsPage(document_, pages_),
            new JointsPage(document_, pages_),
            new PrintsPage(document_, prompts_, pages_)};
    for (BoardPage* page : all_) {
        page->setAutoFillBackground(true);
        pages_->addWidget(page);
        if (page->canvas() != nullptr) {
            connect(page->canvas(), &Canvas::scaleChanged, this, &MainWindow::showScale);
        }
    }
}

void MainWindow::showPage(int page) {
    pages_->setCurrentIndex(page);
    strip_->setPage(page);
    following_->setGaugesShown(page != JointsPageIndex);
    showScale();
}

void MainWindow::showScale() {
    const Canvas* canvas = all_[static_cast<std::size_t>(pages_->currentIndex())]->canvas();
    if (canvas == nullptr || document_.resolved().parts.empty()) {
        strip_->setScaleText({});
        return;
    }
    const double percent = 100.0 * canvas->scale() / canvas->trueScale();
    strip_->setScaleText(tr("zoom %1 %").arg(std::lround(percent)));
}

void MainWindow::showTitle() {
    const QString name = qt(document_.piece().name);
    setWindowTitle(u"[*]"_s + (name.isEmpty() ? tr("Untitled piece") : name) +
                   u" - Shoulderline"_s);
    setWindowModified(document_.isModified());
    setWindowFilePath(document_.path());
}

void MainWindow::leadToChosen() {
    const bool isOnPrints = pages_->currentIndex() == PrintsPageIndex;
    const bool isOnJoints = pages_->currentIndex() == JointsPageIndex;
    if (isOnPrints || (isOnJoints && !document_.chosenJoint())) {
        showPage(document_.chosenJoint() ? JointsPageIndex : PiecePageIndex);
    }
}

QString MainWindow::folder() const {
    if (!document_.path().isEmpty()) {
        return QFileInfo(document_.path()).absolutePath();
    }
    const QStringList recent = recentFiles();
    return recent.isEmpty() ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation)
                            : QFileInfo(recent.front()).absolutePath();
}

bool MainWindow::mayLeavePiece() {
    if (QWidget* focus = QApplication::focusWidget()) {
        focus->clearFocus();  // what is typed in a field counts
    }
    if (!document_.isModified()) {
        return true;
    }
    switch (prompts_.askSave(this, qt(document_.piece().name))) {
        case Prompts::SaveAnswer::Save:
            return save();
        case Prompts::SaveAnswer::Discard:
            return true;
        case Prompts::SaveAnswer::Cancel:
            return false;
    }
    return false;
}

void MainWindow::newPiece() {
    if (!mayLeavePiece()) {
        return;
    }
    Piece piece;
    piece.name = utf8(tr("Untitled piece"));
    const bool isMetric = QLocale().measurementSystem() == QLocale::MetricSystem;
    piece.unit = isMetric ? Unit::Millimetre : Unit::Inch;
    piece.style = isMetric ? LengthStyle::millimetres(1) : LengthStyle::fractions(16);
    begin(std::move(piece));
}

void MainWindow::newFromStarter() {
    if (!mayLeavePiece()) {
        return;
    }
    StarterDialog dialog(document_.resources(), this);
    if (dialog.exec() == QDialog::Accepted) {
        begin(dialog.piece());
    }
}

void MainWindow::begin(Piece piece) {
    recovery_.forget();
    document_.start(std::move(piece), {});
}

bool MainWindow::openFile(const QString& path) {
    if (!mayLeavePiece()) {
        return false;
    }
    const Result<void> opened = document_.open(QFileInfo(path).absoluteFilePath());
    if (!opened) {
        const Error& error = opened.error();
        prompts_.tell(this,
                      error.where.empty() ? qt(error.message)
                                          : tr("%1: %2").arg(qt(error.where), qt(error.message)));
        if (!QFileInfo::exists(path)) {
            dropRecentFile(path);
        }
        return false;
    }
    recovery_.forget();
    noteRecentFile(path);
    return true;
}

void MainWindow::open() {
    const QString path = prompts_.openPath(this, folder());
    if (!path.isEmpty()) {
        openFile(path);
    }
}

bool MainWindow::save() {
    if (document_.path().isEmpty() || !QFileInfo(document_.path()).isWritable()) {
        return saveAs();
    }
    if (document_.isChangedOnDisk() && !prompts_.askOverwrite(this, document_.path())) {
        return false;
    }
    return saveTo(document_.path());
}

bool MainWindow::saveAs() {
    const QString name = qt(document_.piece().name).simplified().replace(u'/', u'-');
    const QString suggested =
        document_.path().isEmpty() ? folder() + u"/"_s + name + u".shoulder"_s : document_.path();
    const QString path = prompts_.savePath(this, suggested);
    return !path.isEmpty() && saveTo(path);
}

bool MainWindow::saveTo(const QString& path) {
    if (const Result<void> saved = document_.save(path); !saved) {
        prompts_.tell(this,
                      tr("%1 The piece is still open and not saved; Save As puts it elsewhere.")
                          .arg(qt(saved.error().message)));
        return false;
    }
    recovery_.forget();
    noteRecentFile(path);
    return true;
}

bool MainWindow::offerLostWork() {
    for (const LostWork& lost : recovery_.find()) {
        switch (prompts_.askLost(this, lost)) {
            case Prompts::LostAnswer::Open:
                document_.start(lost.piece, lost.path, true);
                recovery_.adopt(lost);
                return true;
            case Prompts::LostAnswer::Discard:
                Recovery::discard(lost);
                break;
            case Prompts::LostAnswer::Later:
                break;
        }
    }
    return false;
}

void MainWindow::renamePiece() {
    const std::optional<QString> name =
        prompts_.askText(this, tr("Rename the piece"), tr("Name"), qt(document_.piece().name));
    if (name && !name->simplified().isEmpty()) {
        static_cast<void>(document_.apply(SetPieceName{utf8(name->simplified())}));
    }
}

void MainWindow::addPart() {
    AddPartDialog dialog(document_.piece(), this);
    if (dialog.exec() != QDialog::Accepted) {
        return;
    }
    const Part part = dialog.part();
    if (const Result<void> done = document_.apply(SetPart{{}, part}); !done) {
        prompts_.tell(this, qt(done.error().message));
        return;
    }
    const std::vector<ResolvedPart>& parts = document_.resolved().parts;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (parts[i].of == part.name) {
            document_.choosePart(i);
            break;
        }
    }
}

void MainWindow::removePart() {
    if (const std::optional<std::size_t> part = document_.chosenPart()) {
        static_cast<void>(document_.apply(RemovePart{document_.resolved().parts[*part].of}));
    }
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (!mayLeavePiece()) {
        event->ignore();
        return;
    }
    recovery_.forget();
    keepLayout();
    event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    const QList<QUrl> urls = event->mimeData()->urls();
    if (urls.size() == 1 && urls.front().isLocalFile() &&
        urls.front().toLocalFile().endsWith(u".shoulder"_s)) {
        event->acceptProposedAction();
    }
}

void MainWindow::dropEvent(QDropEvent* event) {
    event->acceptProposedAction();
    openFile(event->mimeData()->urls().front().toLocalFile());
}

void MainWindow::changeEvent(QEvent* event) {
    QMainWindow::changeEvent(event);
    if (event->type() == QEvent::WindowStateChange) {
        update();
    }
}

void MainWindow::restoreLayout() {
    const QSettings settings;
    if (!restoreGeometry(settings.value(u"window/geometry"_s).toByteArray())) {
        const QSize room = screen()->availableGeometry().size();
        resize(std::min(1440, room.width()), std::min(900, room.height() - 40));
    }
    if (!across_->restoreState(settings.value(u"window/across"_s).toByteArray())) {
        const bool isNarrow = width() < 1200;
        across_->setSizes({isNarrow ? 242 : 278, isNarrow ? 520 : 840, isNarrow ? 320 : 340});
    }
    if (!down_->restoreState(settings.value(u"window/down"_s).toByteArray())) {
        down_->setSizes({740, 104});
    }
}

void MainWindow::keepLayout() const {
    QSettings settings;
    settings.setValue(u"window/geometry"_s, saveGeometry());
    settings.setValue(u"window/across"_s, across_->saveState());
    settings.setValue(u"window/down"_s, down_->saveState());
}

}  // namespace shoulderline
