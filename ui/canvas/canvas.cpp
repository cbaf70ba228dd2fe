#include "ui/canvas/canvas.h"

#include <QAccessible>
#include <QApplication>
#include <QKeyEvent>
#include <QNativeGestureEvent>
#include <QPainter>
#include <QScreen>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "ui/look/theme.h"

namespace shoulderline {

namespace {

constexpr double kZoomStep = 1.2;
constexpr double kLeastScale = 0.01;
constexpr double kMostScale = 60.0;
constexpr double kArrowPixels = 40.0;

}  // namespace

Canvas::Canvas(QWidget* parent) : QWidget(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setMinimumSize(160, 120);
}

double Canvas::trueScale() const {
    return screen()->physicalDotsPerInch() / 25.4;
}

void Canvas::setView(double scale, QPointF offset) {
    scale_ = std::clamp(scale, kLeastScale, kMostScale);
    offset_ = offset;
    moved();
    update();
    Q_EMIT scaleChanged();
}

void Canvas::fit() {
    isFitted_ = true;
    const QRectF scene = sceneRect();
    if (scene.width() <= 0.0 || scene.height() <= 0.0) {
        return;
    }
    const double scale = std::min(width() / scene.width(), height() / scene.height());
    const QPointF middle(width() / 2.0, height() / 2.0);
    setView(scale, middle - scene.center() * scale);
}

void Canvas::zoomBy(double factor, QPointF about) {
    const QPointF fixed = toScene(about);
    const double scale = std::clamp(scale_ * factor, kLeastScale, kMostScale);
    isFitted_ = false;
    setView(scale, about - fixed * scale);
}

void Canvas::zoomBy(double factor) {
    zoomBy(factor, QPointF(width() / 2.0, height() / 2.0));
}

void Canvas::holdAt(QPointF scene, QPointF screen, double scale) {
    isFitted_ = false;
    setView(scale, screen - scene * scale);
}

void Canvas::showTrueSize() {
    zoomBy(trueScale() / scale_);
}

void Canvas::scrollBy(QPointF pixels) {
    isFitted_ = false;
    // Some of the scene always stays in sight.
    const QRectF scene = toScreen(sceneRect()).translated(pixels);
    const QRectF kept(40, 40, width() - 80, height() - 80);
    if (scene.intersects(kept)) {
        setView(scale_, offset_ + pixels);
    }
}

const std::vector<CanvasItem>& Canvas::items() const {
    if (!items_) {
        items_ = makeItems();
    }
    return *items_;
}

QPointF Canvas::toScreen(QPointF point) const {
    return point * scale_ + offset_;
}

QRectF Canvas::toScreen(const QRectF& area) const {
    return {toScreen(area.topLeft()), toScreen(area.bottomRight())};
}

QPointF Canvas::toScene(QPointF point) const {
    return (point - offset_) / scale_;
}

void Canvas::pick(const Subject& subject) {
    Q_EMIT picked(subject);
}

void Canvas::sceneChanged() {
    items_.reset();
    if (isFitted_) {
        fit();
    }
    update();
}

void Canvas::makeCurrent(std::optional<std::size_t> item) {
    currentItem_ = item;
    update();
    if (!item) {
        return;
    }
    const QRectF shown = toScreen(items()[*item].area);
    if (!QRectF(rect()).contains(shown.center())) {
        scrollBy(QRectF(rect()).center() - shown.center());
    }
    QAccessibleEvent event(this, QAccessible::Focus);
    event.setChild(static_cast<int>(*item));
    QAccessible::updateAccessibility(&event);
}

bool Canvas::focusNextPrevChild(bool next) {
    const std::size_t count = items().size();
    if (!hasFocus() || count == 0) {
        return QWidget::focusNextPrevChild(next);
    }
    if (!currentItem_) {
        makeCurrent(next ? 0 : count - 1);
        return true;
    }
    const bool isLast = next ? *currentItem_ + 1 >= count : *currentItem_ == 0;
    if (isLast) {
        makeCurrent(std::nullopt);
        return QWidget::focusNextPrevChild(next);
    }
    makeCurrent(next ? *currentItem_ + 1 : *currentItem_ - 1);
    return true;
}

bool Canvas::event(QEvent* event) {
    if (event->type() == QEvent::NativeGesture) {
        const auto* gesture = static_cast<QNativeGestureEvent*>(event);
        if (gesture->gestureType() == Qt::ZoomNativeGesture) {
            zoomBy(1.0 + gesture->value(), gesture->position());
            return true;
        }
    }
    return QWidget::event(event);
}

void Canvas::paintEvent(QPaintEvent*) {
    const Theme theme = Theme::of(palette());
    QPainter painter(this);
    painter.fillRect(rect(), theme.paper);
    painter.setRenderHint(QPainter::Antialiasing);
    paintScene(painter);
    painter.resetTransform();
    if (hasFocus()) {
        painter.setRenderHint(QPainter::Antialiasing, false);
        if (currentItem_ && *currentItem_ < items().size()) {
            const QRectF area = toScreen(items()[*currentItem_].area).adjusted(-4, -4, 4, 4);
            painter.setPen(QPen(theme.teal, 2, Qt::DashLine));
            painter.setBrush(Qt::NoBrush);
            painter.drawRect(area);
        }
        painter.setPen(QPen(theme.teal, 1));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(rect().adjusted(0, 0, -1, -1));
    }
}

void Canvas::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    sceneChanged();
}

