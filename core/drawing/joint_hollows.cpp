#include "core/drawing/joint_hollows.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/geometry/convex_hull.h"

namespace shoulderline {

namespace {

// How far the farthest corner lies along a way.
double reachOf(const Polyhedron& solid, Vec3 way) {
    double reach = -1e18;
    for (const Vec3& corner : solid.vertices) {
        reach = std::max(reach, dot(corner, way));
    }
    return reach;
}

bool shareRoom(const Box& a, const Box& b) {
    for (int axis = 0; axis < 3; ++axis) {
        if (std::min(a.max[axis], b.max[axis]) - std::max(a.min[axis], b.min[axis]) <
            kLengthTolerance.mm()) {
            return false;
        }
    }
    return true;
}

// Whether it is seen into: its mouth looks that way, or it runs out at the side of all that it is
// cut in, as a kerf does at the cheeks of its tenon.
bool isOpenTowards(Vec3 viewer, const Hollow& hollow, const std::vector<Polyhedron>& solids) {
    if (dot(hollow.outward, viewer) > 0.5) {
        return true;
    }
    const Box room = hollow.solid.bounds();
    const double reach = reachOf(hollow.solid, viewer) + kLengthTolerance.mm();
    bool isCutIn = false;
    for (const Polyhedron& solid : solids) {
        if (shareRoom(room, solid.bounds())) {
            isCutIn = true;
            if (reachOf(solid, viewer) > reach) {
                return false;
            }
        }
    }
    return isCutIn;
}

constexpr double kHairOut = 1e-6;  // mm

// The corners nearest to the viewer, as they are seen, or those of the mouth where the viewer looks
// into it.
std::vector<Vec2> nearRing(const Hollow& hollow, const View& view) {
    const bool isMouth = !hollow.mouth.empty() && dot(hollow.outward, view.towardsViewer) > 0.5;
    const double reach = reachOf(hollow.solid, view.towardsViewer);
    std::vector<Vec2> ring;
    for (const Vec3& corner : isMouth ? hollow.mouth : hollow.solid.vertices) {
        if (isMouth || dot(corner, view.towardsViewer) > reach - kLengthTolerance.mm()) {
            ring.push_back(view.project(corner));
        }
    }
    return ring.size() < 3 ? ring : convexHull(std::move(ring));
}

// What lies outside of `rect` of an edge that runs along one of its sides.
void keepOutside(const ViewEdge& edge, const Rect& rect, std::vector<ViewEdge>& left) {
    const bool isLevel = std::abs(edge.a.y - edge.b.y) < kHairOut;
    const double low = isLevel ? std::min(edge.a.x, edge.b.x) : std::min(edge.a.y, edge.b.y);
    const double high = isLevel ? std::max(edge.a.x, edge.b.x) : std::max(edge.a.y, edge.b.y);
    const double from = isLevel ? rect.min.x : rect.min.y;
    const double to = isLevel ? rect.max.x : rect.max.y;
    const auto keep = [&](double a, double b) {
        if (b - a > kHairOut) {
            ViewEdge rest = edge;
            (isLevel ? rest.a.x : rest.a.y) = a;
            (isLevel ? rest.b.x : rest.b.y) = b;
            left.push_back(rest);
        }
    };
    keep(low, std::min(high, from));
    keep(std::max(low, to), high);
}

Rect seenIn(const View& view, const Polyhedron& solid) {
    Rect rect{view.project(solid.vertices.front()), view.project(solid.vertices.front())};
    for (const Vec3& corner : solid.vertices) {
        rect.include(view.project(corner));
    }
    return rect;
}

}  // namespace

std::vector<ViewEdge> linesOfHollow(const Hollow& hollow,
                                    const std::vector<Polyhedron>& solids,
                                    const View& view) {
    const bool isOpen = isOpenTowards(view.towardsViewer, hollow, solids);
    const std::vector<Vec2> mouth = nearRing(hollow, view);
    std::vector<ViewEdge> lines = hiddenLines({&hollow.solid, 1}, view);
    for (ViewEdge& line : lines) {
        line.visible =
            isOpen && (mouth.size() < 3 || hullContains(mouth, (line.a + line.b) * 0.5, kHairOut));
    }
    return lines;
}

void openSides(const Hollow& hollow,
               const std::vector<Polyhedron>& solids,
               const View& view,
               std::vector<ViewEdge>& edges) {
    const Vec3 away = -view.towardsViewer;
    if (!isOpenTowards(away, {hollow.solid, {}}, solids) ||
        !isOpenTowards(view.towardsViewer, {hollow.solid, {}}, solids)) {
        return;
    }
    std::optional<Rect> host;
    for (const Polyhedron& solid : solids) {
        if (shareRoom(hollow.solid.bounds(), solid.bounds())) {
            const Rect seen = seenIn(view, solid);
            host = host ? *host : seen;
            host->include(seen.min);
            host->include(seen.max);
        }
    }
    const Rect rect = seenIn(view, hollow.solid);
    const auto liesOn = [](const ViewEdge& edge, double Vec2::*axis, double at, double border) {
        return std::abs(at - border) < kHairOut * 10 &&
               std::abs(edge.a.*axis - at) < kHairOut * 10 &&
               std::abs(edge.b.*axis - at) < kHairOut * 10;
    };
    std::vector<ViewEdge> left;
    for (const ViewEdge& edge : edges) {
        const bool isOnOpenSide = host && (liesOn(edge, &Vec2::x, rect.min.x, host->min.x) ||
                                           liesOn(edge, &Vec2::x, rect.max.x, host->max.x) ||
                                           liesOn(edge, &Vec2::y, rect.min.y, host->min.y) ||
                                           liesOn(edge, &Vec2::y, rect.max.y, host->max.y));
        isOnOpenSide ? keepOutside(edge, rect, left) : left.push_back(edge);
    }
    edges = std::move(left);
}

}  // namespace shoulderline
