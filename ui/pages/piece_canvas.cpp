#include "ui/pages/piece_canvas.h"

#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "ui/look/text.h"
#include "ui/look/theme.h"
#include "ui/pages/rod_labels.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

// What stands around the elevations, in pixels at the scale at which all of it fits.
constexpr double kEdge = 14.0;
constexpr double kHeightLabels = 78.0;
constexpr double kRod = 22.0;
constexpr double kRodGap = 16.0;
constexpr double kViewGap = 92.0;
constexpr double kNarrowViewGap = 44.0;
constexpr double kNarrow = 620.0;
constexpr double kTitle = 28.0;
constexpr double kRowHeight = 17.0;
constexpr int kRows = 3;
constexpr double kLabelRoom = kRows * kRowHeight + 12.0;
constexpr double kNear = 6.0;

}  // namespace

PieceCanvas::PieceCanvas(Document& document, Afterglow& glow, QWidget* parent)
    : Canvas(parent), document_(document), glow_(glow) {
    setAccessibleName(tr("elevations of the piece"));
    setObjectName(u"pieceCanvas"_s);
    bubble_ = new RodBubble(document_, this);
    connect(&document_, &Document::changed, this, [this] {
        if (isVisible()) {
            update();
        }
    });
    connect(&document_, &Document::chosenChanged, this, qOverload<>(&QWidget::update));
    connect(&glow_, &Afterglow::levelChanged, this, qOverload<>(&QWidget::update));
}

// Draws the piece anew if it is not what was drawn last.
void PieceCanvas::update() {
    if (generation_ == document_.generation()) {
        return;
    }
    generation_ = document_.generation();
    const ResolvedPiece& piece = document_.resolved();
    views_ = {elevationOf(piece, View::front()),
              elevationOf(piece, View::side()),
              elevationOf(piece, View::plan())};
    for (const RodKind kind : {RodKind::Heights, RodKind::Widths, RodKind::Depths}) {
        const auto index = static_cast<std::size_t>(kind);
        rods_[index] = rodOf(document_.piece(), piece, kind);
        drives_[index].clear();
        for (std::size_t i = 0; i < rods_[index].lines.size(); ++i) {
            drives_[index].push_back(
                handleOf(document_.piece(), piece, rods_[index], i, "0 in").edit.has_value());
        }
    }
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
    hovered_.reset();
    hoveredPart_.reset();
    layOut();
    sceneChanged();
}

