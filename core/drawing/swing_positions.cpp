#include "core/drawing/swing_positions.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/piece_view.h"
#include "core/measure/angle_text.h"

namespace shoulderline {

namespace {

constexpr double kAlong = 1.0 - 1e-9;    // cosine: the view looks along the pivots
constexpr double kPositionHeight = 2.5;  // mm, of the lettering
constexpr double kRoundPosition =
    1.5;  // mm, between a top and its lettering, and between letterings

SwungOutline outlineAt(const ResolvedPiece& resolved,
                       std::size_t index,
                       const Frame& frame,
                       const View& view) {
    ResolvedPart part = resolved.parts[index];
    part.frame = frame;
    return {index, coveredBy(part, part.wood().whole().transformed(frame), view)};
}

Vec2 highestOf(const std::vector<Vec2>& ring) {
    const auto highest = std::max_element(
        ring.begin(), ring.end(), [](const Vec2& a, const Vec2& b) { return a.y < b.y; });
    return highest == ring.end() ? Vec2{} : *highest;
}

}  // namespace

std::vector<SwungView> swungViews(const ResolvedPiece& resolved, const View& view) {
    std::vector<SwungView> views;
    if (std::abs(view.towardsViewer.x) < kAlong) {
        return views;
    }
    for (const ResolvedSwing& swing : resolved.swings) {
        if (swing.leaning.empty()) {
            continue;
        }
        const std::size_t leaning = swing.leaning.front();
        for (std::size_t i = 0; i < swing.positions.size(); ++i) {
            const SwingPosition& position = swing.positions[i];
            const Frame leant = swing.swungTo(resolved.parts[leaning].frame, position.lean);
            SwungOutline back = outlineAt(resolved, leaning, leant, view);
            SwungView station{position.name, position.lean, highestOf(back.ring), {}};
            if (i != swing.at) {
                const Frame bar = swing.barAt(resolved.parts[swing.bar].frame, position);
                station.outlines.push_back(std::move(back));
                station.outlines.push_back(outlineAt(resolved, swing.bar, bar, view));
            }
            views.push_back(std::move(station));
        }
    }
    return views;
}

std::vector<Op> swungOps(const ResolvedPiece& resolved,
                         const std::vector<SwungView>& stations,
                         double scale) {
    std::vector<Op> ops;
    for (const SwungView& station : stations) {
        for (const SwungOutline& outline : station.outlines) {
            Stroke stroke{{}, LineRole::Neighbour};
            for (const Vec2& p : outline.ring) {
                stroke.points.push_back({p.x * scale, -p.y * scale});
            }
            if (stroke.points.empty()) {
                continue;
            }
            stroke.points.push_back(stroke.points.front());
            ops.push_back(BeginGroup{{SubjectKind::Part, outline.part},
                                     resolved.parts[outline.part].name + ", " + station.name});
            ops.push_back(std::move(stroke));
            ops.push_back(EndGroup{});
        }
    }
    return ops;
}

std::vector<Op> stationLabels(const std::vector<SwungView>& stations,
                              double scale,
                              const TextMetrics& metrics) {
    std::vector<Op> ops;
    std::vector<const SwungView*> fromLeft;
    double level = 0.0;
    for (const SwungView& station : stations) {
        fromLeft.push_back(&station);
        level = std::min(level, -station.top.y * scale - kRoundPosition);
    }
    std::sort(fromLeft.begin(), fromLeft.end(), [](const SwungView* a, const SwungView* b) {
        return a->top.x < b->top.x;
    });
    double free = -1e9;
    for (const SwungView* station : fromLeft) {
        const Vec2 top{station->top.x * scale, -station->top.y * scale};
        TextOp text;
        text.text = station->name + " " + showAngle(station->lean);
        text.height = kPositionHeight;
        text.isTurned = true;
        text.at = {top.x, level - kRoundPosition};
        const Rect covers = boundsOf(text, metrics);
        // Over its top, or as far to the right as its neighbour asks.
        const double middle = (covers.min.x + covers.max.x) / 2;
        const double by = std::max(top.x - middle, free - covers.min.x);
        text.at.x += by;
        free = covers.max.x + by + kRoundPosition;
        ops.push_back(
            Stroke{{{top.x, top.y - kRoundPosition / 2}, {middle + by, level - kRoundPosition / 2}},
                   LineRole::Dimension});
        ops.push_back(std::move(text));
    }
    return ops;
}

}  // namespace shoulderline
