#include "ui/painting/sheet_painter.h"

#include <QPainterPath>
#include <QPolygonF>
#include <QVarLengthArray>
#include <algorithm>
#include <cmath>

#include "core/drawing/dashes.h"
#include "core/drawing/dimension_parts.h"
#include "core/drawing/lettering_widths.h"
#include "core/drawing/overloaded.h"
#include "ui/painting/lettering_font.h"

namespace shoulderline {

namespace {

constexpr double kCapPixels = static_cast<double>(kLetteringPixels) * kCapHeightUnits / kUnitsPerEm;
constexpr double kWiderWhenMarked = 1.6;

QPointF point(Vec2 p) {
    return {p.x, p.y};
}

bool isAmong(const std::vector<Subject>& subjects, const Subject& subject) {
    return std::find(subjects.begin(), subjects.end(), subject) != subjects.end();
}

bool isSoft(LineRole role) {
    switch (role) {
        case LineRole::Visible:
        case LineRole::Narrow:
        case LineRole::CutPlane:
        case LineRole::Border:
            return false;
        case LineRole::Hidden:
        case LineRole::Centre:
        case LineRole::Dimension:
        case LineRole::Construction:
        case LineRole::Neighbour:
            return true;
    }
    return false;
}

// Paints one sheet: keeps what is chosen or changed in the groups that are open.
class Run {
  public:
    Run(QPainter& painter,
        const Sheet& sheet,
        const SheetLook& look,
        const SheetPainter& sheets,
        const TextMetrics& metrics)
        : painter_(painter), sheet_(sheet), look_(look), sheets_(sheets), metrics_(metrics) {}

    void paint(const Op& op) {
        std::visit(Overloaded{
                       [&](const Stroke& stroke) { line(stroke); },
                       [&](const Fill& fill) { area(fill); },
                       [&](const ArcOp& arc) { curve(arc); },
                       [&](const TextOp& text) { lettering(text); },
                       [&](const DimensionOp& dimension) { size(dimension); },
                       [&](const BeginGroup& group) { marks_.push_back(markOf(group.subject)); },
                       [&](const EndGroup&) {
                           if (!marks_.empty()) {
                               marks_.pop_back();
                           }
                       },
                   },
                   op);
    }

  private:
    enum class Mark { None, Chosen, Changed };

    [[nodiscard]] Mark mark() const { return marks_.empty() ? Mark::None : marks_.back(); }

    [[nodiscard]] Mark markOf(const Subject& subject) const {
        if (subject.kind != SubjectKind::None) {
            if (isAmong(look_.chosen, subject)) {
                return Mark::Chosen;
            }
            if (isAmong(look_.changed, subject)) {
                return Mark::Changed;
            }
        }
        return mark();
    }

    [[nodiscard]] QColor colour(bool soft) const {
        switch (mark()) {
            case Mark::Chosen:
                return look_.colours.chosen;
            case Mark::Changed:
                return look_.colours.changed;
            case Mark::None:
                break;
        }
        return soft ? look_.colours.softInk : look_.colours.ink;
    }

    [[nodiscard]] QPen penFor(const LineStyle& style, LineRole role) const {
        const double wider = mark() != Mark::None && !isSoft(role) ? kWiderWhenMarked : 1.0;
        const double width = std::max(style.width, look_.leastWidth) * wider;
        // Corners where separate edges meet close up; dashes must not grow.
        const Qt::PenCapStyle cap =
            style.type == LineType::Continuous && role != LineRole::Dimension ? Qt::RoundCap
                                                                              : Qt::FlatCap;
        return {colour(isSoft(role)), width, Qt::SolidLine, cap, Qt::RoundJoin};
    }

    void line(const Stroke& stroke) {
        const LineStyle style = lineStyle(stroke.role, sheet_.lines);
        painter_.setPen(penFor(style, stroke.role));
        if (style.type == LineType::Continuous && stroke.points.size() > 2) {
            QPolygonF polygon;
            for (const Vec2& p : stroke.points) {
                polygon << point(p);
            }
            painter_.drawPolyline(polygon);
            return;
        }
        QVarLengthArray<QLineF, 64> lines;
        for (const DrawnLine& drawn : drawnLines(stroke.points, style)) {
            lines.append({point(drawn.a), point(drawn.b)});
        }
        painter_.drawLines(lines.constData(), static_cast<int>(lines.size()));
    }

    void area(const Fill& fill) {
        QColor brush = colour(false);
        if (fill.tint) {
            brush = mark() == Mark::Chosen ? look_.colours.chosenTint
                                           : (mark() == Mark::Changed ? look_.colours.changedTint
                                                                      : look_.colours.tint);
            if (!brush.isValid()) {
                return;
            }
        }
        QPolygonF polygon;
        for (const Vec2& p : fill.points) {
            polygon << point(p);
        }
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(brush);
        painter_.drawPolygon(polygon);
        painter_.setBrush(Qt::NoBrush);
    }

