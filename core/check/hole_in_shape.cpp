#include "core/check/hole_in_shape.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/resolve/holes.h"

namespace shoulderline {

namespace {

constexpr int kRimPoints = 96;  // of a circle: within 0.0005 of its radius

}  // namespace

const Outline* shapedOutline(const ResolvedPart& part, Face face) {
    const int into = axesOn(face).into;
    const Vec3 size = part.bodyBox().size();
    if (into == 2 && part.body.face != Outline::rectangle(size.x, size.y)) {
        return &part.body.face;
    }
    return into == 1 && part.body.edge ? &*part.body.edge : nullptr;
}

double outOfOutline(const Outline& outline, const ResolvedHole& hole, Face face, bool isThrough) {
    const CutAxes axes = axesOn(face);
    const double slot = std::max(0.0, (hole.slotLength.value - hole.slotWidth).mm() / 2);
    const Vec3 end = hole.mouth + hole.into * hole.depth.mm();
    Vec3 normal;
    normal[axes.into] = 1.0;
    Vec3 aside;
    aside[axes.along] = 1.0;
    const Vec3 u = normalised(cross(hole.into, aside));
    const Vec3 v = cross(hole.into, u);
    const auto outsideBy = [&](const Vec3& p) {
        return outline.outsideBy({p.x, p[axes.into == 2 ? 1 : 2]});
    };
    const double radius = hole.diameter.mm() / 2;
    const double reach = radius / std::abs(dot(hole.into, normal)) + slot;
    if (outsideBy(hole.mouth) <= -reach && outsideBy(end) <= -reach) {
        return 0.0;
    }
    double out = 0.0;
    const auto judge = [&](const Vec3& p) { out = std::max(out, outsideBy(p)); };
    for (int i = 0; i < kRimPoints; ++i) {
        const double turn = 2.0 * std::numbers::pi * i / kRimPoints;
        const Vec3 rim = (u * std::cos(turn) + v * std::sin(turn)) * radius;
        // Where the line of the hole's wall meets the face; a blind hole ends square to its axis.
        const Vec3 onFace = rim - hole.into * (dot(rim, normal) / dot(hole.into, normal));
        for (const double way : {-slot, slot}) {
            judge(hole.mouth + onFace + hole.slotAlong * way);
            judge(end + (isThrough ? onFace : rim) + hole.slotAlong * way);
        }
    }
    return out;
}

}  // namespace shoulderline