void Canvas::wheelEvent(QWheelEvent* event) {
    if (event->modifiers().testFlag(Qt::ControlModifier)) {
        zoomBy(std::pow(kZoomStep, event->angleDelta().y() / 120.0), event->position());
    } else {
        QPointF pixels = event->pixelDelta().isNull() ? QPointF(event->angleDelta()) * 0.5
                                                      : QPointF(event->pixelDelta());
        if (event->modifiers().testFlag(Qt::ShiftModifier)) {
            pixels = QPointF(pixels.y(), pixels.x());
        }
        scrollBy(pixels);
    }
    event->accept();
}

void Canvas::mousePressEvent(QMouseEvent* event) {
    pressedAt_ = lastAt_ = event->position();
    hasMoved_ = false;
    isDragging_ =
        event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && isSpaceDown_);
    if (isDragging_) {
        setCursor(Qt::ClosedHandCursor);
    }
}

void Canvas::mouseMoveEvent(QMouseEvent* event) {
    const QPointF at = event->position();
    hasMoved_ =
        hasMoved_ || (at - pressedAt_).manhattanLength() >= QApplication::startDragDistance();
    if (isDragging_) {
        scrollBy(at - lastAt_);
    } else if (event->buttons() == Qt::NoButton) {
        hover(at);
    }
    lastAt_ = at;
}

void Canvas::mouseReleaseEvent(QMouseEvent* event) {
    if (isDragging_) {
        isDragging_ = false;
        unsetCursor();
        return;
    }
    if (event->button() != Qt::LeftButton || hasMoved_) {
        return;
    }
    currentItem_.reset();
    if (const std::optional<Subject> subject = subjectAt(event->position())) {
        pick(*subject);
    } else {
        Q_EMIT nothingPicked();
    }
}

void Canvas::leaveEvent(QEvent* event) {
    QWidget::leaveEvent(event);
    leave();
}

void Canvas::keyPressEvent(QKeyEvent* event) {
    const double reach =
        event->modifiers().testFlag(Qt::ShiftModifier) ? 5 * kArrowPixels : kArrowPixels;
    switch (event->key()) {
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            zoomBy(kZoomStep);
            break;
        case Qt::Key_Minus:
            zoomBy(1.0 / kZoomStep);
            break;
        case Qt::Key_0:
            fit();
            break;
        case Qt::Key_Left:
            scrollBy({reach, 0});
            break;
        case Qt::Key_Right:
            scrollBy({-reach, 0});
            break;
        case Qt::Key_Up:
            scrollBy({0, reach});
            break;
        case Qt::Key_Down:
            scrollBy({0, -reach});
            break;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (currentItem_) {
                const Subject subject = items()[*currentItem_].subject;
                pick(subject);
            }
            break;
        case Qt::Key_Space:
            if (!event->isAutoRepeat()) {
                isSpaceDown_ = true;
                setCursor(Qt::OpenHandCursor);
            }
            break;
        case Qt::Key_Escape:
            makeCurrent(std::nullopt);
            Q_EMIT nothingPicked();
            break;
        default:
            QWidget::keyPressEvent(event);
    }
}

void Canvas::keyReleaseEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        isSpaceDown_ = false;
        unsetCursor();
    }
    QWidget::keyReleaseEvent(event);
}

void Canvas::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    if (event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason) {
        if (!items().empty()) {
            makeCurrent(event->reason() == Qt::TabFocusReason ? 0 : items().size() - 1);
        }
    }
    update();
}

void Canvas::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    isSpaceDown_ = false;
    update();
}

}  // namespace shoulderline
