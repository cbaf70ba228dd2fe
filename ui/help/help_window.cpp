#include "ui/help/help_window.h"

#include <QKeyEvent>
#include <QShortcut>
#include <QSplitter>
#include <QUrl>
#include <QVBoxLayout>

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

HelpWindow::HelpWindow(HelpPages pages, const Resources& resources, QWidget* parent)
    : QDialog(parent), pages_(std::move(pages)) {
    setObjectName(u"help"_s);
    setWindowTitle(tr("Help"));
    auto* layout = new QVBoxLayout(this);
    search_ = new QLineEdit(this);
    search_->setObjectName(u"helpSearch"_s);
    search_->setPlaceholderText(tr("Search"));
    search_->setAccessibleName(tr("search the help"));
    search_->setClearButtonEnabled(true);
    search_->installEventFilter(this);
    layout->addWidget(search_);
    auto* beside = new QSplitter(Qt::Horizontal, this);
    beside->setChildrenCollapsible(false);
    list_ = new QListWidget(beside);
    list_->setObjectName(u"helpList"_s);
    list_->setAccessibleName(tr("pages"));
    text_ = new HelpText(pages_.folder(), resources, beside);
    text_->setObjectName(u"helpText"_s);
    text_->setOpenLinks(false);
    constexpr int kListWidth = 170;
    constexpr int kTextWidth = 520;
    beside->setSizes({kListWidth, kTextWidth});
    beside->setStretchFactor(1, 1);
    layout->addWidget(beside, 1);
    connect(search_, &QLineEdit::textChanged, this, &HelpWindow::search);
    connect(list_, &QListWidget::currentRowChanged, this, &HelpWindow::display);
    connect(text_, &QTextBrowser::anchorClicked, this, &HelpWindow::follow);
    auto* back = new QShortcut(QKeySequence(QKeySequence::Back), this);
    connect(back, &QShortcut::activated, this, &HelpWindow::goBack);
    auto* find = new QShortcut(QKeySequence(QKeySequence::Find), this);
    connect(find, &QShortcut::activated, search_, [this] { search_->setFocus(); });
    resize(720, 560);
    search({});
}

void HelpWindow::search(const QString& wanted) {
    const QString held = shown_;
    const QStringList found = pages_.found(wanted);
    {
        const QSignalBlocker quiet(list_);
        list_->clear();
        for (const QString& name : found) {
            auto* item = new QListWidgetItem(HelpPages::titleOf(name), list_);
            item->setData(Qt::UserRole, name);
        }
    }
    if (found.isEmpty()) {
        text_->setPlainText(tr("No page has \u201c%1\u201d.").arg(wanted.simplified()));
        return;
    }
    const bool stays = wanted.simplified().isEmpty() && found.contains(held);
    list_->setCurrentRow(stays ? static_cast<int>(found.indexOf(held)) : 0);
}

void HelpWindow::showPage(const QString& name) {
    if (!search_->text().isEmpty()) {
        search_->clear();
    }
    const qsizetype at = pages_.names().indexOf(name);
    list_->setCurrentRow(at < 0 ? 0 : static_cast<int>(at));
    list_->setFocus();
}

void HelpWindow::display() {
    const QListWidgetItem* item = list_->currentItem();
    const QString name = item == nullptr ? QString() : item->data(Qt::UserRole).toString();
    if (name.isEmpty() || name == shown_) {
        return;
    }
    if (!shown_.isEmpty()) {
        before_ << shown_;
    }
    shown_ = name;
    text_->setHtml(pages_.page(name));
}

void HelpWindow::follow(const QUrl& link) {
    const QString name = pages_.linked(shown_, link.toString(QUrl::FullyDecoded));
    if (!name.isEmpty()) {
        showPage(name);
    }
}

void HelpWindow::goBack() {
    if (before_.isEmpty()) {
        return;
    }
    const QString name = before_.takeLast();
    showPage(name);
    before_.removeLast();  // the page that was left just now
}

bool HelpWindow::eventFilter(QObject* object, QEvent* event) {
    if (object == search_ && event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Down) {
        list_->setFocus();
        return true;
    }
    return QDialog::eventFilter(object, event);
}

}  // namespace shoulderline
