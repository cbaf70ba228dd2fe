#include "core/drawing/hatching.h"

#include <algorithm>
#include <cmath>

namespace shoulderline {

namespace {

constexpr double kShortest = 0.2;

std::vector<Span> without(const std::vector<Span>& spans, const Span& hole) {
    std::vector<Span> left;
    for (const Span& span : spans) {
        if (hole.to <= span.from || hole.from >= span.to) {
            left.push_back(span);
            continue;
        }
        if (hole.from > span.from) {
            left.push_back({span.from, hole.from});
        }
        if (hole.to < span.to) {
            left.push_back({hole.to, span.to});
        }
    }
    return left;
}

}  // namespace

std::vector<Span> spansInside(const std::vector<std::vector<Vec2>>& rings,
                              Vec2 along,
                              Vec2 across,
                              double at) {
    std::vector<double> crossings;
    for (const std::vector<Vec2>& ring : rings) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Vec2 a = ring[i];
            const Vec2 b = ring[(i + 1) % ring.size()];
            const double da = dot(a, across) - at;
            const double db = dot(b, across) - at;
            if ((da > 0.0) != (db > 0.0)) {
                crossings.push_back(dot(a + (b - a) * (da / (da - db)), along));
            }
        }
    }
    std::sort(crossings.begin(), crossings.end());
    std::vector<Span> spans;
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
        spans.push_back({crossings[i], crossings[i + 1]});
    }
    return spans;
}

std::vector<Vec2> ringOf(const Rect& rect) {
    return {rect.min, {rect.max.x, rect.min.y}, rect.max, {rect.min.x, rect.max.y}};
}

std::vector<Op> hatch(const CutFace& face, Angle direction, double spacing) {
    const Vec2 along{direction.cos(), direction.sin()};
    const Vec2 across{-along.y, along.x};
    double low = 1e18;
    double high = -1e18;
    for (const std::vector<Vec2>& ring : face.rings) {
        for (const Vec2& p : ring) {
            low = std::min(low, dot(p, across));
            high = std::max(high, dot(p, across));
        }
    }
    std::vector<Op> ops;
    // Half a step off the lattice's zero: outlines tend to lie there.
    for (double i = std::ceil(low / spacing - 0.5); (i + 0.5) * spacing < high; i += 1.0) {
        const double at = (i + 0.5) * spacing;
        std::vector<Span> spans = spansInside(face.rings, along, across, at);
        for (const std::vector<Vec2>& hollow : face.hollows) {
            for (const Span& hole : spansInside({hollow}, along, across, at)) {
                spans = without(spans, hole);
            }
        }
        for (const Span& span : spans) {
            if (span.to - span.from >= kShortest) {
                ops.push_back(
                    Stroke{{along * span.from + across * at, along * span.to + across * at},
                           LineRole::Construction});
            }
        }
    }
    return ops;
}

}  // namespace shoulderline
