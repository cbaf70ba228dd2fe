#include "core/drawing/dimension_parts.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>

#include "core/drawing/overloaded.h"

namespace shoulderline {

namespace {

Vec2 unit(Vec2 v) {
    const double n = norm(v);
    return n > 0.0 ? v * (1.0 / n) : v;
}

std::optional<Stroke> extensionLine(Vec2 from, Vec2 to) {
    const double length = norm(to - from);
    if (length <= kExtensionGap) {
        return std::nullopt;
    }
    const Vec2 way = unit(to - from);
    return Stroke{{from + way * kExtensionGap, to + way * kExtensionOverrun}, LineRole::Dimension};
}

Rect textRect(const TextOp& text, const TextMetrics& metrics) {
    const TextLayout layout = layOutText(text.text, text.height, text.isBold, metrics);
    const double shift = text.align == Align::Left
                             ? 0.0
                             : (text.align == Align::Centre ? -layout.width / 2.0 : -layout.width);
    if (text.isTurned) {
        // Reads upwards: x of the lettering runs to -y of the sheet, its up to -x.
        return {{text.at.x - layout.ascent, text.at.y - shift - layout.width},
                {text.at.x + layout.descent, text.at.y - shift}};
    }
    return {{text.at.x + shift, text.at.y - layout.ascent},
            {text.at.x + shift + layout.width, text.at.y + layout.descent}};
}

class Bounds {
  public:
    void include(Vec2 p) {
        if (!rect_) {
            rect_ = Rect{p, p};
        }
        rect_->include(p);
    }
    void include(const Rect& rect) {
        include(rect.min);
        include(rect.max);
    }
    void include(const std::vector<Vec2>& points) {
        for (const Vec2& p : points) {
            include(p);
        }
    }
    [[nodiscard]] Rect rect() const { return rect_.value_or(Rect{}); }

