#include "core/drawing/round_wood.h"

namespace shoulderline {

namespace {

// Unlike the surface number of any hollow's own sides.
constexpr int kWood = 1 << 20;

}  // namespace

std::optional<ConvexSolid> withinRound(const ResolvedPart& part, const ConvexSolid& hollow) {
    const BodySolids wood = part.wood();
    if (part.section == SectionForm::Square || wood.isEmpty() || wood.pieces().size() != 1) {
        return std::nullopt;
    }
    std::optional<ConvexSolid> inside = hollow;
    for (const ConvexSolid::Face& side : wood.pieces().front().faces()) {
        inside = inside ? inside->clipped(side.plane, kWood) : std::nullopt;
    }
    return inside;
}

std::vector<Vec3> mouthTowards(const ConvexSolid& inRound, Vec3 outward) {
    constexpr double kTowards = 1e-6;
    std::vector<Vec3> corners;
    for (const ConvexSolid::Face& side : inRound.faces()) {
        if (side.surface == kWood && dot(side.plane.normal, outward) > kTowards) {
            for (const int i : side.loop) {
                corners.push_back(inRound.vertices()[static_cast<std::size_t>(i)]);
            }
        }
    }
    return corners;
}

}  // namespace shoulderline
