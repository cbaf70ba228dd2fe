#include "core/drawing/joint_section.h"

#include <algorithm>

#include "core/geometry/convex_hull.h"

namespace shoulderline {

namespace {

constexpr double kHair = 1e-4;  // millimetres on the sheet

bool isCovered(const std::vector<Ring>& rings, Vec2 p) {
    return std::any_of(
        rings.begin(), rings.end(), [p](const Ring& ring) { return hullContains(ring, p); });
}

// Places along a side where another ring has a corner on it or crosses it.
std::vector<double> breaksAlong(Vec2 a, Vec2 b, const std::vector<Ring>& rings) {
    std::vector<double> at{0.0, 1.0};
    const Vec2 side = b - a;
    const double squared = dot(side, side);
    for (const Ring& ring : rings) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Vec2 p = ring[i];
            const Vec2 other = ring[(i + 1) % ring.size()] - p;
            at.push_back(dot(p - a, side) / squared);
            const double turn = cross(side, other);
            if (std::abs(turn) > 1e-12) {
                at.push_back(cross(p - a, other) / turn);
            }
        }
    }
    std::erase_if(at, [](double t) { return t < 0.0 || t > 1.0; });
    std::sort(at.begin(), at.end());
    return at;
}

}  // namespace

Ring ringAt(const Polyhedron& solid, double at, double scale) {
    std::vector<Vec2> points;
    for (const PolyhedronEdge& edge : solid.edges()) {
        const Vec3 a = solid.vertices[static_cast<std::size_t>(edge.ends.low)];
        const Vec3 b = solid.vertices[static_cast<std::size_t>(edge.ends.high)];
        if ((a.z - at) * (b.z - at) <= 0.0 && a.z != b.z) {
            const Vec3 p = a + (b - a) * ((at - a.z) / (b.z - a.z));
            points.push_back(Vec2{p.x, p.y} * scale);
        }
    }
    Ring ring = points.size() < 3 ? Ring{} : convexHull(std::move(points));
    return ring.size() < 3 ? Ring{} : ring;
}

SectionedJoint sectionOf(const JointMembers& members, double scale) {
    // Off the middle by a hair, so that no corner of a facet lies in the plane.
    const double at = members.tenon.centre().z + kHair;
    SectionedJoint section{ringAt(members.railSolid, at, scale), {}, {}, {}, {}, {}};
    const auto add = [&](const Polyhedron& solid, std::vector<Ring>& into) {
        if (Ring ring = ringAt(solid, at, scale); !ring.empty()) {
            into.push_back(std::move(ring));
        }
    };
    for (const Polyhedron& piece : members.postPieces) {
        add(piece, section.post);
    }
    const bool isSpread = !members.spread.empty();
    for (const Polyhedron& tenon : isSpread ? members.spread : members.tenons) {
        add(tenon, section.tenons);
    }
    for (const Hollow& hollow : members.hollows) {
        add(hollow.solid, section.hollows);
    }
    for (const Hollow& hollow : members.ownHollows) {
        if (!isSpread || !hollow.isWedged) {
            add(hollow.solid, section.ownHollows);
        }
    }
    for (const Polyhedron& small : members.smalls) {
        add(small, section.smalls);
    }
    return section;
}

std::vector<SectionLine> outlineOf(const std::vector<Ring>& rings, const std::vector<Ring>& under) {
    std::vector<Ring> all = rings;
    all.insert(all.end(), under.begin(), under.end());
    std::vector<SectionLine> lines;
    for (const Ring& ring : rings) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Vec2 a = ring[i];
            const Vec2 b = ring[(i + 1) % ring.size()];
            const double length = norm(b - a);
            if (length < kHair) {
                continue;
            }
            const Vec2 out = Vec2{(b - a).y, -(b - a).x} * (10 * kHair / length);
            const std::vector<double> at = breaksAlong(a, b, all);
            for (std::size_t k = 0; k + 1 < at.size(); ++k) {
                const Vec2 from = a + (b - a) * at[k];
                const Vec2 to = a + (b - a) * at[k + 1];
                const Vec2 middle = (from + to) * 0.5;
                const bool isUnder =
                    isCovered(under, middle + out) && isCovered(under, middle - out);
                if (norm(to - from) > kHair && !isUnder && !isCovered(rings, middle + out)) {
                    lines.push_back({from, to});
                }
            }
        }
    }
    return lines;
}

}  // namespace shoulderline
