#include "core/resolve/face_there.h"

#include <algorithm>
#include <array>
#include <limits>

#include "core/resolve/frames.h"
#include "core/resolve/holes.h"

namespace shoulderline {

namespace {

constexpr double kFar = 1e9;

// The stretch of a line within a solid, as lengths along it; empty where it misses.
std::optional<Extent> within(const ConvexSolid& solid, Vec3 from, Vec3 way) {
    Extent extent{-kFar, kFar};
    for (const ConvexSolid::Face& face : solid.faces()) {
        const double slope = dot(face.plane.normal, way);
        const double height = face.plane.height(from);
        if (std::abs(slope) < 1e-12) {
            if (height > kPlaneTolerance) {
                return std::nullopt;
            }
        } else if (slope > 0) {
            extent.max = std::min(extent.max, -height / slope);
        } else {
            extent.min = std::max(extent.min, -height / slope);
        }
    }
    return extent.max - extent.min > kPlaneTolerance ? std::optional(extent) : std::nullopt;
}

// The first and last wood along a line through a body.
std::optional<Extent> along(const std::vector<ConvexSolid>& pieces, Vec3 from, Vec3 way) {
    std::optional<Extent> all;
    for (const ConvexSolid& piece : pieces) {
        if (const std::optional<Extent> one = within(piece, from, way)) {
            all = all ? Extent{std::min(all->min, one->min), std::max(all->max, one->max)} : *one;
        }
    }
    return all;
}

bool covers(const Box& cut, const Box& mouth) {
    const double slack = kLengthTolerance.mm();
    return cut.min.y <= mouth.min.y + slack && cut.max.y >= mouth.max.y - slack &&
           cut.min.z <= mouth.min.z + slack && cut.max.z >= mouth.max.z - slack;
}

}  // namespace

std::optional<double> firstWood(const BodySolids& wood, Vec3 from, Vec3 way) {
    const std::optional<Extent> all = along(wood.pieces(), from, way);
    return all ? std::optional(all->min) : std::nullopt;
}

std::optional<WoodThere> woodBehind(const ResolvedPart& mortised,
                                    const Frame& inMortised,
                                    const Box& mouth,
                                    bool isThrough) {
    const Frame toEnd = relativeFrame(inMortised, Frame{});
    const Box blank = toEnd.outerBounds(mortised.bodyBox());
    WoodThere there{blank.min.x, blank.max.x};
    if (!mortised.body.isBox()) {
        constexpr double kInside = 1e-3;  // so that a line along an edge of the body meets it
        constexpr std::array kShares{0.0, 0.5, 1.0};
        there = {-kFar, isThrough ? -kFar : kFar};
        const BodySolids wood = mortised.wood();
        for (const double u : kShares) {
            for (const double v : kShares) {
                const Vec3 from{0,
                                mouth.min.y + kInside + u * (mouth.size().y - 2 * kInside),
                                mouth.min.z + kInside + v * (mouth.size().z - 2 * kInside)};
                const std::optional<Extent> here =
                    along(wood.pieces(), inMortised.toOuter(from), inMortised.x);
                if (!here) {
                    return std::nullopt;
                }
                there.face = std::max(there.face, here->min);
                there.far =
                    isThrough ? std::max(there.far, here->max) : std::min(there.far, here->max);
            }
        }
    }
    for (const ResolvedCut& cut : mortised.cuts) {
        if (cut.joint || cut.isSetOutByMiddle()) {
            continue;
        }
        const Box box = toEnd.outerBounds(cut.box);
        if (!covers(box, mouth)) {
            continue;
        }
        if (box.min.x <= blank.min.x + kLengthTolerance.mm()) {
            there.face = std::max(there.face, box.max.x);
        } else if (box.max.x >= blank.max.x - kLengthTolerance.mm()) {
            there.far = std::min(there.far, box.min.x);
        }
    }
    return there.far > there.face ? std::optional(there) : std::nullopt;
}

bool beginsInWaste(const ResolvedPart& part, const ResolvedCut& cut) {
    if (!(cut.isSetOutByMiddle() || cut.kind == CutKind::Notch) || part.body.isBox() || part.bend) {
        return false;
    }
    constexpr double kUnderFace = 0.1;  // mm
    const auto [axis, way] = inwardOf(cut.face);
    const Box blank = part.bodyBox();
    Vec3 at = cut.hole ? cut.hole->mouth : cut.box.centre();
    at[axis] = (way > 0.0 ? blank.min : blank.max)[axis] + way * kUnderFace;
    const bool isInBlank = blank.holds({at, at}, 0.0) && cut.box.min[axis] <= at[axis] &&
                           at[axis] <= cut.box.max[axis];
    const BodySolids wood = part.wood();
    return isInBlank && std::none_of(wood.pieces().begin(),
                                     wood.pieces().end(),
                                     [&](const ConvexSolid& piece) { return piece.contains(at); });
}

Length referenceIn(const ResolvedPart& mortised, const Box& mortise, int into, int across) {
    const Vec3 from = mortise.centre();
    double in = 0.0;
    const int along = 3 - into - across;
    const auto holds = [&](const Box& box, int axis) {
        return box.min[axis] <= from[axis] && from[axis] <= box.max[axis];
    };
    for (const ResolvedCut& cut : mortised.cuts) {
        const bool isBeside =
            !cut.joint && !cut.isSetOutByMiddle() && holds(cut.box, into) && holds(cut.box, along);
        if (isBeside && cut.box.min[across] <= in + kLengthTolerance.mm()) {
            in = std::max(in, cut.box.max[across]);
        }
    }
    return in < mortise.min[across] ? Length::mm(in) : Length();
}

bool isReferenceShapedAway(const ResolvedPart& part, int across, double along) {
    const Outline* outline = across == 1                     ? &part.body.face
                             : across == 2 && part.body.edge ? &*part.body.edge
                                                             : nullptr;
    return !part.bend && outline != nullptr && outline->vertices.size() > 2 &&
           outline->outsideBy({along, 0.0}) > kLengthTolerance.mm();
}

}  // namespace shoulderline