// Puts the views in projection, the side to the right of the front, the plan below it, with room
// for rods and figures as they are when everything fits.
void PieceCanvas::layOut() {
    const Vec2 front = views_[Front].max - views_[Front].min;
    const Vec2 side = views_[Side].max - views_[Side].min;
    const Vec2 plan = views_[Plan].max - views_[Plan].min;
    const double viewGap = width() < kNarrow ? kNarrowViewGap : kViewGap;
    const double across = 3 * kEdge + kHeightLabels + kRod + kRodGap + viewGap;
    const double down = kEdge + kTitle + kRodGap + kRod + kLabelRoom + kTitle + kEdge;
    const double wide = std::max(front.x, plan.x) + side.x;
    const double high = std::max(front.y, side.y) + plan.y;
    const double fitting =
        std::min((width() - across) / std::max(wide, 1.0), (height() - down) / std::max(high, 1.0));
    margin_ = 1.0 / std::max(fitting, 0.02);
    const double left = (kEdge + kHeightLabels + kRod + kRodGap) * margin_;
    const double top = (kEdge + kTitle) * margin_;
    const double base = top + std::max(front.y, side.y);
    origins_[Front] = {left - views_[Front].min.x, base + views_[Front].min.y};
    const double sideLeft = left + std::max(front.x, plan.x) + viewGap * margin_;
    origins_[Side] = {sideLeft - views_[Side].min.x, base + views_[Side].min.y};
    const double planTop = base + (kRodGap + kRod + kLabelRoom + kTitle) * margin_;
    origins_[Plan] = {left - views_[Plan].min.x, planTop + views_[Plan].max.y};
    scene_ =
        QRectF(0, 0, sideLeft + side.x + 2 * kEdge * margin_, planTop + plan.y + kEdge * margin_);
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
            return {(kEdge + kHeightLabels) * margin_,
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
    for (std::size_t view = 0; view < views_.size(); ++view) {
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
    update();
}

void PieceCanvas::resizeEvent(QResizeEvent* event) {
    if (isFitted()) {
        layOut();
    }
    Canvas::resizeEvent(event);
}

void PieceCanvas::keyPressEvent(QKeyEvent* event) {
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
    for (std::size_t i = 0; i < piece.parts.size() && generation_ == document_.generation(); ++i) {
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

void PieceCanvas::paintScene(QPainter& painter) {
    if (generation_ != document_.generation()) {
        return;
    }
    if (document_.resolved().parts.empty()) {
        painter.setPen(Theme::of(palette()).softInk);
        painter.drawText(rect(),
                         Qt::AlignCenter | Qt::TextWordWrap,
                         tr("Nothing stands here yet.\nAdd measures, stock and a part at the left, "
                            "or open a piece."));
        return;
    }
    for (std::size_t view = 0; view < views_.size(); ++view) {
        paintTints(painter, view);
        paintLines(painter, view);
    }
    for (const Rod& one : rods_) {
        paintRod(painter, one);
        paintRodLabels(painter, one);
    }
    paintViewNames(painter);
    paintHover(painter);
}

void PieceCanvas::paintTints(QPainter& painter, std::size_t view) const {
    const Theme theme = Theme::of(palette());
    const std::optional<std::size_t> chosen = document_.chosenPart();
    QColor amber = theme.amberTint;
    amber.setAlphaF(static_cast<float>(glow_.level()));
    painter.setPen(Qt::NoPen);
    // From the back to the front, so that what is nearer covers what is behind it.
    const std::vector<std::size_t>& order = views_[view].nearestFirst;
    for (auto it = order.rbegin(); it != order.rend(); ++it) {
        const std::size_t part = *it;
        const bool isChosen = chosen == part;
        const bool isAmber =
            part < changedParts_.size() && changedParts_[part] && glow_.level() > 0.0;
        painter.setBrush(isChosen ? theme.tealTint : theme.paper);
        painter.drawPolygon(outline(view, part));
        if (isAmber && !isChosen) {
            painter.setBrush(amber);
            painter.drawPolygon(outline(view, part));
        }
    }
}

void PieceCanvas::paintLines(QPainter& painter, std::size_t view) const {
    const Theme theme = Theme::of(palette());
    const std::optional<std::size_t> chosen = document_.chosenPart();
    std::vector<QLineF> visible;
    std::vector<QLineF> hidden;
    std::vector<QLineF> marked;
    std::vector<QLineF> changed;
    const QRectF seen = QRectF(rect()).adjusted(-2, -2, 2, 2);
    for (const ElevationLine& line : views_[view].lines) {
        const QLineF on(toScreen(place(view, line.a)), toScreen(place(view, line.b)));
        if (!seen.intersects(QRectF(on.p1(), on.p2()).normalized().adjusted(-1, -1, 1, 1))) {
            continue;
        }
        const bool isTeal = chosen == line.part || isMarked(line.part);
        const bool isAmber =
            glow_.level() > 0.3 && line.part < changedParts_.size() && changedParts_[line.part];
        (!line.isVisible ? hidden : isTeal ? marked : isAmber ? changed : visible).push_back(on);
    }
    QPen dashed(theme.softInk, 0.9);
    dashed.setDashPattern({4.0, 3.0});
    dashed.setCapStyle(Qt::FlatCap);
    painter.setPen(dashed);
    painter.drawLines(hidden.data(), static_cast<int>(hidden.size()));
    painter.setPen(QPen(theme.ink, 1.2));
    painter.drawLines(visible.data(), static_cast<int>(visible.size()));
    painter.setPen(QPen(theme.amber, 1.8));
    painter.drawLines(changed.data(), static_cast<int>(changed.size()));
    painter.setPen(QPen(theme.teal, 2.0));
    painter.drawLines(marked.data(), static_cast<int>(marked.size()));
}

void PieceCanvas::paintRod(QPainter& painter, const Rod& one) const {
    const Theme theme = Theme::of(palette());
    const QRectF area = toScreen(rodRect(one.kind));
    const bool isUpright = one.kind == RodKind::Heights;
    const double over = 14.0;
    const QRectF stick =
        isUpright ? area.adjusted(0, -over, 0, 6) : area.adjusted(-over / 2, 0, over / 2, 0);
    painter.setPen(QPen(theme.isDark ? theme.fieldEdge : QColor(0xc9, 0xb1, 0x7c), 1));
    painter.setBrush(theme.ash);
    painter.drawRect(stick);
    for (std::size_t i = 0; i < one.lines.size(); ++i) {
        const double at = along(one, one.lines[i].at);
        const bool isHovered = hovered_ == LineRef{one.kind, i};
        painter.setPen(QPen(isHovered ? theme.teal : theme.ink,
                            isHovered                 ? 3.0
                            : one.lines[i].isShoulder ? 1.8
                                                      : 1.0));
        const double inset = one.lines[i].isShoulder || isHovered ? 0.0 : 3.0;
        if (isUpright) {
            painter.drawLine(QPointF(stick.left() + inset, at), QPointF(stick.right() - inset, at));
        } else {
            painter.drawLine(QPointF(at, stick.top() + inset), QPointF(at, stick.bottom() - inset));
        }
    }
    if (!isUpright && width() < kNarrow) {
        return;  // no room for its name
    }
    const QString name = isUpright                     ? tr("heights")
                         : one.kind == RodKind::Widths ? tr("widths")
                                                       : tr("depths");
    painter.setPen(theme.softInk);
    const QRectF room = isUpright ? QRectF(stick.center().x() - 60, stick.top() - 22, 120, 18)
                                  : QRectF(stick.left() - 80, stick.top(), 72, stick.height());
    painter.drawText(room,
                     static_cast<int>(isUpright ? Qt::Alignment(Qt::AlignCenter)
                                                : Qt::AlignRight | Qt::AlignVCenter),
                     name);
}

// The figures beneath a level rod, in rows; those that find no room are told when pointed at.
void PieceCanvas::paintLabelsBeneath(QPainter& painter, const Rod& one) const {
    const QRectF area = toScreen(rodRect(one.kind));
    const QFontMetrics metrics(painter.font());
    std::vector<LabelSpan> spans;
    for (std::size_t i = 0; i < one.lines.size(); ++i) {
        spans.push_back({along(one, one.lines[i].at),
                         static_cast<double>(metrics.horizontalAdvance(figure(one, one.lines[i]))),
                         rankOf(one, i)});
    }
    const auto rows = labelRows(spans, kRows, 7.0);
    const auto topOf = [&](std::size_t i) { return area.bottom() + 4 + *rows[i] * kRowHeight; };
    painter.setPen(QPen(Theme::of(palette()).hairline, 1));
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i]) {
            painter.drawLine(QPointF(spans[i].at, area.bottom() + 1),
                             QPointF(spans[i].at, topOf(i) + 2));
        }
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i]) {
            const double width = spans[i].size + 4;
            paintLabel(painter,
                       one,
                       i,
                       QRectF(spans[i].at - width / 2, topOf(i), width, kRowHeight),
                       Qt::AlignCenter);
        }
    }
}

