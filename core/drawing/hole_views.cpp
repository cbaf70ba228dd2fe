#include "core/drawing/hole_views.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/round_wood.h"
#include "core/measure/length_text.h"
#include "core/resolve/frames.h"
#include "core/resolve/lean.h"

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

std::vector<std::string> holeLines(const ResolvedCut& cut,
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
            lines.push_back("counterbore \u2300" + shown(hole.headWidth.value) + ", " +
                            shown(hole.headDepth.value) + " deep" +
                            (hole.head == ScrewHead::Plugged ? ", with a plug" : ""));
            break;
    }
    if (const std::string lean = leanText(hole.lean, cut.face); !lean.empty()) {
        lines.push_back(lean);
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
