#include "ui/look/marks.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>

#include "ui/look/theme.h"

namespace shoulderline {

SeverityMark::SeverityMark(Severity severity, QWidget* parent)
    : QWidget(parent), severity_(severity) {
    setFixedSize(sizeHint());
}

void SeverityMark::setSeverity(Severity severity) {
    severity_ = severity;
    update();
}

void SeverityMark::paintEvent(QPaintEvent*) {
    const Theme theme = Theme::of(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QPolygonF triangle({QPointF(7, 1.5), QPointF(13, 12.5), QPointF(1, 12.5)});
    switch (severity_) {
        case Severity::MustMend:
            painter.setPen(Qt::NoPen);
            painter.setBrush(theme.brick);
            painter.drawPolygon(triangle);
            break;
        case Severity::LookAt:
            painter.setPen(QPen(theme.amber, 1.6));
            painter.setBrush(Qt::NoBrush);
            painter.drawPolygon(triangle);
            break;
        case Severity::Note:
            painter.setPen(QPen(theme.softInk, 1.6));
            painter.setBrush(Qt::NoBrush);
            painter.drawEllipse(QRectF(2, 2, 10, 10));
            break;
    }
}

GaugeBar::GaugeBar(QWidget* parent) : QWidget(parent) {
    setFixedHeight(16);
    setMinimumWidth(60);
}

void GaugeBar::show(double value, std::optional<double> low, std::optional<double> high) {
    value_ = value;
    low_ = low;
    high_ = high;
    update();
}

void GaugeBar::paintEvent(QPaintEvent*) {
    const Theme theme = Theme::of(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    // The whole range holds the good part with as much again around it, and always the figure.
    const double top = std::max({value_, low_.value_or(0.0), high_.value_or(0.0)});
    const double whole = high_ ? std::max(*high_ * 1.5, value_ * 1.1) : top * 1.6;
    const double scale = whole > 0.0 ? (width() - 4) / whole : 0.0;
    const QRectF bar(2, 5, width() - 4, 6);
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme.isDark ? theme.hairline : QColor(0xea, 0xe6, 0xdc));
    painter.drawRoundedRect(bar, 3, 3);
    const double from = bar.left() + std::clamp(low_.value_or(0.0) * scale, 0.0, bar.width());
    const double to =
        high_ ? bar.left() + std::clamp(*high_ * scale, 0.0, bar.width()) : bar.right();
    painter.setBrush(theme.isDark ? theme.teal.darker(200) : QColor(0xb5, 0xd6, 0xd8));
    painter.drawRoundedRect(QRectF(from, bar.top(), std::max(to - from, 2.0), bar.height()), 3, 3);
    const double at = bar.left() + std::clamp(value_ * scale, 0.0, bar.width());
    painter.fillRect(QRectF(at - 1, 1, 2, 14), theme.ink);
}

}  // namespace shoulderline
