#include "core/drawing/hole_views.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/drawing/round_wood.h"
#include "core/geometry/convex_hull.h"
#include "core/measure/length_text.h"
#include "core/resolve/frames.h"
#include "core/resolve/lean.h"
#include "core/resolve/pegs.h"

namespace shoulderline {

namespace {

void addHoleLoop(const std::vector<Vec2>& ring,
                 bool isVisible,
                 int solid,
                 std::vector<ViewEdge>& edges) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
        edges.push_back(
            {ring[i], ring[(i + 1) % ring.size()], isVisible, solid, static_cast<int>(i)});
    }
}

// The plane of a face of the blank, looking out of the wood.
HalfSpace planeOf(const ResolvedPart& part, Face face) {
    const auto [axis, way] = inwardOf(face);
    Vec3 out;
    out[axis] = -way;
    return {out, way > 0.0 ? 0.0 : part.bodyBox().max[axis]};
}

// A stretch of a line, as shares of it.
struct LineShare {
    double from = 0.0;
    double to = 1.0;
};

// What of the line from `a` to `b` lies in a convex polygon, counter-clockwise.
std::optional<LineShare> stretchIn(const std::vector<Vec2>& hull, Vec2 a, Vec2 b) {
    constexpr double kOnSide = 1e-6;  // mm
    LineShare stretch;
    for (std::size_t i = 0; i < hull.size(); ++i) {
        const Vec2 edge = hull[(i + 1) % hull.size()] - hull[i];
        const Vec2 in = Vec2{-edge.y, edge.x} * (1.0 / norm(edge));
        const double atA = dot(in, a - hull[i]) + kOnSide;
        const double atB = dot(in, b - hull[i]) + kOnSide;
        if (atA < 0.0 && atB < 0.0) {
            return std::nullopt;
        }
        if (atA < 0.0) {
            stretch.from = std::max(stretch.from, atA / (atA - atB));
        } else if (atB < 0.0) {
            stretch.to = std::min(stretch.to, atA / (atA - atB));
        }
    }
    return stretch.from < stretch.to ? std::optional(stretch) : std::nullopt;
}

// The body's convex pieces and the tenons as the view shows them.
std::vector<std::vector<Vec2>> seenWood(const ResolvedPart& part, const PartView& view) {
    std::vector<std::vector<Vec2>> hulls;
    const BodySolids wood = part.wood();
    for (const ConvexSolid& piece : wood.pieces()) {
        std::vector<Vec2> points;
        for (const Vec3& vertex : piece.vertices()) {
            points.push_back(view.toPlane(vertex));
        }
        hulls.push_back(convexHull(std::move(points)));
    }
    for (const TenonSolid& tenon : part.tenons) {
        hulls.push_back(convexHull(ringOf(tenon, view)));
    }
    return hulls;
}

// What of an edge lies in any of the polygons.
void keepWithin(const std::vector<std::vector<Vec2>>& hulls,
                const ViewEdge& edge,
                std::vector<ViewEdge>& kept) {
    constexpr double kHair = 1e-3;  // mm
    const double length = norm(edge.b - edge.a);
    std::vector<LineShare> stretches;
    for (const std::vector<Vec2>& hull : hulls) {
        if (const std::optional<LineShare> one = stretchIn(hull, edge.a, edge.b)) {
            stretches.push_back(*one);
        }
    }
    std::sort(stretches.begin(), stretches.end(), [](const LineShare& a, const LineShare& b) {
        return a.from < b.from;
    });
    for (std::size_t i = 0; i < stretches.size();) {
        LineShare whole = stretches[i];
        while (++i < stretches.size() && (stretches[i].from - whole.to) * length < kHair) {
            whole.to = std::max(whole.to, stretches[i].to);
        }
        if ((whole.to - whole.from) * length > kHair) {
            ViewEdge one = edge;
            one.a = edge.a + (edge.b - edge.a) * whole.from;
            one.b = edge.a + (edge.b - edge.a) * whole.to;
            kept.push_back(one);
        }
    }
}

// What of the hole lies in the wood, or for a part square in section in its blank.
std::optional<ConvexSolid> inWood(const ResolvedPart& part, const ResolvedCut& cut) {
    std::optional<ConvexSolid> inRound = withinRound(part, cut.solid());
    return inRound ? inRound : intersection(cut.solid(), ConvexSolid::box(part.bodyBox()));
}

// Where the hole opens on the face of the blank, or on the round wood under it, corner by corner in
// the part's frame; empty where it does not.
std::vector<Vec3> mouthOn(const ResolvedPart& part, const ResolvedCut& cut, Face face) {
    if (const std::optional<ConvexSolid> inRound = withinRound(part, cut.solid())) {
        return mouthTowards(*inRound, planeOf(part, face).normal);
    }
    constexpr double kOnPlane = 1e-6;
    const HalfSpace plane = planeOf(part, face);
    std::vector<Vec3> ring;
    if (const std::optional<ConvexSolid> inside = cut.solid().clipped(plane)) {
        for (const ConvexSolid::Face& side : inside->faces()) {
            if (dot(side.plane.normal, plane.normal) > 1.0 - kOnPlane &&
                std::abs(side.plane.offset - plane.offset) < kOnPlane) {
                for (const int i : side.loop) {
                    ring.push_back(inside->vertices()[static_cast<std::size_t>(i)]);
                }
            }
        }
    }
    return ring;
}

}  // namespace

