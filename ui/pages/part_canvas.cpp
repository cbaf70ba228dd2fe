#include "ui/pages/part_canvas.h"

#include <QKeyEvent>
#include <QPainter>
#include <cmath>

#include "core/drawing/body_on_sheet.h"
#include "core/drawing/part_views.h"
#include "ui/look/text.h"
#include "ui/look/theme.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr double kHandle = 4.0;  // half a handle's width, pixels
constexpr double kNearPoint = 9.0;
constexpr int kManySteps = 10;

QPointF point(Vec2 p) {
    return {p.x, p.y};
}

// The faces that show a side, the preferred first.
std::vector<Face> viewsOf(Face side) {
    const bool isAcross = side == Face::FaceSide || side == Face::BackSide;
    return isAcross ? std::vector<Face>{Face::FaceEdge, Face::BackEdge}
                    : std::vector<Face>{Face::FaceSide};
}

}  // namespace

PartCanvas::PartCanvas(Document& document, QWidget* parent)
    : SheetCanvas(parent), document_(document) {}

void PartCanvas::showPart(Sheet sheet, std::size_t part, double scale) {
    std::optional<QPointF> held;
    double heldScale = this->scale();
    if (drag_ && drag_->handle < handles_.size()) {
        held = toScreen(point(handles_[drag_->handle].corner));
        heldScale *= scaleOfSheet_ / scale;
    }
    part_ = part;
    scaleOfSheet_ = scale;
    show(std::move(sheet));
    placeHandles();
    sceneChanged();
    // What is dragged stays under the pointer, though its dimensions may want other room.
    if (held && drag_->handle < handles_.size()) {
        holdAt(point(handles_[drag_->handle].corner), *held, heldScale);
    }
}

void PartCanvas::showNothing() {
    part_.reset();
    drag_.reset();
    handles_.clear();
    show({});
}

void PartCanvas::placeHandles() {
    handles_.clear();
    const ResolvedPiece& piece = document_.resolved();
    if (!part_ || *part_ >= piece.parts.size()) {
        return;
    }
    const ResolvedPart& part = piece.parts[*part_];
    for (const OutlinePoint& one : outlinePointsOf(document_.piece(), piece, part)) {
        for (const Face face : viewsOf(one.side)) {
            const std::optional<Vec2> corner = bodyCornerOn(sheet(), part, face);
            if (!corner) {
                continue;
            }
            const PartView view = partView(part, face);
            const Vec2 at = view.toPlane(one.at);
            handles_.push_back({one,
                                *corner,
                                *corner + at * scaleOfSheet_,
                                view.toPlane(one.at + one.alongWay) - at,
                                view.toPlane(one.at + one.inWay) - at});
            break;
        }
    }
}

QPointF PartCanvas::handleAt(std::size_t handle) const {
    return toScreen(point(handles_[handle].at));
}

std::optional<std::size_t> PartCanvas::handleNear(QPointF screen) const {
    std::optional<std::size_t> nearest;
    double apart = kNearPoint;
    for (std::size_t i = 0; i < handles_.size(); ++i) {
        const QPointF off = handleAt(i) - screen;
        const double distance = std::hypot(off.x(), off.y());
        if (distance < apart) {
            apart = distance;
            nearest = i;
        }
    }
    return nearest;
}

// Handles are the first items.
std::optional<std::size_t> PartCanvas::currentHandle() const {
    const std::optional<std::size_t> item = currentItem();
    return item && *item < handles_.size() ? item : std::nullopt;
}

double PartCanvas::stepMm() const {
    return outlineStep(document_.piece().unit).mm();
}

QString PartCanvas::told(const Handle& handle) const {
    return tr("%1 along, %2 in")
        .arg(qt(document_.shown(handle.point.along)), qt(document_.shown(handle.point.in)));
}

std::vector<CanvasItem> PartCanvas::makeItems() const {
    std::vector<CanvasItem> items;
    for (const Handle& handle : handles_) {
        const QRectF area(handle.at.x - 1.0, handle.at.y - 1.0, 2.0, 2.0);
        items.push_back(
            {tr("%1, point %2").arg(qt(wordFor(handle.point.side))).arg(handle.point.index + 1),
             told(handle),
             area,
             {}});
    }
    std::vector<CanvasItem> others = SheetCanvas::makeItems();
    std::move(others.begin(), others.end(), std::back_inserter(items));
    return items;
}

