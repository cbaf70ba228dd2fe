#include "core/geometry/bent_line.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace shoulderline {

namespace {

// The angle that the run from `vertex` turns through, counter-clockwise positive.
double turnOf(const OutlineVertex& vertex) {
    return 4.0 * std::atan(vertex.bulge);
}

double runLength(const OutlineVertex& from, Vec2 to) {
    const double chord = norm(to - from.point);
    const double turn = turnOf(from);
    return from.bulge == 0.0 ? chord : chord * (turn / 2) / std::sin(turn / 2);
}

double radiusOf(const OutlineVertex& from, Vec2 to) {
    return from.bulge == 0.0 ? std::numeric_limits<double>::infinity()
                             : norm(to - from.point) / (2.0 * std::abs(std::sin(turnOf(from) / 2)));
}

double directionOf(Vec2 way) {
    return std::atan2(way.y, way.x);
}

Vec2 towards(double heading) {
    return {std::cos(heading), std::sin(heading)};
}

Vec2 leftOf(double heading) {
    return {-std::sin(heading), std::cos(heading)};
}

BentLine reversed(const BentLine& line) {
    BentLine back;
    for (std::size_t i = line.size(); i-- > 0;) {
        back.push_back({line[i].point, i > 0 ? -line[i - 1].bulge : 0.0});
    }
    return back;
}

// Moves the first point to where x = `at`, along the first run that ends beyond there.
BentLine startedAt(BentLine line, double at) {
    while (line.size() > 2 && line[1].point.x <= at) {
        line.erase(line.begin());
    }
    OutlineVertex& first = line.front();
    const Vec2 next = line[1].point;
    if (first.bulge == 0.0) {
        const Vec2 way = next - first.point;
        if (std::abs(way.x) > 1e-9) {
            first.point = first.point + way * ((at - first.point.x) / way.x);
        }
        return line;
    }
    const OutlineArc arc = arcOf(first, next);
    const double off = at - arc.centre.x;
    if (std::abs(off) >= arc.radius) {
        return line;
    }
    const double side = first.point.y >= arc.centre.y ? 1.0 : -1.0;
    const Vec2 start{at, arc.centre.y + side * std::sqrt(arc.radius * arc.radius - off * off)};
    const double angle = directionOf(start - arc.centre);
    const double sweep = std::remainder(arc.start + arc.sweep - angle, 2 * std::acos(-1.0));
    first = {start, std::tan(sweep / 4)};
    return line;
}

}  // namespace

ArcOverChord arcOfRise(double chord, double rise) {
    const double radius = (chord * chord / 4 + rise * rise) / (2 * rise);
    const double angle = 4 * std::atan(2 * rise / chord);
    return {chord, rise, radius, angle, radius * angle};
}

ArcOverChord arcOfRadius(double chord, double radius) {
    const double angle = 2 * std::asin(std::min(1.0, chord / (2 * radius)));
    // The half-angle form loses no figures where the arc is flat.
    const double half = std::sin(angle / 4);
    return {chord, 2 * radius * half * half, radius, angle, radius * angle};
}

BentLine lineOf(const ArcOverChord& arc) {
    return {{{0.0, 0.0}, -2.0 * arc.rise / arc.chord}, {{arc.chord, 0.0}, 0.0}};
}

double lengthOf(const BentLine& line) {
    double length = 0.0;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        length += runLength(line[i], line[i + 1].point);
    }
    return length;
}

double leastRadius(const BentLine& line) {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        least = std::min(least, radiusOf(line[i], line[i + 1].point));
    }
    return least;
}

double riseOf(const BentLine& line) {
    const Vec2 chord = line.back().point - line.front().point;
    const double heading = directionOf(chord);
    const Vec2 left = leftOf(heading);
    double most = 0.0;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        most = std::max(most, dot(line[i].point - line.front().point, left));
        if (line[i].bulge == 0.0) {
            continue;
        }
        // Where the arc runs along the chord, if it does.
        const OutlineArc arc = arcOf(line[i], line[i + 1].point);
        const double top = arc.sweep < 0 ? directionOf(left) : directionOf(left * -1.0);
        const double on = std::remainder(top - arc.start, 2 * std::acos(-1.0));
        if (on * arc.sweep >= 0 && std::abs(on) <= std::abs(arc.sweep)) {
            most = std::max(most, dot(arc.at(on / arc.sweep) - line.front().point, left));
        }
    }
    return most;
}

double headingAtStart(const BentLine& line) {
    return directionOf(line[1].point - line[0].point) - turnOf(line[0]) / 2;
}

double headingAtEnd(const BentLine& line) {
    const OutlineVertex& last = line[line.size() - 2];
    return directionOf(line.back().point - last.point) + turnOf(last) / 2;
}

BentLine beside(const BentLine& line, double by) {
    BentLine moved;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const double heading = directionOf(line[i + 1].point - line[i].point) - turnOf(line[i]) / 2;
        moved.push_back({line[i].point + leftOf(heading) * by, line[i].bulge});
    }
    moved.push_back({line.back().point + leftOf(headingAtEnd(line)) * by, 0.0});
    return moved;
}

BentLine bentAnew(const BentLine& line, double factor) {
    BentLine bent{{{0.0, 0.0}, 0.0}};
    double heading = headingAtStart(line);
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const double length = runLength(line[i], line[i + 1].point);
        const double turn = turnOf(line[i]) * factor;
        const double chord = turn == 0.0 ? length : length * std::sin(turn / 2) / (turn / 2);
        bent.back().bulge = std::tan(turn / 4);
        bent.push_back({bent.back().point + towards(heading + turn / 2) * chord, 0.0});
        heading += turn;
    }
    const Vec2 end = bent.back().point;
    const double far = norm(end);
    for (OutlineVertex& vertex : bent) {
        const Vec2 p = vertex.point;
        vertex.point = {dot(p, end) / far, (p.y * end.x - p.x * end.y) / far};
    }
    return bent;
}

BentLine between(const BentLine& line, double low, double high) {
    BentLine mirrored = reversed(startedAt(line, low));
    for (OutlineVertex& vertex : mirrored) {
        vertex = {{-vertex.point.x, vertex.point.y}, -vertex.bulge};
    }
    mirrored = startedAt(std::move(mirrored), -high);
    for (OutlineVertex& vertex : mirrored) {
        vertex = {{-vertex.point.x, vertex.point.y}, -vertex.bulge};
    }
    return reversed(mirrored);
}

Outline outlineBetween(const BentLine& lower, const BentLine& upper) {
    Outline outline;
    outline.vertices = lower;
    const BentLine back = reversed(upper);
    outline.vertices.insert(outline.vertices.end(), back.begin(), back.end());
    return outline;
}

}  // namespace shoulderline
