#include "core/drawing/joint_wood.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/box_solids.h"
#include "core/geometry/notched_rect.h"
#include "core/resolve/frames.h"

namespace shoulderline {

Box inJoint(const ResolvedJoint& joint, const ResolvedPart& part, const Box& box) {
    return relativeFrame(joint.frame, part.frame).outerBounds(box);
}

Vec3 outwardOf(Face face) {
    const auto [axis, way] = inwardOf(face);
    Vec3 outward;
    outward[axis] = -way;
    return outward;
}

bool isBox(const Polyhedron& solid) {
    constexpr double kSame = 1e-6;  // of the volume
    const double box = solid.bounds().volume();
    return std::abs(solid.volume() - box) < kSame * box;
}

Polyhedron woodLessGrooves(const ResolvedJoint& joint,
                           const ResolvedPart& part,
                           const Box& shown,
                           int along) {
    const double slack = kLengthTolerance.mm();
    const int u = (along + 1) % 3;
    const int v = (along + 2) % 3;
    const auto across = [&](const Box& box) {
        return Rect{{box.min[u], box.min[v]}, {box.max[u], box.max[v]}};
    };
    std::vector<Rect> notches;
    for (const ResolvedCut& cut : part.cuts) {
        const Box box = inJoint(joint, part, cut.box);
        const bool runsAlong =
            box.min[along] < shown.min[along] + slack && box.max[along] > shown.max[along] - slack;
        if (runsAlong && (cut.kind == CutKind::Rabbet || cut.kind == CutKind::Groove)) {
            notches.push_back(across(box));
        }
    }
    const std::vector<Vec2> ring =
        notches.empty() ? std::vector<Vec2>() : notchedRect(across(shown), notches);
    if (ring.empty()) {
        return Polyhedron::box(shown);
    }
    Frame turned{{}, {}, {}, {}};
    turned.x[u] = turned.y[v] = turned.z[along] = 1.0;
    return Polyhedron::prism(Outline::polygon(ring), shown.min[along], shown.max[along])
        .transformed(turned);
}

void takeLetIn(JointMembers& m) {
    constexpr double kFlush = 1e-3;
    if (!m.railIsSquare || m.isLoose || m.tenons.size() != 1 || !isBox(m.tenons.front())) {
        return;
    }
    const Box tenon = m.tenons.front().bounds();
    const auto isFlush = [&](int axis) {
        return std::abs(tenon.min[axis] - m.atShoulder.min[axis]) < kFlush &&
               std::abs(tenon.max[axis] - m.atShoulder.max[axis]) < kFlush &&
               std::abs(m.rail.min[axis] - m.atShoulder.min[axis]) < kFlush &&
               std::abs(m.rail.max[axis] - m.atShoulder.max[axis]) < kFlush;
    };
    if (isBox(m.railSolid) && isFlush(1) && isFlush(2)) {
        Box whole = m.rail;
        whole.max.x = tenon.max.x;
        m.railSolid = Polyhedron::box(whole);
        m.tenons.clear();
        m.isLetInWhole = true;
    }
}

void addOtherCuts(const ResolvedJoint& joint,
                  const ResolvedPart& part,
                  std::size_t index,
                  const Polyhedron& solid,
                  const Box& shown,
                  std::vector<Hollow>& hollows) {
    const bool isCutAlready = !isBox(solid) || solid.faces.size() > 6;
    const Frame frame = relativeFrame(joint.frame, part.frame);
    for (const ResolvedCut& cut : part.cuts) {
        if (cut.joint == index || cut.kind == CutKind::Bore || isCutAlready || cut.exact ||
            !squared(frame)) {
            continue;
        }
        const std::optional<Box> seen = overlap(inJoint(joint, part, cut.box), shown);
        if (seen) {
            hollows.push_back(
                {Polyhedron::box(*seen), frame.directionToOuter(outwardOf(cut.face))});
        }
    }
}

}  // namespace shoulderline
