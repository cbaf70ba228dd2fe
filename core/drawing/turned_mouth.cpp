#include "core/drawing/turned_mouth.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

constexpr double kLeastTurn = 0.0035;  // radians: less cannot be set out

// How far the ring reaches square to `along` in the face whose normal is `out`.
double reachAcross(const std::vector<Vec3>& ring, Vec3 along, Vec3 out) {
    const Vec3 square = cross(out, along);
    double low = dot(ring.front(), square);
    double high = low;
    for (const Vec3& corner : ring) {
        low = std::min(low, dot(corner, square));
        high = std::max(high, dot(corner, square));
    }
    return high - low;
}

}  // namespace

std::array<Vec3, 4> TurnedMouth::corners() const {
    const Vec3 half = along * (length / 2.0);
    // The other sides are longer than it is wide where they do not stand square.
    const double slant = norm(cross(along, across));
    const Vec3 aside = across * (width / 2.0 / slant);
    return {
        middle - half - aside, middle + half - aside, middle + half + aside, middle - half + aside};
}

std::optional<TurnedMouth> turnedMouthOf(const ResolvedPiece& resolved,
                                         const ResolvedPart& part,
                                         const MortiseSolid& mortise) {
    const ResolvedJoint& joint = resolved.joints[mortise.joint];
    if (!mortise.exact || joint.kind == JointKind::Round || isEnd(mortise.face)) {
        return std::nullopt;
    }
    const int into = inwardOf(mortise.face).axis;
    Vec3 out;
    out[into] = 1.0;
    // The planes of cheeks and ends meet the face in its sides.
    Vec3 along = normalised(cross(out, part.frame.directionToLocal(joint.frame.z)));
    Vec3 across = normalised(cross(out, part.frame.directionToLocal(joint.frame.y)));
    if (std::abs(along.x) < std::abs(across.x)) {
        std::swap(along, across);
    }
    along = along.x < 0.0 ? -along : along;
    const int aside = 3 - into;
    const double turn = std::atan2(along[aside], along.x);
    if (std::abs(turn) < kLeastTurn) {
        return std::nullopt;
    }
    const std::vector<Vec3> ring = mouthRing(mortise);
    TurnedMouth mouth;
    mouth.middle = mouthOf(mortise).centre();
    mouth.along = along;
    mouth.across = across;
    mouth.width = reachAcross(ring, along, out);
    mouth.length = reachAcross(ring, across, out) / norm(cross(along, across));
    mouth.turn = Angle::radians(turn);
    return mouth;
}

std::vector<Op> turnedDiagonals(const TurnedMouth& mouth,
                                const PartView& view,
                                double scale,
                                bool isThrough) {
    const std::array<Vec3, 4> corners = mouth.corners();
    const auto between = [&](std::size_t from, std::size_t to) {
        return Stroke{{view.toPlane(corners[from]) * scale, view.toPlane(corners[to]) * scale},
                      LineRole::Construction};
    };
    std::vector<Op> ops{between(3, 1)};
    if (isThrough) {
        ops.emplace_back(between(0, 2));
    }
    return ops;
}

std::array<std::array<Vec2, 2>, 2> turnedCentreLines(const TurnedMouth& mouth,
                                                     const PartView& view,
                                                     double scale,
                                                     double overrun) {
    const Vec2 middle = view.toPlane(mouth.middle) * scale;
    const Vec2 way = view.toPlane(mouth.middle + mouth.along) - view.toPlane(mouth.middle);
    const Vec2 along = way * ((mouth.length / 2.0 * scale + overrun) / norm(way));
    const Vec2 up{0.0, mouth.width / 2.0 * scale + overrun};
    return {{{middle - along, middle + along}, {middle - up, middle + up}}};
}

}  // namespace shoulderline
