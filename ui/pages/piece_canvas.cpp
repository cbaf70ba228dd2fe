#include "ui/pages/piece_canvas.h"

#include <QKeyEvent>
#include <algorithm>
#include <cmath>

#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

// What stands around the elevations, in pixels at the scale at which all of it fits.
constexpr double kRoundPiece = 14.0;
constexpr double kHeightLabels = 78.0;
constexpr double kRod = 22.0;
constexpr double kRodGap = 16.0;
constexpr double kViewGap = 92.0;
constexpr double kNarrowViewGap = 44.0;
constexpr double kRodName = 40.0;
constexpr double kTitle = 28.0;
constexpr double kLabelRoom = PieceCanvas::kRows * PieceCanvas::kRowHeight + 12.0;
constexpr double kNear = 6.0;

}  // namespace

PieceCanvas::PieceCanvas(Document& document, Afterglow& glow, QWidget* parent)
    : Canvas(parent), document_(document), glow_(glow) {
    setAccessibleName(tr("elevations of the piece"));
    setObjectName(u"pieceCanvas"_s);
    bubble_ = new RodBubble(document_, this);
    connect(&document_, &Document::resolvedAnew, this, &PieceCanvas::begin);
    connect(&document_, &Document::changed, this, &PieceCanvas::update);
    connect(&document_, &Document::chosenChanged, this, qOverload<>(&QWidget::update));
    connect(&glow_, &Afterglow::levelChanged, this, qOverload<>(&QWidget::update));
}

// The elevations take longest of all that a change asks for: they are worked out beside the
// columns.
void PieceCanvas::begin() {
    coming_ = {};
    if (isVisible()) {
        coming_ = std::async(std::launch::async,
                             [piece = document_.sharedResolved()] { return elevationsOf(*piece); });
    }
}

// Waits for the elevations once the rest of the window shows the change.
void PieceCanvas::update() {
    if (isVisible()) {
        QMetaObject::invokeMethod(this, &PieceCanvas::finish, Qt::QueuedConnection);
    }
}

// Draws the piece anew if it is not what was drawn last.
void PieceCanvas::finish() {
    if (isCurrent()) {
        return;
    }
    generation_ = document_.generation();
    const ResolvedPiece& piece = document_.resolved();
    views_ = coming_.valid() ? coming_.get() : elevationsOf(piece);
    for (const RodKind kind : {RodKind::Heights, RodKind::Widths, RodKind::Depths}) {
        const auto index = static_cast<std::size_t>(kind);
        rods_[index] = rodOf(document_.piece(), piece, kind);
        drives_[index] = takingValues(document_.piece(), piece, rods_[index]);
    }
    markChanged();
    hovered_.reset();
    hoveredPart_.reset();
    layOut();
    sceneChanged();
    if (drag_) {
        keepHold();
    }
}

// The parts that the last change moved.
void PieceCanvas::markChanged() {
    const ResolvedPiece& piece = document_.resolved();
    changedParts_.assign(piece.parts.size(), false);
    for (const Moved& moved : document_.lastChange().moved) {
        for (std::size_t i = 0; i < piece.parts.size(); ++i) {
            const ResolvedPart& part = piece.parts[i];
            changedParts_[i] = changedParts_[i] || moved.part == i || part.name == moved.subject ||
                               part.of == moved.subject;
        }
        if (moved.joint) {
            // One told for all of a pair or set by its stated name stands for every one of them.
            const ResolvedJoint& joint = piece.joints[*moved.joint];
            const bool isForAll = moved.subject != joint.name;
            for (std::size_t i = 0; i < piece.parts.size(); ++i) {
                const bool isAlike = piece.parts[i].of == piece.parts[joint.tenoned].of ||
                                     piece.parts[i].of == piece.parts[joint.mortised].of;
                changedParts_[i] = changedParts_[i] || i == joint.tenoned || i == joint.mortised ||
                                   (isForAll && isAlike);
            }
        }
    }
}