// The figures at the left of an upright rod, in one column, moved apart where they crowd.
void PieceCanvas::paintLabelsBeside(QPainter& painter, const Rod& one) const {
    const QRectF area = toScreen(rodRect(one.kind));
    const double apart = painter.fontMetrics().height() - 2.0;
    std::vector<double> lines;
    for (auto it = one.lines.rbegin(); it != one.lines.rend(); ++it) {
        lines.push_back(along(one, it->at));
    }
    const std::vector<double> places =
        spreadLabels(lines, apart, area.top() - 40.0, area.bottom() + 24.0);
    const double right = area.left() - 22.0;
    for (std::size_t i = 0; i < places.size(); ++i) {
        painter.setPen(QPen(Theme::of(palette()).hairline, 1));
        painter.drawPolyline(QPolygonF({QPointF(area.left() - 1, lines[i]),
                                        QPointF(area.left() - 5, lines[i]),
                                        QPointF(right + 6, places[i]),
                                        QPointF(right + 3, places[i])}));
        paintLabel(painter,
                   one,
                   one.lines.size() - 1 - i,
                   QRectF(right - 80, places[i] - 10, 80, 20),
                   Qt::AlignRight | Qt::AlignVCenter);
    }
}

int PieceCanvas::rankOf(const Rod& one, std::size_t line) const {
    if (hovered_ == LineRef{one.kind, line} || line == 0 || line + 1 == one.lines.size()) {
        return 0;
    }
    return drives_[static_cast<std::size_t>(one.kind)][line] ? 1 : 2;
}

