#include "core/geometry/eased_body.h"

#include <algorithm>
#include <cmath>

namespace shoulderline {

namespace {

Body withoutEasings(const Body& body) {
    Body whole = body;
    whole.easings.clear();
    return whole;
}

std::vector<HalfSpace> endsOf(const Body& body) {
    constexpr double kAcross = 0.5;  // of the unit normal: planes along the part shape its sides
    std::vector<HalfSpace> ends;
    for (const PlaneCut& plane : body.planes) {
        if (plane.surface < 0 && std::abs(plane.keeps.normal.x) > kAcross) {
            ends.push_back(plane.keeps);
        }
    }
    return ends;
}

constexpr double kHair = 1e-3;

// Whether a stretch that runs along the part ends before `x` or begins after it.
bool isBeside(const EasedStretch& stretch, double x) {
    const Extent& along = stretch.along;
    return along.max - along.min > kHair && (x < along.min - kHair || x > along.max + kHair);
}

}  // namespace

std::vector<EasedStretch> stretchesOf(const Body& body, std::span<const Easing> easings) {
    Result<Polyhedron> solid = withoutEasings(body).toPolyhedron();
    if (!solid) {
        return {};
    }
    Result<EasedSolid> made = eased(std::move(*solid), endsOf(body), easings);
    return made ? std::move(made->stretches) : std::vector<EasedStretch>();
}

bool isEasedAway(std::span<const EasedStretch> stretches, Vec3 p) {
    return std::any_of(stretches.begin(), stretches.end(), [&](const EasedStretch& stretch) {
        const auto liesOut = [&](const HalfSpace& keeps) { return keeps.height(p) > kHair; };
        const std::vector<HalfSpace>& keeps = stretch.keeps;
        return !isBeside(stretch, p.x) && stretch.on.height(p) <= kHair &&
               stretch.other.height(p) <= kHair &&
               (stretch.isHollow ? std::all_of(keeps.begin(), keeps.end(), liesOut)
                                 : std::any_of(keeps.begin(), keeps.end(), liesOut));
    });
}

bool isTurned(const Body& body) {
    const Rect bounds = body.face.bounds();
    return body.thickness > 0.0 && !body.edge && !body.planes.empty() && bounds.max.x > 0.0 &&
           bounds.max.y > 0.0 && body.face == Outline::rectangle(bounds.max.x, bounds.max.y);
}

std::vector<ConvexSolid> quickPieces(const Body& body) {
    constexpr std::size_t kFewFaces = 16;
    if (body.easings.empty()) {
        return body.pieces();
    }
    std::vector<ConvexSolid> whole = withoutEasings(body).pieces();
    std::size_t faces = 0;
    for (const ConvexSolid& piece : whole) {
        faces += piece.faces().size();
    }
    return faces <= kFewFaces ? easedPieces(std::move(whole), stretchesOf(body, body.easings))
                              : whole;
}

std::vector<ConvexSolid> piecesAcross(const Body& body, double x) {
    const auto liesBeside = [x](const ConvexSolid& piece) {
        const Box bounds = piece.bounds();
        return bounds.min.x >= x || bounds.max.x < x;
    };
    std::vector<ConvexSolid> across = withoutEasings(body).pieces();
    std::erase_if(across, liesBeside);
    // Of the many stretches of a curved arris the one or two there.
    std::vector<EasedStretch> stretches = stretchesOf(body, body.easings);
    std::erase_if(stretches, [x](const EasedStretch& stretch) { return isBeside(stretch, x); });
    across = easedPieces(std::move(across), stretches);
    std::erase_if(across, liesBeside);
    return across;
}

}  // namespace shoulderline