// Puts the views in projection, the side to the right of the front, the plan below it, with room
// for rods and figures as they are when everything fits.
void PieceCanvas::layOut() {
    const Vec2 front = views_[Front].max - views_[Front].min;
    const Vec2 side = views_[Side].allMax - views_[Side].allMin;
    const Vec2 plan = views_[Plan].max - views_[Plan].min;
    const double viewGap = width() < kNarrow ? kNarrowViewGap : kViewGap;
    const double name = width() < kNarrow ? 0.0 : kRodName;
    const double across = 3 * kRoundPiece + kHeightLabels + kRod + kRodGap + viewGap + name;
    const double stations = views_[Side].stations.empty() ? 0.0 : kStationRow;
    const double down =
        kRoundPiece + kTitle + stations + kRodGap + kRod + kLabelRoom + kTitle + kRoundPiece;
    const double wide = std::max(front.x, plan.x) + side.x;
    const double high = std::max(front.y, side.y) + plan.y;
    const double fitting =
        std::min((width() - across) / std::max(wide, 1.0), (height() - down) / std::max(high, 1.0));
    margin_ = drag_ ? margin_ : 1.0 / std::max(fitting, 0.02);
    const double left = (kRoundPiece + kHeightLabels + kRod + kRodGap) * margin_;
    const double top = (kRoundPiece + kTitle + stations) * margin_;
    const double base = top + std::max(front.y, side.y);
    origins_[Front] = {left - views_[Front].min.x, base + views_[Front].min.y};
    const double sideLeft = left + std::max(front.x, plan.x) + viewGap * margin_;
    origins_[Side] = {sideLeft - views_[Side].allMin.x, base + views_[Side].min.y};
    const double planTop = base + (kRodGap + kRod + kLabelRoom + kTitle) * margin_;
    origins_[Plan] = {left - views_[Plan].min.x, planTop + views_[Plan].max.y};
    scene_ = QRectF(0,
                    0,
                    sideLeft + side.x + (2 * kRoundPiece + name) * margin_,
                    planTop + plan.y + kRoundPiece * margin_);
}

QRectF PieceCanvas::sceneRect() const {
    return scene_;
}

QPointF PieceCanvas::place(std::size_t view, Vec2 v) const {
    return {origins_[view].x() + v.x, origins_[view].y() - v.y};
}

QPolygonF PieceCanvas::outline(std::size_t view, std::size_t part) const {
    QPolygonF polygon;
    if (part < views_[view].outlines.size()) {
        for (const Vec2 v : views_[view].outlines[part]) {
            polygon << toScreen(place(view, v));
        }
    }
    return polygon;
}

QRectF PieceCanvas::rodRect(RodKind kind) const {
    const Rod& one = rod(kind);
    const double thick = kRod * margin_;
    const double base = origins_[Front].y() - views_[Front].min.y + kRodGap * margin_;
    switch (kind) {
        case RodKind::Heights:
            return {(kRoundPiece + kHeightLabels) * margin_,
                    origins_[Front].y() - one.to,
                    thick,
                    one.to - one.from};
        case RodKind::Widths:
            return {origins_[Front].x() + one.from, base, one.to - one.from, thick};
        case RodKind::Depths:
            return {origins_[Side].x() + one.from, base, one.to - one.from, thick};
    }
    return {};
}

double PieceCanvas::along(const Rod& one, double at) const {
    switch (one.kind) {
        case RodKind::Heights:
            return toScreen(QPointF(0, origins_[Front].y() - at)).y();
        case RodKind::Widths:
            return toScreen(QPointF(origins_[Front].x() + at, 0)).x();
        case RodKind::Depths:
            return toScreen(QPointF(origins_[Side].x() + at, 0)).x();
    }
    return 0.0;
}

QPointF PieceCanvas::rodLineAt(RodKind kind, std::size_t line) const {
    const QRectF area = toScreen(rodRect(kind));
    const double at = along(rod(kind), rod(kind).lines[line].at);
    return kind == RodKind::Heights ? QPointF(area.center().x(), at)
                                    : QPointF(at, area.center().y());
}

// The figure beside a line: heights from the floor, depths from the front, widths from the left
// end.
QString PieceCanvas::figure(const Rod& one, const RodLine& line) const {
    const double from = one.kind == RodKind::Widths ? one.from : 0.0;
    return qt(document_.shown(Length::mm(line.at - from)));
}

std::optional<PieceCanvas::LineRef> PieceCanvas::rodLineNear(QPointF screen) const {
    for (const Rod& one : rods_) {
        if (!isCurrent()) {
            break;
        }
        const bool isUpright = one.kind == RodKind::Heights;
        const QRectF area = toScreen(rodRect(one.kind)).adjusted(-4, -4, 4, 4);
        if (!area.contains(screen)) {
            continue;
        }
        const double at = isUpright ? screen.y() : screen.x();
        std::optional<LineRef> nearest;
        double apart = kNear;
        for (std::size_t i = 0; i < one.lines.size(); ++i) {
            const double distance = std::abs(along(one, one.lines[i].at) - at);
            if (distance < apart) {
                apart = distance;
                nearest = LineRef{one.kind, i};
            }
        }
        return nearest;
    }
    return std::nullopt;
}

std::optional<Subject> PieceCanvas::subjectAt(QPointF screen) const {
    if (const std::optional<LineRef> line = rodLineNear(screen)) {
        // Lines of the three rods are told apart by the thousand.
        return Subject{SubjectKind::RodLine,
                       static_cast<std::size_t>(line->kind) * 1000 + line->line};
    }
    for (std::size_t view = 0; view < views_.size() && isCurrent(); ++view) {
        for (const std::size_t part : views_[view].nearestFirst) {
            if (outline(view, part).containsPoint(screen, Qt::OddEvenFill)) {
                return Subject{SubjectKind::Part, part};
            }
        }
    }
    return std::nullopt;
}

