#include "core/drawing/part_views.h"

#include "core/drawing/hatching.h"
#include "core/drawing/part_cut_sizes.h"
#include "core/drawing/part_horns.h"
#include "core/geometry/convex_hull.h"
#include "core/geometry/hidden_lines.h"

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

Face oppositeOf(Face face) {
    switch (face) {
        case Face::FaceSide:
            return Face::BackSide;
        case Face::BackSide:
            return Face::FaceSide;
        case Face::FaceEdge:
            return Face::BackEdge;
        case Face::BackEdge:
            return Face::FaceEdge;
        case Face::StartEnd:
            return Face::FarEnd;
        case Face::FarEnd:
            return Face::StartEnd;
    }
    return face;
}

std::vector<Vec2> ringOf(const MortiseSolid& mortise, const PartView& view) {
    if (!mortise.exact) {
        return ringOf(view.toPlane(mortise.box));
    }
    const bool isEntered = mortise.face == view.face;
    std::vector<Vec2> points;
    for (const Vec3& corner : isEntered ? mouthRing(mortise) : mortise.exact->vertices()) {
        points.push_back(view.toPlane(corner));
    }
    return isEntered ? points : convexHull(std::move(points));
}

std::vector<Vec2> ringOf(const TenonSolid& tenon, const PartView& view) {
    if (!tenon.exact) {
        return ringOf(view.toPlane(tenon.box));
    }
    std::vector<Vec2> points;
    for (const Vec3& vertex : tenon.exact->vertices()) {
        points.push_back(view.toPlane(vertex));
    }
    return convexHull(std::move(points));
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
    for (const MortiseSolid& mortise : part.mortises) {
        const bool opens = opensOn(mortise, view.face);
        if (opens || !isEnd(view.face)) {
            addRing(ringOf(mortise, view), opens, static_cast<int>(jointOf.size()), edges);
        }
        jointOf.emplace_back(mortise.joint);
    }
    addHornEdges(part, view, edges);
    addCutEdges(part, view, static_cast<int>(jointOf.size()), edges);
    for (const ResolvedCut& cut : part.cuts) {
        jointOf.push_back(cut.joint);
    }
    std::vector<PartLine> lines;
    for (const ViewEdge& edge : mergeCoincident(edges)) {
        lines.push_back(
            {edge.a, edge.b, edge.visible, jointOf[static_cast<std::size_t>(edge.solid)]});
    }
    return lines;
}

const std::vector<PartLine>& PartLines::of(const PartView& view) {
    const auto found = lines_.find(view.face);
    return found != lines_.end() ? found->second
                                 : lines_.emplace(view.face, linesOf(part_, view)).first->second;
}

}  // namespace shoulderline
