#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/drawing/rod_labels.h"
#include "core/measure/angle_text.h"
#include "ui/look/text.h"
#include "ui/look/theme.h"
#include "ui/pages/piece_canvas.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

void PieceCanvas::paintScene(QPainter& painter) {
    finish();
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
        paintStations(painter, view);
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
    // At the far end of a level rod: the figures of the heights come down past its near one.
    const QRectF room = isUpright ? QRectF(stick.center().x() - 60, stick.top() - 22, 120, 18)
                                  : QRectF(stick.right() + 8, stick.top(), 72, stick.height());
    painter.drawText(room,
                     static_cast<int>(isUpright ? Qt::Alignment(Qt::AlignCenter)
                                                : Qt::AlignLeft | Qt::AlignVCenter),
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
        spreadLabels(lines, apart, area.top() - 6.0, area.bottom() + 60.0);
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

// What swings as it stands at its other stations, and the lean of each above its top.
void PieceCanvas::paintStations(QPainter& painter, std::size_t view) const {
    const Theme theme = Theme::of(palette());
    QPen chain(theme.softInk, 0.9);
    chain.setDashPattern({12.0, 3.0, 1.0, 3.0, 1.0, 3.0});
    chain.setCapStyle(Qt::FlatCap);
    std::vector<const SwungView*> fromLeft;
    for (const SwungView& station : views_[view].stations) {
        painter.setPen(chain);
        for (const SwungOutline& outline : station.outlines) {
            QPolygonF ring;
            for (const Vec2& p : outline.ring) {
                ring << toScreen(place(view, p));
            }
            painter.setBrush(Qt::NoBrush);
            painter.drawPolygon(ring);
        }
        fromLeft.push_back(&station);
    }
    std::sort(fromLeft.begin(), fromLeft.end(), [](const SwungView* a, const SwungView* b) {
        return a->top.x < b->top.x;
    });
    painter.setPen(theme.softInk);
    const double level = toScreen(place(view, {0.0, views_[view].allMax.y})).y() - 3.0;
    double free = -1e9;
    for (const SwungView* station : fromLeft) {
        const QString text = qt(showAngle(station->lean));
        const double wide = painter.fontMetrics().horizontalAdvance(text);
        const double left = std::max(toScreen(place(view, station->top)).x() - wide / 2, free);
        painter.drawText(QPointF(left, level), text);
        free = left + wide + 6.0;
    }
}

void PieceCanvas::paintViewNames(QPainter& painter) const {
    painter.setPen(Theme::of(palette()).softInk);
    const QString names[] = {tr("front"), tr("side"), tr("plan")};
    for (std::size_t view = 0; view < views_.size(); ++view) {
        const double middle = (views_[view].min.x + views_[view].max.x) / 2;
        QPointF top = toScreen(place(view, {middle, views_[view].allMax.y}));
        top.ry() -= views_[view].stations.empty() ? 0.0 : kStationRow;
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
