#include "core/geometry/outline.h"

#include <cstddef>
#include <numbers>

namespace shoulderline {

namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kOnRing = 1e-7;          // millimetres
constexpr double kNoCorner = 1e-6;        // radians between two tangents
constexpr double kStraightTurn = 1e-9;    // sine of a turn that counts as none
constexpr double kLargestStep = kPi / 4;  // radians: at least eight chords to a circle

std::size_t following(std::size_t i, std::size_t size) {
    return i + 1 == size ? 0 : i + 1;
}

double angleOf(Vec2 v) {
    return std::atan2(v.y, v.x);
}

double sweepOf(double bulge) {
    return 4.0 * std::atan(bulge);
}

// Into (-pi, pi].
double wrapped(double angle) {
    return std::remainder(angle, 2.0 * kPi);
}

// Whether the arc passes through the direction `angle` from its centre.
bool sweepsThrough(const OutlineArc& arc, double angle) {
    const double way = arc.sweep > 0.0 ? angle - arc.start : arc.start - angle;
    return way - 2.0 * kPi * std::floor(way / (2.0 * kPi)) <= std::abs(arc.sweep);
}

double distanceToSegment(Vec2 p, Vec2 a, Vec2 b) {
    const Vec2 along = b - a;
    const double squared = dot(along, along);
    const double t = squared > 0.0 ? std::clamp(dot(p - a, along) / squared, 0.0, 1.0) : 0.0;
    return norm(p - (a + along * t));
}

double distanceToArc(Vec2 p, const OutlineArc& arc) {
    const Vec2 out = p - arc.centre;
    if (sweepsThrough(arc, angleOf(out))) {
        return std::abs(norm(out) - arc.radius);
    }
    return std::min(norm(p - arc.at(0.0)), norm(p - arc.at(1.0)));
}

// Whether a ray from `p` along +x crosses the segment; the lower end counts, the upper does not.
bool rayCrosses(Vec2 p, Vec2 a, Vec2 b) {
    if ((a.y > p.y) == (b.y > p.y)) {
        return false;
    }
    return p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x);
}

// Whether `p` lies between the arc and its chord.
bool liesUnderArc(Vec2 p, const OutlineArc& arc) {
    if (norm(p - arc.centre) > arc.radius) {
        return false;
    }
    const Vec2 from = arc.at(0.0);
    const double side = cross(arc.at(1.0) - from, p - from);
    return arc.sweep > 0.0 ? side < 0.0 : side > 0.0;
}

bool segmentsMeet(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
    if (std::max(a.x, b.x) < std::min(c.x, d.x) || std::max(c.x, d.x) < std::min(a.x, b.x) ||
        std::max(a.y, b.y) < std::min(c.y, d.y) || std::max(c.y, d.y) < std::min(a.y, b.y)) {
        return false;
    }
    const double c1 = cross(b - a, c - a);
    const double d1 = cross(b - a, d - a);
    const double a1 = cross(d - c, a - c);
    const double b1 = cross(d - c, b - c);
    // Each segment has the other's ends on both sides, or one of them on its line.
    return std::min(c1, d1) <= 0.0 && std::max(c1, d1) >= 0.0 && std::min(a1, b1) <= 0.0 &&
           std::max(a1, b1) >= 0.0;
}

}  // namespace

Vec2 OutlineArc::at(double fraction) const {
    const double angle = start + sweep * fraction;
    return centre + Vec2{std::cos(angle), std::sin(angle)} * radius;
}

OutlineArc arcOf(const OutlineVertex& from, Vec2 to) {
    const Vec2 chord = to - from.point;
    const double b = from.bulge;
    const Vec2 leftOfChord{-chord.y, chord.x};
    const Vec2 centre = (from.point + to) * 0.5 + leftOfChord * ((1.0 - b * b) / (4.0 * b));
    const double radius = norm(chord) * (1.0 + b * b) / (4.0 * std::abs(b));
    return {centre, radius, angleOf(from.point - centre), sweepOf(b)};
}

Outline Outline::rectangle(double width, double height) {
    return {{{{0.0, 0.0}}, {{width, 0.0}}, {{width, height}}, {{0.0, height}}}};
}

Outline Outline::polygon(const std::vector<Vec2>& points) {
    Outline outline;
    outline.vertices.reserve(points.size());
    for (const Vec2 p : points) {
        outline.vertices.push_back({p});
    }
    return outline;
}

double Outline::area() const {
    double twice = 0.0;
    for (std::size_t i = 0; i < vertices.size(); ++i) {
        const OutlineVertex& from = vertices[i];
        const Vec2 to = vertices[following(i, vertices.size())].point;
        // Measured from the first corner, so that a small ring far out keeps its digits.
        twice += cross(from.point - vertices[0].point, to - vertices[0].point);
        if (from.bulge != 0.0 && !(from.point == to)) {
            const OutlineArc arc = arcOf(from, to);
            twice += arc.radius * arc.radius * (arc.sweep - std::sin(arc.sweep));
        }
    }
    return 0.5 * twice;
}

