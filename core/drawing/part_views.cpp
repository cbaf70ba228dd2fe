#include "core/drawing/part_views.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/hatching.h"
#include "core/drawing/hole_views.h"
#include "core/drawing/part_cut_sizes.h"
#include "core/drawing/part_horns.h"
#include "core/drawing/round_wood.h"
#include "core/geometry/convex_hull.h"
#include "core/geometry/hidden_lines.h"
#include "core/resolve/frames.h"
#include "core/resolve/joined_grooves.h"

namespace shoulderline {

namespace {

View viewOn(Face face) {
    // Written out so that each pair of a face and the way it lies can be checked: right, up,
    // towards the viewer.
    switch (face) {
        case Face::FaceSide:
            return {{1, 0, 0}, {0, -1, 0}, {0, 0, -1}};
        case Face::BackSide:
            return {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
        case Face::FaceEdge:
            return {{1, 0, 0}, {0, 0, 1}, {0, -1, 0}};
        case Face::BackEdge:
            return {{1, 0, 0}, {0, 0, -1}, {0, 1, 0}};
        case Face::StartEnd:
            return {{0, 0, -1}, {0, -1, 0}, {-1, 0, 0}};
        case Face::FarEnd:
            return {{0, 0, 1}, {0, -1, 0}, {1, 0, 0}};
    }
    return View::front();
}

// The ring's edges as they appear, tied to `solid`, as the hidden-line results have theirs.
void addRing(const std::vector<Vec2>& ring,
             bool isVisible,
             int solid,
             std::vector<ViewEdge>& edges) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
        edges.push_back(
            {ring[i], ring[(i + 1) % ring.size()], isVisible, solid, static_cast<int>(i)});
    }
}

// What is left of a square edge outside the rect, which it may run along.
void appendOutside(const ViewEdge& edge, const Rect& rect, std::vector<ViewEdge>& left) {
    constexpr double kHair = 1e-6;
    const bool isLevel = std::abs(edge.a.y - edge.b.y) < kHair;
    const bool isUpright = std::abs(edge.a.x - edge.b.x) < kHair;
    if (isLevel == isUpright) {
        left.push_back(edge);
        return;
    }
    double Vec2::*along = isLevel ? &Vec2::x : &Vec2::y;
    double Vec2::*across = isLevel ? &Vec2::y : &Vec2::x;
    const double low = std::min(edge.a.*along, edge.b.*along);
    const double high = std::max(edge.a.*along, edge.b.*along);
    const bool misses = edge.a.*across < rect.min.*across - kHair ||
                        edge.a.*across > rect.max.*across + kHair ||
                        high < rect.min.*along + kHair || low > rect.max.*along - kHair;
    if (misses) {
        left.push_back(edge);
        return;
    }
    const auto keep = [&](double from, double to) {
        if (to - from > kHair) {
            ViewEdge rest = edge;
            rest.a.*along = from;
            rest.b.*along = to;
            left.push_back(rest);
        }
    };
    keep(low, rect.min.*along);
    keep(rect.max.*along, high);
}

// Rabbets, grooves and what leaves a tongue show their section on an end that they run out at.
void takeOutOfEnd(const ResolvedPart& part, const PartView& view, std::vector<ViewEdge>& edges) {
    const double slack = kLengthTolerance.mm();
    const double length = part.shoulderLength.value.mm();
    for (const ResolvedCut& cut : part.cuts) {
        const bool runsOut =
            view.face == Face::StartEnd ? cut.box.min.x < slack : cut.box.max.x > length - slack;
        // A slot in a tenon lies behind its end.
        const bool isInTenon = cut.box.max.x < slack || cut.box.min.x > length - slack;
        if (!runsOut || isInTenon || cut.isSetOutByMiddle() || isEnd(cut.face)) {
            continue;
        }
        Rect rect = view.toPlane(cut.box);
        rect.min = {std::max(rect.min.x, 0.0), std::max(rect.min.y, 0.0)};
        rect.max = {std::min(rect.max.x, view.size.x), std::min(rect.max.y, view.size.y)};
        std::vector<ViewEdge> left;
        for (const ViewEdge& edge : edges) {
            edge.solid == 0 ? appendOutside(edge, rect, left) : left.push_back(edge);
        }
        const std::vector<Vec2> ring = ringOf(rect);
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Vec2 a = ring[i];
            const Vec2 b = ring[(i + 1) % ring.size()];
            const auto isOnSide = [&](double Vec2::*axis, double size) {
                return std::abs(a.*axis - b.*axis) < slack &&
                       (a.*axis < slack || a.*axis > size - slack);
            };
            if (!isOnSide(&Vec2::x, view.size.x) && !isOnSide(&Vec2::y, view.size.y)) {
                left.push_back({a, b, true, 0, 0});
            }
        }
        edges = std::move(left);
    }
}