void PieceCanvas::pick(const Subject& subject) {
    if (subject.kind == SubjectKind::RodLine) {
        openBubble(static_cast<RodKind>(subject.index / 1000), subject.index % 1000);
        return;
    }
    bubble_->hide();
    Canvas::pick(subject);
}

void PieceCanvas::openBubble(RodKind kind, std::size_t line) {
    const QRectF area = toScreen(rodRect(kind));
    const QPointF at = rodLineAt(kind, line);
    hovered_ = LineRef{kind, line};
    const QPointF beside = kind == RodKind::Heights ? QPointF(area.right() + 6, at.y())
                                                    : QPointF(at.x() - 30, area.top() - 28);
    bubble_->open(rod(kind), line, beside.toPoint());
    QWidget::update();
}

bool PieceCanvas::isChosen(const Subject& subject) const {
    return subject.kind == SubjectKind::Part && document_.chosenPart() == subject.index;
}

void PieceCanvas::hover(QPointF screen) {
    const std::optional<LineRef> line = rodLineNear(screen);
    std::optional<std::size_t> part;
    if (!line) {
        const std::optional<Subject> subject = subjectAt(screen);
        if (subject && subject->kind == SubjectKind::Part) {
            part = subject->index;
        }
    }
    if (line != hovered_ || part != hoveredPart_) {
        hovered_ = line;
        hoveredPart_ = part;
        if (line || part) {
            setCursor(Qt::PointingHandCursor);
        } else {
            unsetCursor();
        }
        QWidget::update();
    }
}

void PieceCanvas::leave() {
    if (!bubble_->isVisible()) {
        hovered_.reset();
    }
    hoveredPart_.reset();
    QWidget::update();
}

void PieceCanvas::moved() {
    bubble_->hide();
}

void PieceCanvas::showEvent(QShowEvent* event) {
    Canvas::showEvent(event);
    finish();
}

void PieceCanvas::resizeEvent(QResizeEvent* event) {
    if (isFitted()) {
        layOut();
    }
    Canvas::resizeEvent(event);
}

void PieceCanvas::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && takeDragBack()) {
        return;
    }
    // Page Up and Page Down go along the lines of the rods; Enter opens the one that is named.
    const bool isOn = event->key() == Qt::Key_PageUp;
    if (!isOn && event->key() != Qt::Key_PageDown) {
        if (event->key() == Qt::Key_Return && hovered_ && !currentItem()) {
            openBubble(hovered_->kind, hovered_->line);
            return;
        }
        Canvas::keyPressEvent(event);
        return;
    }
    std::vector<LineRef> all;
    for (const Rod& one : rods_) {
        for (std::size_t i = 0; i < one.lines.size(); ++i) {
            all.push_back({one.kind, i});
        }
    }
    if (all.empty()) {
        return;
    }
    const auto now = hovered_ ? std::find(all.begin(), all.end(), *hovered_) : all.end();
    std::size_t next = 0;
    if (now != all.end()) {
        const auto index = static_cast<std::size_t>(now - all.begin());
        next = (index + (isOn ? 1 : all.size() - 1)) % all.size();
    }
    hovered_ = all[next];
    QWidget::update();
}

std::vector<CanvasItem> PieceCanvas::makeItems() const {
    std::vector<CanvasItem> items;
    const ResolvedPiece& piece = document_.resolved();
    for (std::size_t i = 0; i < piece.parts.size() && isCurrent(); ++i) {
        QRectF largest;
        for (std::size_t view = 0; view < views_.size(); ++view) {
            QPolygonF polygon;
            for (const Vec2 v : views_[view].outlines[i]) {
                polygon << place(view, v);
            }
            const QRectF area = polygon.boundingRect();
            if (area.width() * area.height() > 1.2 * largest.width() * largest.height()) {
                largest = area;
            }
        }
        const ResolvedPart& part = piece.parts[i];
        items.push_back({qt(part.name),
                         tr("%1 long, %2 wide, %3 thick")
                             .arg(qt(document_.shown(part.length())),
                                  qt(document_.shown(part.width.value)),
                                  qt(document_.shown(part.thickness.value))),
                         largest,
                         {SubjectKind::Part, i}});
    }
    return items;
}

bool PieceCanvas::isMarked(std::size_t part) const {
    if (!hovered_) {
        return hoveredPart_ == part;
    }
    const std::vector<std::size_t>& parts = rod(hovered_->kind).lines[hovered_->line].parts;
    return std::find(parts.begin(), parts.end(), part) != parts.end();
}

}  // namespace shoulderline
