#include "ui/columns/ripple_list.h"

#include <QHBoxLayout>
#include <set>

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
    rows_ = new QGridLayout;
    rows_->setContentsMargins(0, 0, 0, 0);
    rows_->setHorizontalSpacing(10);
    rows_->setVerticalSpacing(0);
    rows_->setColumnStretch(0, 1);
    layout->addLayout(rows_);
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
    clearLayout(*rows_);
    std::set<std::string> subjects;
    int row = 0;
    for (std::size_t i = 0; i < count; ++i) {
        if (i < shown) {
            if (i == 0 || last.moved[i].subject != last.moved[i - 1].subject) {
                addSubject(last.moved[i], row++);
            }
            addRow(last.moved[i], row++);
        } else {
            subjects.insert(last.moved[i].subject);
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

// The part or joint that the rows below are of; leads to it.
void RippleList::addSubject(const Moved& moved, int row) {
    auto* subject = new TextButton(qt(moved.subject), TextButton::Kind::Plain, this);
    QFont small = subject->font();
    small.setPointSizeF(small.pointSizeF() * 0.92);
    subject->setFont(small);
    subject->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    subject->setToolTip(subject->text());
    connect(subject, &TextButton::clicked, this, [this, part = moved.part, joint = moved.joint] {
        if (joint) {
            document_.chooseJoint(joint);
        } else if (part) {
            document_.choosePart(part);
        }
    });
    rows_->addWidget(subject, row, 0, 1, 3);
    subject->show();
}

void RippleList::addRow(const Moved& moved, int row) {
    const QString before = moved.before ? qt(document_.shown(*moved.before)) : tr("new");
    const QString after = moved.after ? qt(document_.shown(*moved.after)) : tr("gone");
    auto* size = makeSoftLabel(qt(moved.size), 0.92, this);
    size->setContentsMargins(12, 0, 0, 0);
    auto* old = makeSoftLabel(before, 0.92, this);
    QFont struck = old->font();
    struck.setStrikeOut(moved.before.has_value());
    old->setFont(struck);
    auto* now = new QLabel(after, this);
    QFont bold = size->font();
    bold.setWeight(QFont::DemiBold);
    now->setFont(bold);
    QPalette amber = now->palette();
    amber.setColor(QPalette::WindowText, Theme::of(palette()).amber);
    now->setPalette(amber);
    now->setAccessibleName(
        tr("%1, %2: %3, was %4").arg(qt(moved.subject), qt(moved.size), after, before));
    rows_->addWidget(size, row, 0);
    rows_->addWidget(old, row, 1, Qt::AlignRight);
    rows_->addWidget(now, row, 2, Qt::AlignRight);
    for (QLabel* label : {size, old, now}) {
        label->show();
    }
}

}  // namespace shoulderline
