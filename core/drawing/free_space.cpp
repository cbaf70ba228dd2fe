#include "core/drawing/free_space.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/overloaded.h"

namespace shoulderline {

namespace {

// Whether the segment comes inside the rectangle (Liang and Barsky's clipping).
bool meets(const Rect& r, Vec2 a, Vec2 b) {
    double from = 0.0;
    double to = 1.0;
    const Vec2 run = b - a;
    const double p[4] = {-run.x, run.x, -run.y, run.y};
    const double q[4] = {a.x - r.min.x, r.max.x - a.x, a.y - r.min.y, r.max.y - a.y};
    for (int i = 0; i < 4; ++i) {
        if (p[i] == 0.0) {
            if (q[i] < 0.0) {
                return false;
            }
        } else if (p[i] < 0.0) {
            from = std::max(from, q[i] / p[i]);
        } else {
            to = std::min(to, q[i] / p[i]);
        }
    }
    return from <= to;
}

bool meets(const Rect& a, const Rect& b) {
    return a.min.x <= b.max.x && b.min.x <= a.max.x && a.min.y <= b.max.y && b.min.y <= a.max.y;
}

bool meets(const Rect& r, const std::vector<Vec2>& points) {
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        if (meets(r, points[i], points[i + 1])) {
            return true;
        }
    }
    return false;
}

}  // namespace

FreeSpace::FreeSpace(const std::vector<Op>& ops, const TextMetrics& metrics) {
    take(ops, metrics);
}

void FreeSpace::take(const std::vector<Op>& ops, const TextMetrics& metrics) {
    for (const Op& op : ops) {
        std::visit(Overloaded{
                       [&](const Stroke& stroke) { takeStroke(stroke); },
                       [&](const Fill& fill) { takeFill(fill); },
                       [&](const ArcOp& arc) { takeArc(arc); },
                       [&](const TextOp& text) { boxes_.push_back(boundsOf(text, metrics)); },
                       [&](const DimensionOp& dimension) {
                           const DimensionParts parts = partsOf(dimension, metrics);
                           for (const Stroke& stroke : parts.strokes) {
                               takeStroke(stroke);
                           }
                           for (const Fill& arrow : parts.arrows) {
                               takeFill(arrow);
                           }
                           boxes_.push_back(boundsOf(parts.figure, metrics));
                       },
                       [](const BeginGroup&) {},
                       [](const EndGroup&) {},
                   },
                   op);
    }
}

// By its edge: what is solid is small.
void FreeSpace::takeFill(const Fill& fill) {
    if (!fill.tint && !fill.points.empty()) {
        Stroke edge{fill.points, LineRole::Dimension};
        edge.points.push_back(fill.points.front());
        takeStroke(std::move(edge));
    }
}

// A whole circle takes its inside too; an arc by chords that keep within a tenth of a millimetre.
void FreeSpace::takeArc(const ArcOp& arc) {
    constexpr double kWithin = 0.1;
    if (std::abs(arc.sweep.degrees()) > 359.9) {
        boxes_.push_back(boundsOf(arc));
        return;
    }
    const double step = 2.0 * std::acos(1.0 - std::min(1.0, kWithin / arc.radius));
    const int chords = static_cast<int>(std::abs(arc.sweep.radians()) / step) + 1;
    Stroke stroke{{}, arc.role};
    for (int i = 0; i <= chords; ++i) {
        const Angle at = arc.start + arc.sweep * (1.0 * i / chords);
        stroke.points.push_back(arc.centre + Vec2{at.cos(), at.sin()} * arc.radius);
    }
    takeStroke(std::move(stroke));
}

void FreeSpace::takeStroke(Stroke stroke) {
    if (stroke.points.empty()) {
        return;
    }
    Rect bounds{stroke.points.front(), stroke.points.front()};
    for (const Vec2& p : stroke.points) {
        bounds.include(p);
    }
    strokes_.push_back({std::move(stroke), bounds});
}

bool FreeSpace::isFree(const Rect& area) const {
    return isClearOfLettering(area) &&
           std::none_of(strokes_.begin(), strokes_.end(), [&](const Taken& taken) {
               return meets(area, taken.bounds) && meets(area, taken.stroke.points);
           });
}

bool FreeSpace::isClearOfLettering(const Rect& area) const {
    return std::none_of(
        boxes_.begin(), boxes_.end(), [&](const Rect& box) { return meets(area, box); });
}

std::optional<Vec2> FreeSpace::placeFor(Vec2 size, const Rect& room) const {
    constexpr double kGrid = 2.0;
    constexpr double kClear = 2.0;
    for (double y = room.max.y - size.y - kClear; y >= room.min.y + kClear; y -= kGrid) {
        for (double x = room.max.x - size.x - kClear; x >= room.min.x + kClear; x -= kGrid) {
            if (isFree({{x - kClear, y - kClear}, {x + size.x + kClear, y + size.y + kClear}})) {
                return Vec2{x, y};
            }
        }
    }
    return std::nullopt;
}

}  // namespace shoulderline