  private:
    std::optional<Rect> rect_;
};

}  // namespace

Fill arrowhead(Vec2 tip, Vec2 towards, double length) {
    const Vec2 back = unit(tip - towards) * -length;
    const double half = length * std::tan(Angle::degrees(7.5).radians());
    const Vec2 across = unit({-back.y, back.x}) * half;
    return {{tip, tip + back + across, tip + back - across}, false};
}

namespace {

Stroke originCircle(Vec2 centre) {
    constexpr int kSides = 24;
    Stroke circle{{}, LineRole::Dimension};
    for (int i = 0; i <= kSides; ++i) {
        const Angle at = Angle::degrees(360.0 * i / kSides);
        circle.points.push_back(centre + Vec2{at.cos(), at.sin()} * kOriginRadius);
    }
    return circle;
}

Fill runningDot(Vec2 centre) {
    constexpr double kRadius = 0.5;  // mm
    constexpr int kSides = 16;
    Fill dot;
    for (int i = 0; i < kSides; ++i) {
        const Angle at = Angle::degrees(360.0 * i / kSides);
        dot.points.push_back(centre + Vec2{at.cos(), at.sin()} * kRadius);
    }
    return dot;
}

DimensionParts runningPartsOf(const DimensionOp& d) {
    DimensionParts parts;
    parts.figure = {d.textAt, d.text, d.height, Align::Centre, d.isTurned, false};
    const Vec2 out = unit(d.lineTo - d.to);
    const Vec2 past = d.lineTo + out * kRunningOverrun;
    parts.strokes.push_back(
        {{d.to + out * kExtensionGap, past, d.running->foot}, LineRole::Dimension});
    if (d.running->isLongest) {
        parts.strokes.push_back({{d.from + out * kExtensionGap, d.lineFrom + out * kRunningOverrun},
                                 LineRole::Dimension});
        parts.strokes.push_back({{d.lineFrom, d.lineTo}, LineRole::Dimension});
        parts.strokes.push_back(originCircle(d.lineFrom));
    }
    parts.arrows.push_back(d.running->isDot ? runningDot(d.lineTo)
                                            : arrowhead(d.lineTo, d.lineFrom, d.height));
    return parts;
}

}  // namespace

DimensionParts partsOf(const DimensionOp& d, const TextMetrics& metrics) {
    if (d.running) {
        return runningPartsOf(d);
    }
    DimensionParts parts;
    for (const auto& line : {extensionLine(d.from, d.lineFrom), extensionLine(d.to, d.lineTo)}) {
        if (line) {
            parts.strokes.push_back(*line);
        }
    }
    const Vec2 along = unit(d.lineTo - d.lineFrom);
    const double span = norm(d.lineTo - d.lineFrom);
    parts.figure = {d.textAt, d.text, d.height, Align::Centre, d.isTurned, false};

    const double half = metrics.width(d.text, d.height, false) / 2.0;
    const double middle = dot(d.textAt - d.lineFrom, along);
    double low = 0.0;
    double high = span;
    if (d.arrowsOutside) {
        low -= 2.0 * d.height;
        high += 2.0 * d.height;
    }
    if (middle - half < 0.0 || middle + half > span) {
        low = std::min(low, middle - half);
        high = std::max(high, middle + half);
    }
    parts.strokes.push_back(
        {{d.lineFrom + along * low, d.lineFrom + along * high}, LineRole::Dimension});
    const Vec2 inwards = d.arrowsOutside ? along * -1.0 : along;
    parts.arrows.push_back(arrowhead(d.lineFrom, d.lineFrom + inwards, d.height));
    parts.arrows.push_back(arrowhead(d.lineTo, d.lineTo - inwards, d.height));
    return parts;
}

Rect boundsOf(const TextOp& text, const TextMetrics& metrics) {
    return textRect(text, metrics);
}

Rect boundsOf(const ArcOp& arc) {
    const auto at = [&](Angle angle) {
        return arc.centre + Vec2{angle.cos(), angle.sin()} * arc.radius;
    };
    const Vec2 start = at(arc.start);
    Rect rect{start, start};
    rect.include(at(arc.start + arc.sweep));
    // Where it runs through the middle of one of its circle's four sides, it reaches farthest.
    const double from = std::min(arc.start.degrees(), (arc.start + arc.sweep).degrees());
    const double to = std::max(arc.start.degrees(), (arc.start + arc.sweep).degrees());
    for (double side = std::ceil(from / 90.0) * 90.0; side <= to; side += 90.0) {
        rect.include(at(Angle::degrees(side)));
    }
    return rect;
}

Rect boundsOf(const std::vector<Op>& ops, const TextMetrics& metrics) {
    Bounds bounds;
    for (const Op& op : ops) {
        std::visit(Overloaded{
                       [&](const Stroke& stroke) { bounds.include(stroke.points); },
                       [&](const Fill& fill) { bounds.include(fill.points); },
                       [&](const ArcOp& arc) { bounds.include(boundsOf(arc)); },
                       [&](const TextOp& text) { bounds.include(textRect(text, metrics)); },
                       [&](const DimensionOp& dimension) {
                           const DimensionParts parts = partsOf(dimension, metrics);
                           for (const Stroke& stroke : parts.strokes) {
                               bounds.include(stroke.points);
                           }
                           bounds.include(textRect(parts.figure, metrics));
                       },
                       [](const BeginGroup&) {},
                       [](const EndGroup&) {},
                   },
                   op);
    }
    return bounds.rect();
}

void append(std::vector<Op>& ops, std::vector<Op> more) {
    ops.insert(
        ops.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

void move(std::vector<Op>& ops, Vec2 by) {
    const auto shift = [by](std::vector<Vec2>& points) {
        for (Vec2& p : points) {
            p = p + by;
        }
    };
    for (Op& op : ops) {
        std::visit(Overloaded{
                       [&](Stroke& stroke) { shift(stroke.points); },
                       [&](Fill& fill) { shift(fill.points); },
                       [&](ArcOp& arc) { arc.centre = arc.centre + by; },
                       [&](TextOp& text) { text.at = text.at + by; },
                       [&](DimensionOp& d) {
                           for (Vec2* p : {&d.from, &d.to, &d.lineFrom, &d.lineTo, &d.textAt}) {
                               *p = *p + by;
                           }
                           if (d.running) {
                               d.running->foot = d.running->foot + by;
                           }
                       },
                       [](BeginGroup&) {},
                       [](EndGroup&) {},
                   },
                   op);
    }
}

}  // namespace shoulderline
