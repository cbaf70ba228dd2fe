#include "core/drawing/scale_checks.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/overloaded.h"
#include "core/measure/length.h"

namespace shoulderline {

namespace {

constexpr double kTick = 2.0;
constexpr double kLongTick = 3.5;
constexpr double kWordsHeight = 2.5;

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

// The lines and lettering of the ops, taken apart once.
struct Obstacles {
    std::vector<Stroke> strokes;
    std::vector<Rect> boxes;

    [[nodiscard]] bool comesInside(const Rect& area) const {
        return std::any_of(
                   boxes.begin(), boxes.end(), [&](const Rect& box) { return meets(area, box); }) ||
               std::any_of(strokes.begin(), strokes.end(), [&](const Stroke& stroke) {
                   return meets(area, stroke.points);
               });
    }
};

Obstacles obstaclesIn(const std::vector<Op>& ops, const TextMetrics& metrics) {
    Obstacles obstacles;
    for (const Op& op : ops) {
        std::visit(
            Overloaded{
                [&](const Stroke& stroke) { obstacles.strokes.push_back(stroke); },
                [](const Fill&) {},
                [&](const ArcOp& arc) {
                    const Vec2 r{arc.radius, arc.radius};
                    obstacles.boxes.push_back({arc.centre - r, arc.centre + r});
                },
                [&](const TextOp& text) { obstacles.boxes.push_back(boundsOf(text, metrics)); },
                [&](const DimensionOp& dimension) {
                    const DimensionParts parts = partsOf(dimension, metrics);
                    obstacles.strokes.insert(
                        obstacles.strokes.end(), parts.strokes.begin(), parts.strokes.end());
                    obstacles.boxes.push_back(boundsOf(parts.figure, metrics));
                },
                [](const BeginGroup&) {},
                [](const EndGroup&) {},
            },
            op);
    }
    return obstacles;
}

TextOp words(Vec2 at, const std::string& text, Align align = Align::Left) {
    return {at, text, kWordsHeight, align, false, false};
}

Stroke square(Vec2 corner, double side) {
    return {
        {corner, corner + Vec2{side, 0}, corner + Vec2{side, side}, corner + Vec2{0, side}, corner},
        LineRole::Dimension};
}

}  // namespace

std::vector<Op> checkBar(Vec2 left, bool inInches) {
    const double inches = kCheckInches * Length::kMmPerInch;
    std::vector<Op> ops{
        Stroke{{left, left + Vec2{inInches ? inches : kCheckLength, 0}}, LineRole::Dimension}};
    for (int i = 0; i <= 10; ++i) {
        const Vec2 at = left + Vec2{kCheckLength * i / 10.0, 0};
        ops.push_back(
            Stroke{{at, at - Vec2{0, i % 5 == 0 ? kLongTick : kTick}}, LineRole::Dimension});
    }
    ops.push_back(words(left + Vec2{kCheckLength - 1.0, -kLongTick - 0.4}, "100 mm", Align::Right));
    if (inInches) {
        for (int i = 0; i <= 16; ++i) {
            const Vec2 at = left + Vec2{inches * i / 16.0, 0};
            ops.push_back(
                Stroke{{at, at + Vec2{0, i % 4 == 0 ? kLongTick : kTick}}, LineRole::Dimension});
        }
        ops.push_back(
            words(left + Vec2{inches - 1.0, kLongTick + 0.4 + kWordsHeight}, "4 in", Align::Right));
    }
    return ops;
}

std::vector<Op> uprightCheckBar(Vec2 foot) {
    std::vector<Op> ops{Stroke{{foot, foot - Vec2{0, kCheckLength}}, LineRole::Dimension}};
    for (int i = 0; i <= 10; ++i) {
        const Vec2 at = foot - Vec2{0, kCheckLength * i / 10.0};
        ops.push_back(
            Stroke{{at, at + Vec2{i % 5 == 0 ? kLongTick : kTick, 0}}, LineRole::Dimension});
    }
    TextOp text = words(
        foot + Vec2{kLongTick + 0.4 + kWordsHeight, -kCheckLength + 1.0}, "100 mm", Align::Right);
    text.isTurned = true;
    ops.push_back(text);
    return ops;
}

Vec2 checkSquareSize(bool inInches) {
    const double side = inInches ? kCheckInches * Length::kMmPerInch : kCheckLength;
    return {side, side};
}

std::vector<Op> checkSquare(Vec2 corner, bool inInches) {
    std::vector<Op> ops{square(corner, kCheckLength)};
    if (inInches) {
        ops.push_back(square(corner, kCheckInches * Length::kMmPerInch));
    }
    const double line = 2.0 * kWordsHeight;
    Vec2 at = corner + Vec2{4.0, 3.0 + kWordsHeight};
    for (const std::string& text : {std::string("Lay a rule on this square."),
                                    std::string("Inner: 100 mm each way."),
                                    inInches ? std::string("Outer: 4 in each way.") : std::string(),
                                    std::string("If it is off, print at 100 %, actual size.")}) {
        if (!text.empty()) {
            ops.push_back(words(at, text));
            at.y += line;
        }
    }
    return ops;
}

std::optional<Vec2> freePlace(const std::vector<Op>& ops,
                              const Rect& room,
                              Vec2 size,
                              const TextMetrics& metrics) {
    constexpr double kGrid = 2.0;
    constexpr double kClear = 2.0;
    const Obstacles obstacles = obstaclesIn(ops, metrics);
    for (double y = room.max.y - size.y - kClear; y >= room.min.y + kClear; y -= kGrid) {
        for (double x = room.max.x - size.x - kClear; x >= room.min.x + kClear; x -= kGrid) {
            const Rect area{{x - kClear, y - kClear}, {x + size.x + kClear, y + size.y + kClear}};
            if (!obstacles.comesInside(area)) {
                return Vec2{x, y};
            }
        }
    }
    return std::nullopt;
}

bool isFree(const std::vector<Op>& ops, const Rect& area, const TextMetrics& metrics) {
    return !obstaclesIn(ops, metrics).comesInside(area);
}

}  // namespace shoulderline
