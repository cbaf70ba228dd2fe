#include "ui/look/text_button.h"

#include <QFontMetrics>
#include <QKeyEvent>
#include <QPainter>

#include "ui/look/theme.h"

namespace shoulderline {

namespace {

constexpr int kEdge = 2;
constexpr int kPageEdge = 10;

}  // namespace

TextButton::TextButton(const QString& text, Kind kind, QWidget* parent)
    : QAbstractButton(parent), kind_(kind) {
    setText(text);
    setCursor(Qt::PointingHandCursor);
    setFocusPolicy(Qt::StrongFocus);
    setCheckable(kind == Kind::Page);
    setAutoExclusive(kind == Kind::Page);
    bold_ = kind == Kind::Action;
    if (kind == Kind::Page) {
        alignment_ = Qt::AlignHCenter;
    }
}

void TextButton::setWordWrap(bool wraps) {
    wraps_ = wraps;
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
    policy.setHeightForWidth(wraps);
    setSizePolicy(policy);
}

void TextButton::setBold(bool bold) {
    bold_ = bold;
    updateGeometry();
    update();
}

void TextButton::setAlignment(Qt::Alignment alignment) {
    alignment_ = alignment;
    update();
}

QFont TextButton::shownFont() const {
    QFont shown = font();
    if (kind_ == Kind::Page) {
        shown.setWeight(QFont::DemiBold);
    } else if (bold_) {
        shown.setWeight(QFont::DemiBold);
    }
    return shown;
}

int TextButton::flags() const {
    return static_cast<int>(alignment_ | Qt::AlignVCenter) |
           (wraps_ ? static_cast<int>(Qt::TextWordWrap) : 0);
}

RememberedSizes& TextButton::sizes() const {
    sizes_.look({text(), shownFont(), {}, wraps_});
    return sizes_;
}

QSize TextButton::sizeHint() const {
    return sizes().hint([&] {
        const QFontMetrics metrics(shownFont());
        const int edge = kind_ == Kind::Page ? kPageEdge : kEdge;
        const int height = metrics.height() + (kind_ == Kind::Page ? 18 : 6);
        return QSize(metrics.horizontalAdvance(text()) + 2 * edge + 1, height);
    });
}

QSize TextButton::minimumSizeHint() const {
    return wraps_ ? QSize(60, sizeHint().height()) : sizeHint();
}

int TextButton::heightForWidth(int width) const {
    return sizes().height(width, [&] {
        const QRect inside(0, 0, width - 2 * kEdge, 10000);
        return QFontMetrics(shownFont()).boundingRect(inside, flags(), text()).height() + 6;
    });
}

void TextButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Theme theme = Theme::of(palette());
    QFont shown = shownFont();
    const bool isLit = isEnabled() && (underMouse() || hasFocus());
    if (kind_ != Kind::Page && isLit) {
        shown.setUnderline(true);
    }
    painter.setFont(shown);
    const bool isTeal = kind_ == Kind::Action || (kind_ == Kind::Page && isChecked());
    painter.setPen(!isEnabled() || kind_ == Kind::Quiet ? theme.softInk
                   : isTeal                             ? theme.teal
                                                        : theme.ink);
    const int edge = kind_ == Kind::Page ? kPageEdge : kEdge;
    const QRect inside = rect().adjusted(edge, 0, -edge, 0);
    const QString shownText =
        wraps_ ? text()
               : painter.fontMetrics().elidedText(text(), Qt::ElideRight, inside.width() + 1);
    painter.drawText(inside, flags(), shownText);
    if (kind_ == Kind::Page && (isChecked() || isLit)) {
        const QColor line = isChecked() ? theme.teal : theme.fieldEdge;
        painter.fillRect(QRect(edge - 2, height() - 3, width() - 2 * edge + 4, isChecked() ? 3 : 1),
                         line);
    }
    if (hasFocus()) {
        painter.setPen(QPen(theme.teal, 1, Qt::DotLine));
        painter.drawRect(rect().adjusted(0, 0, -1, -1));
    }
}

void TextButton::enterEvent(QEnterEvent* event) {
    QAbstractButton::enterEvent(event);
    update();
}

void TextButton::leaveEvent(QEvent* event) {
    QAbstractButton::leaveEvent(event);
    update();
}

void TextButton::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        click();
        return;
    }
    QAbstractButton::keyPressEvent(event);
}

}  // namespace shoulderline