    void curve(const ArcOp& arc) {
        const LineStyle style = lineStyle(arc.role, sheet_.lines);
        painter_.setPen(penFor(style, arc.role));
        painter_.setBrush(Qt::NoBrush);
        const double length = std::abs(arc.sweep.radians()) * arc.radius;
        const double way = arc.sweep.radians() < 0 ? -1.0 : 1.0;
        for (const DrawnStretch& stretch : drawnStretches(length, style)) {
            painter_.drawPath(arcPath(arc.centre,
                                      arc.radius,
                                      arc.start.radians() + way * stretch.from / arc.radius,
                                      way * (stretch.to - stretch.from) / arc.radius));
        }
    }

    // QPainter's own arcs count sixteenths of a degree, 9 mm on a radius of 8 m: cubics for an
    // eighth of a turn at most keep within 4e-6 of the radius, of flat arcs far closer.
    static QPainterPath arcPath(Vec2 centre, double radius, double start, double sweep) {
        constexpr double kMost = 0.7854;
        const int pieces = static_cast<int>(std::ceil(std::abs(sweep) / kMost));
        const double turn = sweep / std::max(1, pieces);
        const double arm = 4.0 / 3.0 * std::tan(turn / 4.0) * radius;
        const auto on = [&](double angle) { return Vec2{std::cos(angle), std::sin(angle)}; };
        const auto tangent = [](Vec2 way) { return Vec2{-way.y, way.x}; };
        QPainterPath path(point(centre + on(start) * radius));
        for (int i = 0; i < pieces; ++i) {
            const Vec2 from = on(start + turn * i);
            const Vec2 to = on(start + turn * (i + 1));
            path.cubicTo(point(centre + from * radius + tangent(from) * arm),
                         point(centre + to * radius - tangent(to) * arm),
                         point(centre + to * radius));
        }
        return path;
    }

    void lettering(const TextOp& text) {
        painter_.setPen(colour(false));
        sheets_.paintText(painter_, text);
    }

    void size(const DimensionOp& dimension) {
        const DimensionParts parts = partsOf(dimension, metrics_);
        for (const Stroke& stroke : parts.strokes) {
            line(stroke);
        }
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(colour(true));
        for (const Fill& arrow : parts.arrows) {
            QPolygonF polygon;
            for (const Vec2& p : arrow.points) {
                polygon << point(p);
            }
            painter_.drawPolygon(polygon);
        }
        painter_.setBrush(Qt::NoBrush);
        lettering(parts.figure);
    }

    QPainter& painter_;
    const Sheet& sheet_;
    const SheetLook& look_;
    const SheetPainter& sheets_;
    const TextMetrics& metrics_;
    std::vector<Mark> marks_;
};

}  // namespace

SheetPainter::SheetPainter() : font_(letteringFont()) {}

void SheetPainter::paint(QPainter& painter, const Sheet& sheet, const SheetLook& look) const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setRenderHint(QPainter::TextAntialiasing);
    Run run(painter, sheet, look, *this, metrics_);
    for (const Op& op : sheet.ops) {
        run.paint(op);
    }
    painter.restore();
}

void SheetPainter::paintText(QPainter& painter, const TextOp& text) const {
    const TextLayout layout = layOutText(text.text, text.height, text.isBold, metrics_);
    const double shift = text.align == Align::Left
                             ? 0.0
                             : (text.align == Align::Centre ? -layout.width / 2.0 : -layout.width);
    painter.save();
    painter.translate(point(text.at));
    if (text.isTurned) {
        painter.rotate(-90.0);
    }
    painter.translate(shift, 0.0);
    painter.setFont(font_);
    const QPen ink(
        painter.pen().color(), 0.1 * text.height * kFractionFigure, Qt::SolidLine, Qt::FlatCap);
    for (const TextRun& run : layout.runs) {
        painter.save();
        painter.translate(point(run.at));
        const double scale = run.height / kCapPixels;
        painter.scale(scale, scale);
        const QString words = QString::fromStdString(run.text);
        painter.drawText(QPointF(0.0, 0.0), words);
        if (text.isBold) {
            painter.drawText(QPointF(kBoldShift * kCapPixels, 0.0), words);
        }
        painter.restore();
    }
    painter.setPen(ink);
    for (const FractionBar& bar : layout.bars) {
        painter.drawLine(point(bar.a), point(bar.b));
    }
    painter.restore();
}

}  // namespace shoulderline
