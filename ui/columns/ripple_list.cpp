#include "ui/columns/ripple_list.h"

#include <QHBoxLayout>
#include <set>

#include "ui/look/label.h"
#include "ui/look/text.h"
#include "ui/look/theme.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr std::size_t kFirst = 6;

}  // namespace

RippleList::RippleList(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    heading_ = new SectionHeading(tr("What moved"), this);
    layout->addWidget(heading_);
    nothing_ = makeSoftLabel(tr("Nothing has been changed yet."), 0.92, this);
    layout->addWidget(nothing_);
    grid_ = new QGridLayout;
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(10);
    grid_->setVerticalSpacing(0);
    grid_->setColumnStretch(0, 1);
    layout->addLayout(grid_);
    auto* foot = new QHBoxLayout;
    more_ = new TextButton({}, TextButton::Kind::Action, this);
    more_->setBold(false);
    takeBack_ = new TextButton(tr("take back"), TextButton::Kind::Action, this);
    takeBack_->setAccessibleName(tr("take back the last change"));
    for (TextButton* button : {more_, takeBack_}) {
        QFont font = button->font();
        font.setPointSizeF(font.pointSizeF() * 0.92);
        button->setFont(font);
    }
    foot->addWidget(more_);
    foot->addStretch(1);
    foot->addWidget(takeBack_);
    layout->addLayout(foot);
    connect(takeBack_, &TextButton::clicked, &document_.undoStack(), &QUndoStack::undo);
    connect(more_, &TextButton::clicked, this, [this] {
        showsAll_ = !showsAll_;
        refresh();
    });
    connect(&document_, &Document::changed, this, &RippleList::refresh);
    refresh();
}

void RippleList::refresh() {
    if (generation_ != document_.generation()) {
        generation_ = document_.generation();
        showsAll_ = false;
    }
    const LastChange& last = document_.lastChange();
    const std::size_t count = last.moved.size();
    const std::size_t shown = showsAll_ ? count : std::min(count, kFirst);
    while (rows_.size() < shown) {
        rows_.push_back(makeRow(rows_.size()));
    }
    std::set<std::string> subjects;
    for (std::size_t i = 0; i < count; ++i) {
        const Moved& moved = last.moved[i];
        if (i < shown) {
            showRow(rows_[i], moved, i == 0 || moved.subject != last.moved[i - 1].subject);
        } else {
            subjects.insert(moved.subject);
        }
    }
    for (std::size_t i = shown; i < rows_.size(); ++i) {
        rows_[i].subject->hide();
        for (QLabel* label : {rows_[i].size, rows_[i].old, rows_[i].now}) {
            label->hide();
        }
    }
    const bool isNew = last.name.isEmpty();
    QString aside = last.name;
    if (!last.before.isEmpty() && last.before != last.after) {
        aside += u" "_s + last.before + u" → "_s + last.after;
    }
    heading_->setAside(isNew ? QString() : last.isUndo ? tr("taken back: %1").arg(aside) : aside);
    nothing_->setText(isNew ? tr("Nothing has been changed yet.")
                            : tr("No size of a part or joint moved."));
    nothing_->setVisible(count == 0);
    more_->setVisible(count > kFirst);
    more_->setText(
        showsAll_
            ? tr("fewer")
            : tr("and %1 more in %n parts and joints", nullptr, static_cast<int>(subjects.size()))
                  .arg(count - shown));
    takeBack_->setVisible(!isNew && !last.isUndo);
}

// The widgets of the size told `at` that place.
RippleList::Row RippleList::makeRow(std::size_t at) {
    Row row{};
    row.subject = new TextButton({}, TextButton::Kind::Plain, this);
    QFont small = row.subject->font();
    small.setPointSizeF(small.pointSizeF() * 0.92);
    row.subject->setFont(small);
    row.subject->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    connect(row.subject, &TextButton::clicked, this, [this, at] {
        lead(document_.lastChange().moved[at]);
    });
    row.size = makeSoftLabel({}, 0.92, this);
    row.size->setContentsMargins(12, 0, 0, 0);
    row.old = makeSoftLabel({}, 0.92, this);
    row.now = new Label(this);
    QFont bold = row.size->font();
    bold.setWeight(QFont::DemiBold);
    row.now->setFont(bold);
    const int line = 2 * static_cast<int>(at);
    grid_->addWidget(row.subject, line, 0, 1, 3);
    grid_->addWidget(row.size, line + 1, 0);
    grid_->addWidget(row.old, line + 1, 1, Qt::AlignRight);
    grid_->addWidget(row.now, line + 1, 2, Qt::AlignRight);
    return row;
}

void RippleList::showRow(const Row& row, const Moved& moved, bool isFirstOfSubject) {
    const QString before = moved.before ? qt(document_.shown(*moved.before)) : tr("new");
    const QString after = moved.after ? qt(document_.shown(*moved.after)) : tr("gone");
    row.subject->setText(qt(moved.subject));
    row.subject->setToolTip(row.subject->text());
    row.size->setText(qt(moved.size));
    row.old->setText(before);
    QFont struck = row.old->font();
    if (struck.strikeOut() != moved.before.has_value()) {
        struck.setStrikeOut(moved.before.has_value());
        row.old->setFont(struck);
    }
    row.now->setText(after);
    setInk(*row.now, Theme::of(palette()).amber);
    row.now->setAccessibleName(
        tr("%1, %2: %3, was %4").arg(qt(moved.subject), qt(moved.size), after, before));
    row.subject->setVisible(isFirstOfSubject);
    for (QLabel* label : {row.size, row.old, row.now}) {
        label->show();
    }
}

// Leads to the part or joint that moved.
void RippleList::lead(const Moved& moved) {
    if (moved.joint) {
        document_.chooseJoint(moved.joint);
    } else if (moved.part) {
        document_.choosePart(moved.part);
    }
}

}  // namespace shoulderline
