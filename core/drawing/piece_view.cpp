#include "core/drawing/piece_view.h"

#include <algorithm>
#include <cmath>
#include <future>
#include <numeric>
#include <optional>

#include "core/geometry/convex_hull.h"
#include "core/geometry/hidden_lines.h"
#include "core/geometry/seen_spots.h"
#include "core/resolve/frames.h"
#include "core/resolve/pegs.h"

namespace shoulderline {

std::vector<Vec2> coveredBy(const ResolvedPart& part, const Polyhedron& placed, const View& view) {
    const bool isStraightOn =
        std::abs(std::abs(dot(part.frame.z, view.towardsViewer)) - 1.0) < 1e-9;
    std::vector<Vec2> points;
    if (isStraightOn) {
        for (const Vec2& p : part.body.face.flatten().points) {
            points.push_back(view.project(part.frame.toOuter({p.x, p.y, 0.0})));
        }
        return points;
    }
    for (const Vec3& v : placed.vertices) {
        points.push_back(view.project(v));
    }
    return convexHull(std::move(points));
}

namespace {

// What a bore takes out, standing out at its mouths by next to nothing, so that these are seen:
// once for each side that it opens on.
std::vector<Polyhedron> boresOf(const ResolvedPart& part) {
    constexpr double kProud = 5e-4;  // mm
    std::vector<Polyhedron> bores;
    for (const ResolvedCut& cut : part.cuts) {
        if (cut.kind != CutKind::Bore || cut.joint) {
            continue;
        }
        const auto [axis, way] = inwardOf(cut.face);
        for (const double out : {-way, way}) {
            if (out == way && !cut.isThrough) {
                continue;
            }
            Vec3 by;
            by[axis] = out * kProud;
            Frame placed = part.frame;
            placed.origin = placed.origin + placed.directionToOuter(by);
            bores.push_back(cut.solid().toPolyhedron().transformed(placed));
        }
    }
    return bores;
}

}  // namespace

Elevation elevationOf(const ResolvedPiece& piece, const View& view, const ElevationExtras& extras) {
    std::vector<Polyhedron> solids;
    std::vector<std::size_t> partOf;
    std::vector<double> nearness(piece.parts.size(), 0.0);
    Elevation elevation;
    elevation.outlines.resize(piece.parts.size());
    for (std::size_t i = 0; i < piece.parts.size(); ++i) {
        const ResolvedPart& part = piece.parts[i];
        const BodySolids body = part.wood();
        if (body.isEmpty()) {
            continue;
        }
        solids.push_back(body.whole().transformed(part.frame));
        partOf.push_back(i);
        elevation.outlines[i] = coveredBy(part, solids.back(), view);
        nearness[i] = -1e18;
        for (const Vec3& v : solids.back().vertices) {
            nearness[i] = std::max(nearness[i], view.nearness(v));
        }
        for (const TenonSolid& tenon : part.tenons) {
            solids.push_back(polyhedronOf(tenon, part.frame));
            partOf.push_back(i);
        }
        for (Polyhedron& bore : extras.bores ? boresOf(part) : std::vector<Polyhedron>()) {
            solids.push_back(std::move(bore));
            partOf.push_back(i);
        }
        for (const ResolvedCut& cut : part.cuts) {
            if (cut.peg) {
                solids.push_back(Polyhedron::box(pegIn(cut), part.frame));
                partOf.push_back(i);
            }
        }
    }

    std::optional<Rect> bounds;
    for (const ViewEdge& edge : mergeCoincident(hiddenLines(solids, view))) {
        elevation.lines.push_back(
            {edge.a, edge.b, edge.visible, partOf[static_cast<std::size_t>(edge.solid)]});
        bounds = bounds.value_or(Rect{edge.a, edge.a});
        bounds->include(edge.a);
        bounds->include(edge.b);
    }
    elevation.min = bounds.value_or(Rect{}).min;
    elevation.max = bounds.value_or(Rect{}).max;
    for (const SeenSpot& spot : extras.spots ? seenSpots(solids, view) : std::vector<SeenSpot>()) {
        elevation.spots.push_back({spot.at, partOf[static_cast<std::size_t>(spot.solid)]});
    }
    elevation.stations = swungViews(piece, view);
    Rect all = bounds.value_or(Rect{});
    for (const SwungView& station : elevation.stations) {
        for (const SwungOutline& outline : station.outlines) {
            for (const Vec2& p : outline.ring) {
                all.include(p);
            }
        }
    }
    elevation.allMin = all.min;
    elevation.allMax = all.max;

    elevation.nearestFirst.resize(piece.parts.size());
    std::iota(elevation.nearestFirst.begin(), elevation.nearestFirst.end(), std::size_t{0});
    std::stable_sort(elevation.nearestFirst.begin(),
                     elevation.nearestFirst.end(),
                     [&](std::size_t a, std::size_t b) { return nearness[a] > nearness[b]; });
    return elevation;
}

std::array<Elevation, 3> elevationsOf(const ResolvedPiece& piece, const ElevationExtras& extras) {
    const auto aside = [&piece, &extras](const View& view) {
        return std::async(std::launch::async,
                          [&piece, view, &extras] { return elevationOf(piece, view, extras); });
    };
    std::future<Elevation> side = aside(View::side());
    std::future<Elevation> plan = aside(View::plan());
    Elevation front = elevationOf(piece, View::front(), extras);
    return {std::move(front), side.get(), plan.get()};
}

void addSpots(const Elevation& elevation, double scale, Vec2 by, std::vector<PartSpot>& spots) {
    for (const PartSpot& spot : elevation.spots) {
        spots.push_back({Vec2{spot.at.x * scale, -spot.at.y * scale} + by, spot.part});
    }
}

}  // namespace shoulderline