void PieceCanvas::paintLabel(QPainter& painter,
                             const Rod& one,
                             std::size_t line,
                             const QRectF& room,
                             Qt::Alignment alignment) const {
    const Theme theme = Theme::of(palette());
    const bool drives = drives_[static_cast<std::size_t>(one.kind)][line];
    if (one.kind != RodKind::Heights) {
        painter.fillRect(room.adjusted(0, 2, 0, -1), theme.paper);  // leaders pass behind figures
    }
    painter.setPen(hovered_ == LineRef{one.kind, line} ? theme.teal
                   : drives                            ? theme.ink
                                                       : theme.softInk);
    painter.drawText(room, static_cast<int>(alignment), figure(one, one.lines[line]));
}

void PieceCanvas::paintRodLabels(QPainter& painter, const Rod& one) const {
    QFont small = font();
    small.setPointSizeF(small.pointSizeF() * 0.9);
    painter.setFont(small);
    if (one.kind == RodKind::Heights) {
        paintLabelsBeside(painter, one);
    } else {
        paintLabelsBeneath(painter, one);
    }
    painter.setFont(font());
}

void PieceCanvas::paintViewNames(QPainter& painter) const {
    painter.setPen(Theme::of(palette()).softInk);
    const QString names[] = {tr("front"), tr("side"), tr("plan")};
    for (std::size_t view = 0; view < views_.size(); ++view) {
        const double middle = (views_[view].min.x + views_[view].max.x) / 2;
        const QPointF top = toScreen(place(view, {middle, views_[view].max.y}));
        painter.drawText(QRectF(top.x() - 60, top.y() - 30, 120, 20), Qt::AlignCenter, names[view]);
    }
}

// Names the line of a rod, or the part, that the pointer is on, with all that hangs on it.
void PieceCanvas::paintHover(QPainter& painter) const {
    if (!hovered_ || bubble_->isVisible()) {
        return;
    }
    const Theme theme = Theme::of(palette());
    const Rod& one = rod(hovered_->kind);
    const RodLine& line = one.lines[hovered_->line];
    QString text = qt(line.name) + u"  "_s + figure(one, line);
    constexpr std::size_t kOthers = 3;
    for (std::size_t i = 0; i < line.others.size() && i < kOthers; ++i) {
        text += u"\n"_s + qt(line.others[i]);
    }
    if (line.others.size() > kOthers) {
        text +=
            u"\n"_s + tr("and %n more", nullptr, static_cast<int>(line.others.size() - kOthers));
    }
    const QRectF size =
        QFontMetricsF(font()).boundingRect(QRectF(0, 0, 400, 400), Qt::AlignLeft, text);
    const QRectF stick = toScreen(rodRect(hovered_->kind));
    const QPointF at = rodLineAt(hovered_->kind, hovered_->line);
    QRectF box(0, 0, size.width() + 20, size.height() + 12);
    if (hovered_->kind == RodKind::Heights) {
        box.moveTo(stick.right() + 8, at.y() - box.height() / 2);
    } else {
        box.moveTo(at.x() - box.width() / 2, stick.top() - box.height() - 6);
    }
    box.moveLeft(std::clamp(box.left(), 4.0, std::max(4.0, width() - box.width() - 4)));
    box.moveTop(std::clamp(box.top(), 4.0, std::max(4.0, height() - box.height() - 4)));
    painter.setPen(QPen(theme.teal, 1.2));
    painter.setBrush(theme.paper);
    painter.drawRoundedRect(box, 4, 4);
    painter.setPen(theme.ink);
    painter.drawText(box.adjusted(10, 6, -10, -6), Qt::AlignLeft, text);
}

}  // namespace shoulderline
