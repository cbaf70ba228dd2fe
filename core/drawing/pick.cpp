#include "core/drawing/pick.h"

#include <limits>

#include "core/drawing/overloaded.h"

namespace shoulderline {

namespace {

double distanceToSegment(Vec2 p, Vec2 a, Vec2 b) {
    const Vec2 run = b - a;
    const double squared = dot(run, run);
    const double t = squared > 0.0 ? std::clamp(dot(p - a, run) / squared, 0.0, 1.0) : 0.0;
    return norm(p - (a + run * t));
}

double distanceTo(Vec2 p, const std::vector<Vec2>& points) {
    double nearest = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        nearest = std::min(nearest, distanceToSegment(p, points[i], points[i + 1]));
    }
    return nearest;
}

double signedArea(const std::vector<Vec2>& ring) {
    double twice = 0.0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        twice += cross(ring[i], ring[(i + 1) % ring.size()]);
    }
    return twice / 2.0;
}

bool holds(const std::vector<Vec2>& ring, Vec2 p) {
    bool inside = false;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
        const bool straddles = (ring[i].y > p.y) != (ring[j].y > p.y);
        if (straddles &&
            p.x <
                (ring[j].x - ring[i].x) * (p.y - ring[i].y) / (ring[j].y - ring[i].y) + ring[i].x) {
            inside = !inside;
        }
    }
    return inside;
}

// Keeps the best of what lies at the point.
struct Candidates {
    Vec2 at;
    double nearest;
    std::optional<Subject> line;
    double smallest = std::numeric_limits<double>::infinity();
    std::optional<Subject> area;

    void offerLine(const Subject& subject, double distance) {
        if (distance <= nearest) {
            nearest = distance;
            line = subject;
        }
    }
    void offerArea(const Subject& subject, const std::vector<Vec2>& ring) {
        const double size = std::abs(signedArea(ring));
        if (ring.size() >= 3 && size < smallest && holds(ring, at)) {
            smallest = size;
            area = subject;
        }
    }
};

}  // namespace

std::optional<Subject> subjectAt(const Sheet& sheet, Vec2 at, double tolerance) {
    Candidates found{
        at, tolerance, std::nullopt, std::numeric_limits<double>::infinity(), std::nullopt};
    std::vector<Subject> open;
    for (const Op& op : sheet.ops) {
        const bool isNamed = !open.empty() && open.back().kind != SubjectKind::None;
        const Subject subject = open.empty() ? Subject{} : open.back();
        std::visit(
            Overloaded{
                [&](const Stroke& stroke) {
                    if (isNamed) {
                        found.offerLine(subject, distanceTo(at, stroke.points));
                    }
                },
                [&](const Fill& fill) {
                    if (isNamed) {
                        found.offerArea(subject, fill.points);
                    }
                },
                [&](const ArcOp& arc) {
                    if (isNamed) {
                        found.offerLine(subject, std::abs(norm(at - arc.centre) - arc.radius));
                    }
                },
                [](const TextOp&) {},
                [&](const DimensionOp& dimension) {
                    if (isNamed) {
                        found.offerLine(
                            subject, distanceToSegment(at, dimension.lineFrom, dimension.lineTo));
                    }
                },
                [&](const BeginGroup& group) { open.push_back(group.subject); },
                [&](const EndGroup&) {
                    if (!open.empty()) {
                        open.pop_back();
                    }
                },
            },
            op);
    }
    return found.line ? found.line : found.area;
}

}  // namespace shoulderline
