#include "ui/look/label.h"

namespace shoulderline {

RememberedSizes& Label::sizes() const {
    ensurePolished();
    sizes_.look({text(), font(), contentsMargins(), wordWrap()});
    return sizes_;
}

int Label::heightForWidth(int width) const {
    return sizes().height(width, [&] { return QLabel::heightForWidth(width); });
}

QSize Label::sizeHint() const {
    return sizes().hint([&] { return QLabel::sizeHint(); });
}

QSize Label::minimumSizeHint() const {
    return sizes().minimum([&] { return QLabel::minimumSizeHint(); });
}

void setInk(QWidget& widget, const QColor& colour) {
    if (QPalette palette = widget.palette(); palette.color(QPalette::WindowText) != colour) {
        palette.setColor(QPalette::WindowText, colour);
        widget.setPalette(palette);
    }
}

}  // namespace shoulderline