Rect Outline::bounds() const {
    if (vertices.empty()) {
        return {};
    }
    Rect rect{vertices[0].point, vertices[0].point};
    for (std::size_t i = 0; i < vertices.size(); ++i) {
        const OutlineVertex& from = vertices[i];
        const Vec2 to = vertices[following(i, vertices.size())].point;
        rect.include(to);
        if (from.bulge == 0.0 || from.point == to) {
            continue;
        }
        const OutlineArc arc = arcOf(from, to);
        constexpr Vec2 kTips[] = {{1, 0}, {0, 1}, {-1, 0}, {0, -1}};
        for (const Vec2 tip : kTips) {
            if (sweepsThrough(arc, angleOf(tip))) {
                rect.include(arc.centre + tip * arc.radius);
            }
        }
    }
    return rect;
}

FlatOutline Outline::flatten(double sagitta) const {
    FlatOutline flat;
    double arriving = 0.0;  // direction of the segment before
    if (!vertices.empty()) {
        const OutlineVertex& last = vertices.back();
        arriving = angleOf(vertices[0].point - last.point) + 0.5 * sweepOf(last.bulge);
    }
    for (std::size_t i = 0; i < vertices.size(); ++i) {
        const OutlineVertex& from = vertices[i];
        const Vec2 to = vertices[following(i, vertices.size())].point;
        const double chord = angleOf(to - from.point);
        const double sweep = sweepOf(from.bulge);
        flat.points.push_back(from.point);
        flat.isSmooth.push_back(std::abs(wrapped(chord - 0.5 * sweep - arriving)) < kNoCorner);
        arriving = chord + 0.5 * sweep;
        if (from.bulge == 0.0 || from.point == to) {
            continue;
        }
        const OutlineArc arc = arcOf(from, to);
        const double cosine = std::max(1.0 - sagitta / arc.radius, -1.0);
        const double step = std::min(2.0 * std::acos(cosine), kLargestStep);
        const int count = std::max(1, static_cast<int>(std::ceil(std::abs(sweep) / step - 1e-9)));
        for (int k = 1; k < count; ++k) {
            flat.points.push_back(arc.at(static_cast<double>(k) / count));
            flat.isSmooth.push_back(true);
        }
    }
    return flat;
}

bool Outline::isSimple() const {
    const std::vector<Vec2> p = flatten().points;
    const std::size_t n = p.size();
    if (n < 3) {
        return false;
    }
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t i1 = following(i, n);
        const std::size_t i2 = following(i1, n);
        const Vec2 here = p[i1] - p[i];
        const Vec2 next = p[i2] - p[i1];
        if (cross(here, next) == 0.0 && dot(here, next) <= 0.0) {
            return false;  // folds back, or a segment without length
        }
        for (std::size_t j = i + 2; j < n; ++j) {
            if (following(j, n) != i && segmentsMeet(p[i], p[i1], p[j], p[following(j, n)])) {
                return false;
            }
        }
    }
    return true;
}

bool Outline::isProper() const {
    for (std::size_t i = 0; i < vertices.size(); ++i) {
        if (vertices[i].point == vertices[following(i, vertices.size())].point) {
            return false;
        }
    }
    return area() > 0.0 && isSimple();
}

bool Outline::isConvex() const {
    const std::vector<Vec2> p = flatten().points;
    double turned = 0.0;
    for (std::size_t i = 0; i < p.size(); ++i) {
        const Vec2 here = p[following(i, p.size())] - p[i];
        const Vec2 next =
            p[following(following(i, p.size()), p.size())] - p[following(i, p.size())];
        const double turn = std::atan2(cross(here, next), dot(here, next));
        if (turn < -kStraightTurn) {
            return false;
        }
        turned += turn;
    }
    // Twice around would turn through 4 pi.
    return p.size() >= 3 && std::abs(turned - 2.0 * kPi) < 1.0;
}

bool Outline::contains(Vec2 p) const {
    bool inside = false;
    for (std::size_t i = 0; i < vertices.size(); ++i) {
        const OutlineVertex& from = vertices[i];
        const Vec2 to = vertices[following(i, vertices.size())].point;
        inside ^= rayCrosses(p, from.point, to);
        if (from.bulge == 0.0 || from.point == to) {
            if (distanceToSegment(p, from.point, to) <= kOnRing) {
                return true;
            }
            continue;
        }
        const OutlineArc arc = arcOf(from, to);
        if (distanceToArc(p, arc) <= kOnRing) {
            return true;
        }
        // Between chord and arc the point changes sides with respect to the chord polygon.
        inside ^= liesUnderArc(p, arc);
    }
    return inside;
}

double Outline::outsideBy(Vec2 p) const {
    double nearest = norm(vertices.front().point - p);
    for (std::size_t i = 0; i < vertices.size(); ++i) {
        const OutlineVertex& from = vertices[i];
        const Vec2 to = vertices[following(i, vertices.size())].point;
        const bool isStraight = from.bulge == 0.0 || from.point == to;
        nearest = std::min(
            nearest,
            isStraight ? distanceToSegment(p, from.point, to) : distanceToArc(p, arcOf(from, to)));
    }
    return contains(p) ? -nearest : nearest;
}

}  // namespace shoulderline