void addHoleEdges(const ResolvedPart& part,
                  const ResolvedCut& cut,
                  const PartView& view,
                  int solid,
                  std::vector<ViewEdge>& edges) {
    const bool opens =
        cut.face == view.face || (cut.isThrough && oppositeOf(cut.face) == view.face);
    const bool looksInto = cut.face == view.face || oppositeOf(cut.face) == view.face;
    if (opens) {
        addHoleLoop(hullOf(mouthOn(part, cut, view.face), view), true, solid, edges);
    }
    const bool isTilted = cut.hole && cut.hole->lean.isTilted();
    if (opens && !isTilted) {
        return;  // what lies behind its mouth is hidden by it
    }
    const std::optional<ConvexSolid> inside = inWood(part, cut);
    if (inside && (!isEnd(view.face) || looksInto)) {
        addHoleLoop(hullOf(inside->vertices(), view), false, solid, edges);
    }
}

void keepToWood(const ResolvedPart& part,
                const PartView& view,
                std::size_t first,
                std::vector<ViewEdge>& edges) {
    if (part.body.isBox() || first >= edges.size()) {
        return;
    }
    const std::vector<std::vector<Vec2>> wood = seenWood(part, view);
    std::vector<ViewEdge> kept(edges.begin(), edges.begin() + static_cast<std::ptrdiff_t>(first));
    for (std::size_t i = first; i < edges.size(); ++i) {
        keepWithin(wood, edges[i], kept);
    }
    edges = std::move(kept);
}

std::vector<std::string> holeLines(const ResolvedPart& part,
                                   const ResolvedCut& cut,
                                   const std::string& times,
                                   const LengthStyle& style) {
    const ResolvedHole& hole = *cut.hole;
    const auto shown = [&](Length length) { return letterLength(length, style); };
    const bool isSlot = hole.slotLength.value > hole.slotWidth;
    std::vector<std::string> lines;
    std::string first = times;
    if (isSlot) {
        first += "slot " + shown(hole.diameter) + " \u00d7 " + shown(hole.slotLength.value) +
                 (hole.slot == SlotWay::Along ? " along the part" : " across the part");
    } else {
        first += std::string(wordFor(hole.kind)) + " \u2300" + shown(hole.diameter);
    }
    first += cut.isThrough ? ", through" : ", " + shown(hole.depth) + " deep";
    lines.push_back(first + (hole.lean.isTilted() && !cut.isThrough ? " along it" : ""));
    switch (hole.head) {
        case ScrewHead::Plain:
            break;
        case ScrewHead::Countersunk:
            lines.push_back("countersunk \u2300" + shown(hole.headWidth.value));
            break;
        case ScrewHead::Counterbored:
        case ScrewHead::Plugged:
            lines.push_back(
                "counterbore " +
                (isSlot ? shown(hole.headWidth.value) + " \u00d7 " +
                              shown(hole.headWidth.value + hole.slotLength.value - hole.slotWidth)
                        : "\u2300" + shown(hole.headWidth.value)) +
                ", " + shown(hole.headDepth.value) + " deep" +
                (hole.head == ScrewHead::Plugged ? ", with a plug" : ""));
            break;
    }
    if (const std::string lean = leanText(hole.lean, part, cut.face); !lean.empty()) {
        lines.push_back(lean);
    }
    return lines;
}

std::vector<std::string> pegLines(const ResolvedPart& part,
                                  const ResolvedCut& cut,
                                  const std::string& times,
                                  const LengthStyle& style) {
    const auto shown = [&](Length length) { return letterLength(length, style); };
    const ResolvedPeg& peg = *cut.peg;
    std::vector<std::string> lines;
    lines.push_back(times + std::string(wordFor(cut.kind)) + " " + shown(peg.side) + " square" +
                    (cut.isThrough ? ", through" : ", " + shown(peg.depth) + " deep"));
    lines.push_back(peg.proud > kLengthTolerance ? "peg stands " + shown(peg.proud) + " proud"
                                                 : std::string("peg flush with the face"));
    if (!pinnedBy(part, cut).empty()) {
        lines.emplace_back("cut with the joint together, tenon too");
    }
    return lines;
}

bool isMadeAlike(const ResolvedHole& a, const ResolvedHole& b) {
    constexpr double kSameWay = 1e-7;
    return a.kind == b.kind && nearlyEqual(a.diameter, b.diameter) &&
           nearlyEqual(a.depth, b.depth) && norm(a.into - b.into) < kSameWay && a.head == b.head &&
           a.slot == b.slot && nearlyEqual(a.slotLength.value, b.slotLength.value) &&
           nearlyEqual(a.headWidth.value, b.headWidth.value) &&
           nearlyEqual(a.headDepth.value, b.headDepth.value);
}

}  // namespace shoulderline
