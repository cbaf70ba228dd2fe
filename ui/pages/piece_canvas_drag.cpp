#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <algorithm>
#include <cmath>

#include "core/resolve/outline_points.h"
#include "ui/pages/piece_canvas.h"

// Lines of the rods taken hold of with the pointer.
namespace shoulderline {

void PieceCanvas::mousePressEvent(QMouseEvent* event) {
    Canvas::mousePressEvent(event);
    const std::optional<LineRef> line = rodLineNear(event->position());
    if (event->button() != Qt::LeftButton || !line || isScrolling()) {
        return;
    }
    if (handleMovedBy(
            document_.piece(), document_.resolved(), rod(line->kind), line->line, Length())
            .edit) {
        document_.endBurst();
        drag_ = RodDrag{*line, event->position(), rod(line->kind), {}, {}, {}, false, isFitted()};
    }
}

void PieceCanvas::mouseMoveEvent(QMouseEvent* event) {
    if (!drag_) {
        Canvas::mouseMoveEvent(event);
        return;
    }
    const QPointF way = event->position() - drag_->grabbed;
    if (!drag_->hasBegun && way.manhattanLength() < QApplication::startDragDistance()) {
        return;
    }
    if (!drag_->hasBegun) {
        beginDrag();
        Canvas::mouseMoveEvent(event);  // the release is then no click
    }
    dragBy(way);
}

void PieceCanvas::mouseReleaseEvent(QMouseEvent* event) {
    if (drag_ && event->button() == Qt::LeftButton) {
        endDrag();
    }
    Canvas::mouseReleaseEvent(event);
}

// What the line is moved from stays the piece as it was then: lines may fall together on the way.
void PieceCanvas::beginDrag() {
    bubble_->hide();
    drag_->hasBegun = true;
    drag_->piece = document_.piece();
    drag_->resolved = document_.resolved();
    const QPointF origin = origins_[viewOf(drag_->line.kind)];
    drag_->held = toScreen(origin);
    holdAt(origin, drag_->held, scale());  // as it is, and from now on not fitted
    setCursor(drag_->line.kind == RodKind::Heights ? Qt::SizeVerCursor : Qt::SizeHorCursor);
}

void PieceCanvas::dragBy(QPointF way) {
    const double pixels = drag_->line.kind == RodKind::Heights ? -way.y() : way.x();
    const double step = outlineStep(document_.piece().unit).mm();
    const Length by = Length::mm(std::round(pixels / scale() / step) * step);
    const RodHandle handle =
        handleMovedBy(drag_->piece, drag_->resolved, drag_->rod, drag_->line.line, by);
    drag_->at = drag_->rod.lines[drag_->line.line].at + by.mm();
    if (handle.edit) {
        static_cast<void>(document_.apply(*handle.edit, Document::Kind::Step));
        finish();  // the next step goes by where the line is now
    }
}

// The line that is held is the one marked, and what it is measured from stays on the screen.
void PieceCanvas::keepHold() {
    const std::vector<RodLine>& lines = rod(drag_->line.kind).lines;
    const auto nearest =
        std::min_element(lines.begin(), lines.end(), [this](const RodLine& a, const RodLine& b) {
            return std::abs(a.at - drag_->at) < std::abs(b.at - drag_->at);
        });
    if (nearest != lines.end()) {
        hovered_ = LineRef{drag_->line.kind,
                           static_cast<std::size_t>(std::distance(lines.begin(), nearest))};
    }
    holdAt(origins_[viewOf(drag_->line.kind)], drag_->held, scale());
}

void PieceCanvas::endDrag() {
    const bool hasBegun = drag_->hasBegun;
    const bool wasFitted = drag_->wasFitted;
    drag_.reset();
    if (!hasBegun) {
        return;
    }
    document_.endBurst();
    unsetCursor();
    if (wasFitted) {
        layOut();
        fit();
    }
    QWidget::update();
}

// Escape takes a drag back; true if there was one.
bool PieceCanvas::takeDragBack() {
    if (!drag_ || !drag_->hasBegun) {
        return false;
    }
    const bool hasMoved = document_.piece() != drag_->piece;
    endDrag();
    if (hasMoved) {
        document_.undoStack().undo();
    }
    return true;
}

}  // namespace shoulderline
