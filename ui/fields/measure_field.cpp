#include "ui/fields/measure_field.h"

#include <QKeyEvent>
#include <QPainter>
#include <QWheelEvent>
#include <algorithm>

#include "ui/look/text.h"
#include "ui/look/theme.h"

namespace shoulderline {

namespace {

constexpr int kLargeStep = 8;
constexpr int kWheelNotch = 120;

}  // namespace

MeasureField::MeasureField(QWidget* parent) : QLineEdit(parent) {
    setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    setFocusPolicy(Qt::StrongFocus);
    setMaxLength(1000);
    setContextMenuPolicy(Qt::DefaultContextMenu);
    connect(this, &QLineEdit::textEdited, this, &MeasureField::showPreview);
}

MeasureField::~MeasureField() {
    if (note_ != nullptr) {
        note_->deleteLater();
    }
}

void MeasureField::setStateWord(const QString& word) {
    if (word != stateWord_) {
        stateWord_ = word;
        setAccessibleDescription(word);
        update();
    }
}

QString MeasureField::refusal() const {
    return note_ != nullptr && note_->isVisibleTo(note_->parentWidget()) ? refusal_ : QString();
}

void MeasureField::refresh() {
    if (hasFocus() && isModified()) {
        return;
    }
    const QString wanted = hasFocus() ? editingText() : restingText();
    if (wanted != text()) {
        const bool wasAllSelected = hasSelectedText() && selectedText() == text();
        setText(wanted);
        if (hasFocus() && wasAllSelected) {
            selectAll();
        }
        setCursorPosition(hasFocus() ? cursorPosition() : 0);
    }
    setModified(false);
}

void MeasureField::commit(bool isLeaving) {
    if (!isModified()) {
        return;
    }
    const Result<void> done = commitText(text(), Manner::Typed);
    if (!done) {
        refuse(done.error());
        if (isLeaving) {
            setModified(false);
            setText(restingText());
        }
        return;
    }
    setModified(false);
    hideNote();
    refresh();
    if (!isLeaving) {
        selectAll();
    }
}

void MeasureField::step(int steps) {
    if (isModified()) {
        commit(false);
        if (isModified()) {
            return;
        }
    }
    const Result<QString> next = stepped(steps);
    if (!next) {
        refuse(next.error());
        return;
    }
    if (const Result<void> done = commitText(*next, Manner::Step); !done) {
        refuse(done.error());
        return;
    }
    hideNote();
    setModified(false);
    refresh();
    selectAll();
}

void MeasureField::putBack() {
    setModified(false);
    setText(editingText());
    selectAll();
    hideNote();
}

void MeasureField::refuse(const Error& error) {
    refusal_ = qt(error.message);
    if (!refusal_.isEmpty()) {
        refusal_[0] = refusal_[0].toUpper();
    }
    note_ = FieldNote::show(*this, note_, refusal_, FieldNote::Kind::Refusal);
    if (hasFocus() && isModified()) {
        // The cursor goes to the first wrong character.
        const QByteArray bytes = text().toUtf8();
        const auto at = std::min(static_cast<qsizetype>(error.position), bytes.size());
        setCursorPosition(static_cast<int>(QString::fromUtf8(bytes.left(at)).size()));
    }
}

void MeasureField::hideNote() {
    refusal_.clear();
    if (note_ != nullptr) {
        note_->hide();
    }
}

void MeasureField::showPreview() {
    const QString comes = preview(text());
    if (comes.isEmpty()) {
        hideNote();
    } else {
        refusal_.clear();
        note_ = FieldNote::show(*this, note_, comes, FieldNote::Kind::Preview);
    }
}

bool MeasureField::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && !isModified()) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
            // Nothing typed here to undo: the piece's own undo takes it.
            event->ignore();
            return false;
        }
    }
    return QLineEdit::event(event);
}

void MeasureField::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            commit(false);
            burstEnded();
            return;
        case Qt::Key_Escape:
            if (isModified() || !refusal_.isEmpty()) {
                putBack();
                return;
            }
            event->ignore();
            return;
        case Qt::Key_Up:
            step(1);
            return;
        case Qt::Key_Down:
            step(-1);
            return;
        case Qt::Key_PageUp:
            step(kLargeStep);
            return;
        case Qt::Key_PageDown:
            step(-kLargeStep);
            return;
        default:
            QLineEdit::keyPressEvent(event);
    }
}

void MeasureField::focusInEvent(QFocusEvent* event) {
    QLineEdit::focusInEvent(event);
    refresh();
    if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason) {
        selectAll();
        hasJustEntered_ = event->reason() == Qt::MouseFocusReason;
    }
}

void MeasureField::focusOutEvent(QFocusEvent* event) {
    const bool isGone = event->reason() != Qt::PopupFocusReason;
    if (isGone) {
        if (isModified()) {
            commit(true);
        } else {
            hideNote();
        }
        burstEnded();
    }
    QLineEdit::focusOutEvent(event);
    if (isGone && !isModified()) {
        refresh();
        deselect();
        setCursorPosition(0);
    }
}

void MeasureField::mousePressEvent(QMouseEvent* event) {
    QLineEdit::mousePressEvent(event);
    if (hasJustEntered_) {
        selectAll();  // the click that brought the focus would have dropped the selection
    }
}

void MeasureField::mouseReleaseEvent(QMouseEvent* event) {
    if (hasJustEntered_) {
        hasJustEntered_ = false;
        if (!hasSelectedText()) {
            selectAll();
        }
        return;
    }
    QLineEdit::mouseReleaseEvent(event);
}

void MeasureField::wheelEvent(QWheelEvent* event) {
    if (!hasFocus()) {
        event->ignore();  // scrolls what the field lies in
        return;
    }
    wheelLeft_ += event->angleDelta().y();
    const int notches = wheelLeft_ / kWheelNotch;
    wheelLeft_ -= notches * kWheelNotch;
    if (notches != 0) {
        step(notches);
    }
    event->accept();
}

void MeasureField::paintEvent(QPaintEvent* event) {
    QLineEdit::paintEvent(event);
    if (stateWord_.isEmpty() || hasFocus()) {
        return;
    }
    QFont small = font();
    small.setPointSizeF(small.pointSizeF() * 0.84);
    const QFontMetrics metrics(small);
    const int taken =
        fontMetrics().horizontalAdvance(text()) + metrics.horizontalAdvance(stateWord_);
    if (taken + 22 > width()) {
        return;
    }
    QPainter painter(this);
    painter.setFont(small);
    painter.setPen(Theme::of(palette()).softInk);
    painter.drawText(rect().adjusted(8, 0, -8, 0), Qt::AlignLeft | Qt::AlignVCenter, stateWord_);
}

}  // namespace shoulderline
