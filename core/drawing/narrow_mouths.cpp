#include "core/drawing/narrow_mouths.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/hatching.h"
#include "core/drawing/line_style.h"
#include "core/geometry/convex_hull.h"

namespace shoulderline {

namespace {

constexpr double kLeastClear = 0.7;  // mm

// How wide a convex ring is across its narrowest way.
double narrowestOf(const std::vector<Vec2>& ring) {
    double narrowest = 1e18;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Vec2 side = ring[(i + 1) % ring.size()] - ring[i];
        const double length = norm(side);
        double reach = 0.0;
        for (const Vec2& corner : ring) {
            reach = std::max(reach, std::abs(cross(side, corner - ring[i])));
        }
        if (length > 1e-9) {
            narrowest = std::min(narrowest, reach / length);
        }
    }
    return narrowest;
}

}  // namespace

std::vector<std::vector<Vec2>> narrowMouths(const ResolvedPart& part,
                                            const PartView& view,
                                            double scale,
                                            LineGroup lines) {
    const double least = kLeastClear + lineStyle(LineRole::Visible, lines).width;
    std::vector<std::vector<Vec2>> narrow;
    const auto add = [&](std::vector<Vec2> ring) {
        for (Vec2& corner : ring) {
            corner = corner * scale;
        }
        ring = convexHull(std::move(ring));
        if (ring.size() > 2 && narrowestOf(ring) < least) {
            narrow.push_back(std::move(ring));
        }
    };
    for (const MortiseSolid& mortise : part.mortises) {
        if (opensOn(mortise, view.face)) {
            add(ringOf(part, mortise, view));
        }
    }
    for (const ResolvedCut& cut : part.cuts) {
        const bool opens =
            cut.face == view.face || (cut.isThrough && oppositeOf(cut.face) == view.face);
        if (opens && cut.isSetOutByMiddle()) {
            add(ringOf(view.toPlane(cut.box)));
        }
    }
    return narrow;
}

bool isOfMouth(const std::vector<std::vector<Vec2>>& mouths, Vec2 a, Vec2 b) {
    constexpr double kOn = 1e-3;  // mm
    return std::any_of(mouths.begin(), mouths.end(), [&](const std::vector<Vec2>& mouth) {
        return hullContains(mouth, a, kOn) && hullContains(mouth, b, kOn);
    });
}

std::vector<Op> centreLineOutside(const std::vector<std::vector<Vec2>>& mouths, Vec2 a, Vec2 b) {
    constexpr double kAlongIt = 1.5;  // mm: one that only crosses a mouth fills nothing
    const double length = norm(b - a);
    const Vec2 along = (b - a) * (1.0 / length);
    const Vec2 across{-along.y, along.x};
    std::vector<Span> inside;
    for (const std::vector<Vec2>& mouth : mouths) {
        for (const Span& span : spansInside({mouth}, along, across, dot(a, across))) {
            if (span.to - span.from > kAlongIt) {
                inside.push_back({span.from - dot(a, along), span.to - dot(a, along)});
            }
        }
    }
    std::sort(inside.begin(), inside.end(), [](const Span& one, const Span& other) {
        return one.from < other.from;
    });
    std::vector<Op> ops;
    const auto add = [&](double from, double to) {
        if (to > from) {
            ops.push_back(Stroke{{a + along * from, a + along * to}, LineRole::Centre});
        }
    };
    double at = 0.0;
    for (const Span& span : inside) {
        add(at, std::min(span.from, length));
        at = std::max(at, span.to);
    }
    add(at, length);
    return ops;
}

}  // namespace shoulderline