void PartCanvas::paintScene(QPainter& painter) {
    SheetCanvas::paintScene(painter);
    painter.resetTransform();
    const Theme theme = Theme::of(palette());
    const std::optional<std::size_t> current = hasFocus() ? currentHandle() : std::nullopt;
    for (std::size_t i = 0; i < handles_.size(); ++i) {
        const bool isMarked = hovered_ == i || current == i || (drag_ && drag_->handle == i);
        const QPointF at = handleAt(i);
        painter.setPen(QPen(theme.teal, 1.5));
        painter.setBrush(isMarked ? theme.teal : theme.paper);
        painter.drawRect(QRectF(at.x() - kHandle, at.y() - kHandle, 2 * kHandle, 2 * kHandle));
        if (isMarked) {
            const QString text = told(handles_[i]);
            const QRectF room = painter.fontMetrics().boundingRect(text).adjusted(-5, -3, 5, 3);
            QRectF box = room;
            box.moveCenter(at + QPointF(0, -kHandle - room.height()));
            box.moveLeft(std::max(4.0, std::min(box.left(), width() - box.width() - 4.0)));
            painter.setPen(QPen(theme.teal, 1));
            painter.setBrush(theme.paper);
            painter.drawRect(box);
            painter.setPen(theme.ink);
            painter.drawText(box, Qt::AlignCenter, text);
        }
    }
}

void PartCanvas::hover(QPointF screen) {
    const std::optional<std::size_t> near = handleNear(screen);
    if (near != hovered_) {
        hovered_ = near;
        near ? setCursor(Qt::SizeAllCursor) : unsetCursor();
        update();
    }
}

void PartCanvas::mousePressEvent(QMouseEvent* event) {
    const std::optional<std::size_t> near = handleNear(event->position());
    if (event->button() != Qt::LeftButton || !near) {
        SheetCanvas::mousePressEvent(event);
        return;
    }
    document_.endBurst();
    makeCurrent(near);
    const QPointF at = toScene(event->position());
    drag_ = Drag{*near, Vec2{at.x(), at.y()} - handles_[*near].at, false, isFitted()};
}

void PartCanvas::mouseMoveEvent(QMouseEvent* event) {
    if (drag_) {
        dragTo(event->position());
    } else {
        SheetCanvas::mouseMoveEvent(event);
    }
}

void PartCanvas::mouseReleaseEvent(QMouseEvent* event) {
    if (drag_ && event->button() == Qt::LeftButton) {
        endDrag();
    } else {
        SheetCanvas::mouseReleaseEvent(event);
    }
}

void PartCanvas::dragTo(QPointF screen) {
    if (drag_->handle >= handles_.size()) {
        drag_.reset();
        return;
    }
    const Handle& handle = handles_[drag_->handle];
    const QPointF at = toScene(screen);
    const Vec2 by = Vec2{at.x(), at.y()} - drag_->grabbed - handle.at;
    const double step = stepMm();
    const auto steps = [&](Vec2 way) { return std::round(dot(by, way) / scaleOfSheet_ / step); };
    moveBy(drag_->handle, steps(handle.alongWay) * step, steps(handle.inWay) * step);
}

void PartCanvas::endDrag() {
    const bool wasFitted = drag_->wasFitted;
    drag_.reset();
    document_.endBurst();
    if (wasFitted) {
        fit();
    }
    update();
}

void PartCanvas::moveBy(std::size_t handle, double along, double in) {
    if ((along == 0.0 && in == 0.0) || !part_) {
        return;
    }
    const OutlinePoint& point = handles_[handle].point;
    const Piece& piece = document_.piece();
    const std::size_t stated = document_.resolved().parts[*part_].stated;
    const Part moved =
        withPointMoved(piece, stated, point.side, point.index, Length::mm(along), Length::mm(in));
    const bool isDone =
        document_.apply(SetPart{piece.parts[stated].name, moved}, Document::Kind::Step).has_value();
    if (drag_) {
        drag_->hasMoved = drag_->hasMoved || isDone;
    }
}

void PartCanvas::keyPressEvent(QKeyEvent* event) {
    if (drag_ && event->key() == Qt::Key_Escape) {
        const bool hasMoved = drag_->hasMoved;
        endDrag();
        if (hasMoved) {
            document_.undoStack().undo();
        }
        return;
    }
    Vec2 way;
    switch (event->key()) {
        case Qt::Key_Left:
            way = {-1, 0};
            break;
        case Qt::Key_Right:
            way = {1, 0};
            break;
        case Qt::Key_Up:
            way = {0, -1};
            break;
        case Qt::Key_Down:
            way = {0, 1};
            break;
        default:
            SheetCanvas::keyPressEvent(event);
            return;
    }
    const std::optional<std::size_t> handle = currentHandle();
    if (!handle) {
        SheetCanvas::keyPressEvent(event);
        return;
    }
    const double by = stepMm() * (event->modifiers().testFlag(Qt::ShiftModifier) ? kManySteps : 1);
    moveBy(*handle,
           std::round(dot(way, handles_[*handle].alongWay)) * by,
           std::round(dot(way, handles_[*handle].inWay)) * by);
}

void PartCanvas::focusOutEvent(QFocusEvent* event) {
    SheetCanvas::focusOutEvent(event);
    document_.endBurst();
}

}  // namespace shoulderline
