#include "core/drawing/pattern_arcs.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/free_space.h"

namespace shoulderline {

namespace {

constexpr double kArcHeight = 2.5;
constexpr double kNear = 25.0;  // mm round the drawing within which a centre is marked

std::string nameOf(std::size_t number) {
    const std::string last(1, static_cast<char>('a' + number % 26));
    return number < 26 ? last : nameOf(number / 26 - 1) + last;
}

// A free place for a letter beside the middle of the arc: inside it or outside, near it.
Vec2 placeBeside(const OutlineArc& arc, const FreeSpace& space, double width) {
    const Vec2 half{width / 2.0 + 0.6, kArcHeight / 2.0 + 0.6};
    for (const double off : {3.0, 4.5, 6.0, 8.0, 11.0, 15.0}) {
        for (const double fraction : {0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.5 - 0.4, 0.9}) {
            const Vec2 on = arc.at(fraction);
            const Vec2 out = (on - arc.centre) * (1.0 / arc.radius);
            for (const double way : {-1.0, 1.0}) {
                const Vec2 centre = on + out * (way * off);
                if (space.isFree({centre - half, centre + half})) {
                    return centre;
                }
            }
        }
    }
    return arc.at(0.5);
}

}  // namespace

std::vector<std::string> addArcLetters(const Outline& outline,
                                       const std::string& datum,
                                       const LengthStyle& style,
                                       const TextMetrics& metrics,
                                       std::vector<Op>& ops) {
    const auto shown = [&](double mm) { return letterLength(Length::mm(mm), style); };
    FreeSpace space(ops, metrics);
    const Rect bounds = boundsOf(ops, metrics);
    std::vector<std::string> list;
    std::vector<std::string> circles;
    const std::vector<OutlineVertex>& vertices = outline.vertices;
    for (std::size_t i = 0; i < vertices.size(); ++i) {
        if (vertices[i].bulge == 0.0) {
            continue;
        }
        const OutlineArc arc = arcOf(vertices[i], vertices[(i + 1) % vertices.size()].point);
        const std::string circle = "R " + shown(arc.radius) + ",  centre " + shown(arc.centre.x) +
                                   " along, " + shown(arc.centre.y) + " from the " + datum;
        // Arcs of one circle have one letter.
        const auto known = std::find(circles.begin(), circles.end(), circle);
        const std::string name = nameOf(static_cast<std::size_t>(known - circles.begin()));
        const double width = metrics.width(name, kArcHeight, false);
        const Vec2 at = placeBeside(arc, space, width);
        std::vector<Op> letter{TextOp{
            at + Vec2{0.0, kArcHeight / 2.0}, name, kArcHeight, Align::Centre, false, false}};
        space.take(letter, metrics);
        ops.push_back(letter.front());
        const Vec2 c = arc.centre;
        if (c.x > bounds.min.x - kNear && c.x < bounds.max.x + kNear &&
            c.y > bounds.min.y - kNear && c.y < bounds.max.y + kNear) {
            ops.push_back(Stroke{{c - Vec2{2.0, 0.0}, c + Vec2{2.0, 0.0}}, LineRole::Dimension});
            ops.push_back(Stroke{{c - Vec2{0.0, 2.0}, c + Vec2{0.0, 2.0}}, LineRole::Dimension});
        }
        if (known == circles.end()) {
            list.push_back(name + ":  " + circle);
            circles.push_back(circle);
        }
    }
    return list;
}

}  // namespace shoulderline