// Whether an edge runs along a side of the blank as it is seen.
bool isOnBorder(const ViewEdge& edge, Vec2 size) {
    constexpr double kOn = 1e-6;
    const auto both = [&](double Vec2::*axis, double at) {
        return std::abs(edge.a.*axis - at) < kOn && std::abs(edge.b.*axis - at) < kOn;
    };
    return both(&Vec2::x, 0.0) || both(&Vec2::x, size.x) || both(&Vec2::y, 0.0) ||
           both(&Vec2::y, size.y);
}

// A groove or notch that runs right through the way the part is looked at is open at the sides of
// the blank that it reaches: no line goes over its mouth.
void openMouths(const ResolvedPart& part, const PartView& view, std::vector<ViewEdge>& edges) {
    const double slack = kLengthTolerance.mm();
    const int into = inwardOf(view.face).axis;
    const Box blank = part.bodyBox();
    for (const ResolvedCut& cut : part.cuts) {
        const bool runsThrough = !cut.isSetOutByMiddle() && !isEnd(cut.face) &&
                                 cut.box.min[into] < blank.min[into] + slack &&
                                 cut.box.max[into] > blank.max[into] - slack;
        if (!runsThrough) {
            continue;
        }
        std::vector<ViewEdge> left;
        for (const ViewEdge& edge : edges) {
            isOnBorder(edge, view.size) ? appendOutside(edge, view.toPlane(cut.box), left)
                                        : left.push_back(edge);
        }
        edges = std::move(left);
    }
}

// Where a tenon is flush with its part there is no shoulder: no line is seen, nor one hidden, where
// the two meet. `solids` are the body, then the tenons.
void takeFlushShoulders(const ResolvedPart& part,
                        const std::vector<Polyhedron>& solids,
                        const PartView& view,
                        std::vector<ViewEdge>& edges) {
    constexpr double kOn = 1e-4;  // mm
    const Vec3 blank = part.bodyBox().max;
    std::vector<std::vector<PolyhedronEdge>> solidEdges;
    for (const Polyhedron& solid : solids) {
        solidEdges.push_back(solid.edges());
    }
    for (const TenonSolid& tenon : part.tenons) {
        const double shoulder = tenon.box.min.x < 0.0 ? 0.0 : blank.x;
        for (const int axis : {1, 2}) {
            for (const bool isHigh : {false, true}) {
                const double plane = isHigh ? blank[axis] : 0.0;
                const double side = isHigh ? tenon.box.max[axis] : tenon.box.min[axis];
                if (tenon.exact || std::abs(side - plane) > kOn) {
                    continue;
                }
                const auto isThere = [&](const Vec3& p) {
                    return std::abs(p.x - shoulder) < kOn && std::abs(p[axis] - plane) < kOn;
                };
                Box meeting = tenon.box;
                meeting.min.x = meeting.max.x = shoulder;
                meeting.min[axis] = meeting.max[axis] = plane;
                const Rect seen = view.toPlane(meeting);
                std::vector<ViewEdge> left;
                for (const ViewEdge& edge : edges) {
                    const auto s = static_cast<std::size_t>(edge.solid);
                    const VertexPair ends = solidEdges[s][static_cast<std::size_t>(edge.edge)].ends;
                    const auto vertex = [&](int v) {
                        return solids[s].vertices[static_cast<std::size_t>(v)];
                    };
                    if (isThere(vertex(ends.low)) && isThere(vertex(ends.high))) {
                        appendOutside(edge, seen, left);
                    } else {
                        left.push_back(edge);
                    }
                }
                edges = std::move(left);
            }
        }
    }
}

}  // namespace

Rect PartView::toPlane(const Box& box) const {
    const Vec2 a = toPlane(box.min);
    Rect rect{a, a};
    rect.include(toPlane(box.max));
    return rect;
}

PartView partView(const ResolvedPart& part, Face face) {
    PartView view;
    view.face = face;
    view.view = viewOn(face);
    const Box body = part.bodyBox();
    const Vec2 a = view.view.project(body.min);
    const Vec2 b = view.view.project(body.max);
    view.corner = {std::min(a.x, b.x), std::max(a.y, b.y)};
    view.size = {std::abs(b.x - a.x), std::abs(b.y - a.y)};
    return view;
}

std::vector<Vec2> hullOf(const std::vector<Vec3>& corners, const PartView& view) {
    std::vector<Vec2> points;
    for (const Vec3& corner : corners) {
        points.push_back(view.toPlane(corner));
    }
    return convexHull(std::move(points));
}

