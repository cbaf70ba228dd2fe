#include "ui/fields/field_note.h"

#include <QAccessible>
#include <QFontMetrics>
#include <QPainter>
#include <algorithm>

#include "ui/look/theme.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

FieldNote::FieldNote(QWidget* window) : QLabel(window) {
    setObjectName(u"fieldNote"_s);
    setWordWrap(true);
    setMargin(7);
    setAttribute(Qt::WA_TransparentForMouseEvents);
}

FieldNote* FieldNote::show(QWidget& field, FieldNote* note, const QString& text, Kind kind) {
    if (note == nullptr) {
        note = new FieldNote(field.window());
    }
    note->kind_ = kind;
    note->setText(text);
    note->setAccessibleName(text);
    const Theme theme = Theme::of(field.palette());
    QPalette palette = note->palette();
    palette.setColor(QPalette::WindowText, kind == Kind::Refusal ? theme.brick : theme.softInk);
    note->setPalette(palette);
    note->place(field);
    note->QLabel::show();
    note->raise();
    if (kind == Kind::Refusal) {
        QAccessibleEvent event(note, QAccessible::Alert);
        QAccessible::updateAccessibility(&event);
    }
    return note;
}

void FieldNote::place(const QWidget& field) {
    const QWidget* parent = parentWidget();
    const int widest = std::min(340, parent->width() - 16);
    const int oneLine = fontMetrics().horizontalAdvance(text()) + 2 * margin() + 4;
    const int width = std::min(oneLine, widest);
    resize(width, std::max(heightForWidth(width), fontMetrics().height() + 2 * margin()));
    const QPoint below = field.mapTo(parent, QPoint(0, field.height() + 3));
    int y = below.y();
    if (y + height() > parent->height() - 4) {
        y = field.mapTo(parent, QPoint(0, 0)).y() - height() - 3;
    }
    move(std::clamp(below.x(), 8, std::max(8, parent->width() - width - 8)), y);
}

void FieldNote::paintEvent(QPaintEvent* event) {
    const Theme theme = Theme::of(palette());
    {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(kind_ == Kind::Refusal ? theme.brick : theme.fieldEdge, 1));
        painter.setBrush(theme.paper);
        painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 4, 4);
    }
    QLabel::paintEvent(event);
}

}  // namespace shoulderline
