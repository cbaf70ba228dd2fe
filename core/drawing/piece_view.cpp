#include "core/drawing/piece_view.h"

#include <algorithm>
#include <cmath>
#include <future>
#include <numeric>
#include <optional>

#include "core/geometry/convex_hull.h"
#include "core/geometry/hidden_lines.h"
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

Elevation elevationOf(const ResolvedPiece& piece, const View& view) {
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

std::array<Elevation, 3> elevationsOf(const ResolvedPiece& piece) {
    const auto aside = [&piece](const View& view) {
        return std::async(std::launch::async, [&piece, view] { return elevationOf(piece, view); });
    };
    std::future<Elevation> side = aside(View::side());
    std::future<Elevation> plan = aside(View::plan());
    Elevation front = elevationOf(piece, View::front());
    return {std::move(front), side.get(), plan.get()};
}

}  // namespace shoulderline
