#include <cmath>
#include <numbers>

#include "core/drawing/hole_views.h"
#include "core/drawing/part_cut_sizes.h"
#include "core/drawing/round_wood.h"
#include "core/resolve/frames.h"
#include "core/resolve/joined_grooves.h"

namespace shoulderline {

namespace {

constexpr int kCircleSides = 48;

// Whether a groove, rabbet or notch runs out at a side, so that it is seen open there. `box` is
// the blank.
bool runsOutAt(const ResolvedCut& cut, Face face, const Box& box) {
    const auto [axis, way] = inwardOf(face);
    const double slack = kLengthTolerance.mm();
    return !isEnd(face) && !cut.isSetOutByMiddle() &&
           (way > 0.0 ? cut.box.min[axis] < box.min[axis] + slack
                      : cut.box.max[axis] > box.max[axis] - slack);
}

bool opensOn(const ResolvedCut& cut, Face face, const Box& box) {
    // A saw kerf goes through both cheeks of its tenon.
    const bool throughCheeks = isKerf(cut) && (face == Face::FaceSide || face == Face::BackSide);
    return cut.face == face || throughCheeks || runsOutAt(cut, face, box) ||
           (cut.isThrough && oppositeOf(cut.face) == face);
}

void addLoop(const std::vector<Vec2>& points,
             bool isVisible,
             int solid,
             std::vector<ViewEdge>& edges) {
    for (std::size_t i = 0; i < points.size(); ++i) {
        edges.push_back(
            {points[i], points[(i + 1) % points.size()], isVisible, solid, static_cast<int>(i)});
    }
}

std::vector<Vec2> circleIn(const Rect& rect) {
    const Vec2 centre = (rect.min + rect.max) * 0.5;
    const double radius = rect.size().x / 2;
    std::vector<Vec2> points;
    for (int i = 0; i < kCircleSides; ++i) {
        const double angle = 2 * std::numbers::pi * i / kCircleSides;
        points.push_back(centre + Vec2{std::cos(angle), std::sin(angle)} * radius);
    }
    return points;
}

// A notch with a wall that slopes: both of its mouths where one looks into it, all of it hidden
// from the side.
void addSlopingNotch(const ConvexSolid& notch,
                     bool opens,
                     const PartView& view,
                     int solid,
                     std::vector<ViewEdge>& edges) {
    const std::vector<Vec3> near = notchMouth(notch, view.view.towardsViewer);
    const std::vector<Vec3> far = notchMouth(notch, -view.view.towardsViewer);
    if (!opens || near.empty() || far.empty()) {
        addLoop(hullOf(notch.vertices(), view), opens, solid, edges);
        return;
    }
    for (const std::vector<Vec3>& mouth : {near, far}) {
        addLoop(hullOf(mouth, view), true, solid, edges);
    }
}

}  // namespace

std::vector<Vec3> notchMouth(const ConvexSolid& notch, Vec3 outward) {
    constexpr double kTowards = 0.999;  // cosine: its sloping wall is no mouth
    for (const ConvexSolid::Face& side : notch.faces()) {
        if (dot(side.plane.normal, outward) > kTowards) {
            std::vector<Vec3> corners;
            for (const int i : side.loop) {
                corners.push_back(notch.vertices()[static_cast<std::size_t>(i)]);
            }
            return corners;
        }
    }
    return {};
}

bool isKerf(const ResolvedCut& cut) {
    return cut.joint && cut.kind == CutKind::Notch && isEnd(cut.face);
}

void addCutEdges(const ResolvedPart& part,
                 const PartView& view,
                 int solid,
                 std::vector<ViewEdge>& edges) {
    for (const ResolvedCut& cut : groovesJoined(part.cuts)) {
        const std::size_t first = edges.size();
        if (cut.hole && cut.exact) {
            addHoleEdges(part, cut, view, solid++, edges);
            keepToWood(part, view, first, edges);
            continue;
        }
        const bool opens = opensOn(cut, view.face, part.bodyBox());
        // Seen from an end, what lies in the sides is left out, as mortises are.
        const std::optional<ConvexSolid> inRound = withinRound(part, cut.solid());
        if (inRound && (opens || !isEnd(view.face))) {
            const std::vector<Vec3> mouth =
                opens ? mouthTowards(*inRound, view.view.towardsViewer) : std::vector<Vec3>();
            addLoop(hullOf(mouth.empty() ? inRound->vertices() : mouth, view), opens, solid, edges);
        } else if (opens || !isEnd(view.face)) {
            const Rect rect = view.toPlane(cut.box);
            if (cut.exact && cut.kind == CutKind::Notch && !isEnd(cut.face)) {
                addSlopingNotch(*cut.exact, opens, view, solid++, edges);
                keepToWood(part, view, first, edges);
                continue;
            }
            const bool isRound = cut.kind == CutKind::Bore &&
                                 (cut.face == view.face || oppositeOf(cut.face) == view.face);
            addLoop(isRound ? circleIn(rect)
                            : std::vector<Vec2>{rect.min,
                                                {rect.max.x, rect.min.y},
                                                rect.max,
                                                {rect.min.x, rect.max.y}},
                    opens,
                    solid,
                    edges);
            if (cut.kind == CutKind::Bore || cut.kind == CutKind::Notch) {
                keepToWood(part, view, first, edges);
            }
        }
        ++solid;
    }
}

}  // namespace shoulderline
