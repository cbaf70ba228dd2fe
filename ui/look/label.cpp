#include "ui/look/label.h"

#include <algorithm>

namespace shoulderline {

namespace {

constexpr int kLong = 80;   // letters: a text that wraps and has more is a paragraph
constexpr int kLine = 40;   // letters that a paragraph would have on a line
constexpr int kShort = 10;  // letters that it can do with

}  // namespace

RememberedSizes& Label::sizes() const {
    ensurePolished();
    sizes_.look({text(), font(), contentsMargins(), wordWrap()});
    return sizes_;
}

int Label::heightForWidth(int width) const {
    return sizes().height(width, [&] { return QLabel::heightForWidth(width); });
}

// Set as it stands, with no mark-up, frame or indent around it.
bool Label::isPlain() const {
    return (textFormat() == Qt::PlainText || !Qt::mightBeRichText(text())) && pixmap().isNull() &&
           frameWidth() == 0 && indent() <= 0;
}

QSize Label::oneLine() const {
    const QRect room(0, 0, 2000, 2000);
    const int flags = static_cast<int>(alignment()) | Qt::TextExpandTabs;
    return fontMetrics().boundingRect(room, flags, text()).size().grownBy(contentsMargins()) +
           QSize(2 * margin(), 2 * margin());
}

// Of a text that wraps: a line of its longest word, or of a few letters where the text is long and
// is given the width of what it stands in.
QSize Label::narrowest() const {
    const QFontMetrics metrics = fontMetrics();
    int widest = kShort * metrics.averageCharWidth();
    if (text().size() <= kLong) {
        widest = 0;
        for (const QString& word : text().split(QChar::Space)) {
            widest = std::max(widest, metrics.horizontalAdvance(word));
        }
    }
    return QSize(widest, metrics.height()).grownBy(contentsMargins()) +
           QSize(2 * margin(), 2 * margin());
}

QSize Label::sizeHint() const {
    return sizes().hint([&] {
        if (!isPlain() || (wordWrap() && text().size() <= kLong)) {
            return QLabel::sizeHint();
        }
        if (!wordWrap()) {
            return oneLine();
        }
        // Its height there is asked for when it is known how wide it can be.
        const int lines = 1 + static_cast<int>(text().size() / kLine);
        return QSize(kLine * fontMetrics().averageCharWidth(), lines * fontMetrics().lineSpacing())
            .grownBy(contentsMargins());
    });
}

QSize Label::minimumSizeHint() const {
    return sizes().minimum([&] {
        return !isPlain() ? QLabel::minimumSizeHint() : wordWrap() ? narrowest() : sizeHint();
    });
}

void setInk(QWidget& widget, const QColor& colour) {
    if (QPalette palette = widget.palette(); palette.color(QPalette::WindowText) != colour) {
        palette.setColor(QPalette::WindowText, colour);
        widget.setPalette(palette);
    }
}

}  // namespace shoulderline