std::vector<Vec2> ringOf(const ResolvedPart& part,
                         const MortiseSolid& mortise,
                         const PartView& view) {
    const bool opens = opensOn(mortise, view.face);
    if (const std::optional<ConvexSolid> inRound = withinRound(part, mortise.solid())) {
        const std::vector<Vec3> mouth =
            opens ? mouthTowards(*inRound, view.view.towardsViewer) : std::vector<Vec3>();
        return hullOf(mouth.empty() ? inRound->vertices() : mouth, view);
    }
    if (!mortise.exact) {
        return ringOf(view.toPlane(mortise.box));
    }
    if (!opens) {
        return hullOf(mortise.exact->vertices(), view);
    }
    std::vector<Vec2> points;
    MortiseSolid seen = mortise;
    seen.face = view.face;  // the mouth at which it comes out, where it does not enter here
    for (const Vec3& corner : mouthRing(seen)) {
        points.push_back(view.toPlane(corner));
    }
    return points;
}

std::vector<Vec2> ringOf(const TenonSolid& tenon, const PartView& view) {
    if (!tenon.exact) {
        return ringOf(view.toPlane(tenon.box));
    }
    return hullOf(tenon.exact->vertices(), view);
}

bool opensOn(const MortiseSolid& mortise, Face face) {
    return mortise.face == face || (mortise.isThrough && oppositeOf(mortise.face) == face);
}

std::vector<PartLine> linesOf(const ResolvedPart& part, const PartView& view) {
    std::vector<Polyhedron> solids;
    std::vector<std::optional<std::size_t>> jointOf;
    if (const BodySolids body = part.wood(); !body.isEmpty()) {
        solids.push_back(body.whole());
        jointOf.emplace_back();
    }
    for (const TenonSolid& tenon : part.tenons) {
        solids.push_back(polyhedronOf(tenon, {}));
        jointOf.emplace_back(tenon.joint);
    }
    std::vector<ViewEdge> edges = hiddenLines(solids, view.view);
    if (part.bend && isEnd(view.face)) {
        // The bow behind the end would stand there as lines across its width that tell nothing.
        std::erase_if(edges, [](const ViewEdge& edge) { return !edge.visible; });
    }
    for (ViewEdge& edge : edges) {
        edge.a = {edge.a.x - view.corner.x, view.corner.y - edge.a.y};
        edge.b = {edge.b.x - view.corner.x, view.corner.y - edge.b.y};
    }
    takeFlushShoulders(part, solids, view, edges);
    for (const MortiseSolid& mortise : part.mortises) {
        const bool opens = opensOn(mortise, view.face);
        if (opens || !isEnd(view.face)) {
            const std::size_t first = edges.size();
            addRing(ringOf(part, mortise, view), opens, static_cast<int>(jointOf.size()), edges);
            if (!opens) {  // it begins at the shaped edge, not where the blank's was
                keepToWood(part, view, first, edges);
            }
        }
        jointOf.emplace_back(mortise.joint);
    }
    if (isEnd(view.face)) {
        takeOutOfEnd(part, view, edges);
    }
    addHornEdges(part, view, edges);
    addCutEdges(part, view, static_cast<int>(jointOf.size()), edges);
    if (!isEnd(view.face)) {
        openMouths(part, view, edges);
    }
    for (const ResolvedCut& cut : groovesJoined(part.cuts)) {
        jointOf.push_back(cut.joint);
    }
    const auto isShoulder = [&](const ViewEdge& edge) {
        constexpr double kNearEnd = 25.0;  // mm along the part
        const double x = (edge.a.x + edge.b.x) / 2.0;
        return !isEnd(view.face) && edge.solid < static_cast<int>(solids.size()) &&
               std::abs(edge.b.x - edge.a.x) < std::abs(edge.b.y - edge.a.y) &&
               std::min(std::abs(x), std::abs(x - view.size.x)) < kNearEnd;
    };
    std::vector<PartLine> lines;
    for (const ViewEdge& edge : mergeCoincident(edges)) {
        lines.push_back({edge.a,
                         edge.b,
                         edge.visible,
                         jointOf[static_cast<std::size_t>(edge.solid)],
                         isShoulder(edge)});
    }
    return lines;
}

const std::vector<PartLine>& PartLines::of(const PartView& view) {
    const auto found = lines_.find(view.face);
    return found != lines_.end() ? found->second
                                 : lines_.emplace(view.face, linesOf(part_, view)).first->second;
}

}  // namespace shoulderline
