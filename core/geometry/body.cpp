#include "core/geometry/body.h"

#include <cmath>
#include <string>
#include <vector>

#include "core/geometry/eased_body.h"
#include "core/geometry/plane_cut.h"
#include "core/geometry/two_outlines.h"

namespace shoulderline {

namespace {

Result<double> checked(const Outline& outline, const char* which) {
    if (!outline.isProper()) {
        return fail(
            ErrorCode::OutOfRange,
            std::string("The ") + which + " outline crosses itself or turns back on itself.");
    }
    return outline.area();
}

// A straight blank worked to planes, most of them along it: its section first, then run out.
std::optional<ConvexSolid> turnedPiece(const Body& body) {
    constexpr double kSame = 1e-12;
    const Vec2 size = body.face.bounds().max;
    std::vector<Vec2> ring{
        {0, 0}, {size.y, 0}, {size.y, body.thickness}, {0, body.thickness}};  // y, z
    std::vector<int> surfaces(ring.size(), ConvexSolid::kOwnSurface);
    std::vector<PlaneCut> across;
    std::vector<Vec2> kept;
    std::vector<int> on;
    for (const PlaneCut& plane : body.planes) {
        if (std::abs(plane.keeps.normal.x) > kSame) {
            across.push_back(plane);
            continue;
        }
        kept.clear();
        on.clear();
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Vec2 a = ring[i];
            const Vec2 b = ring[(i + 1) % ring.size()];
            const double from = plane.keeps.height({0, a.x, a.y});
            const double to = plane.keeps.height({0, b.x, b.y});
            if (from <= kPlaneTolerance) {
                kept.push_back(a);
                // Where the plane takes over, the side after this corner is its own.
                on.push_back(to > kPlaneTolerance && from >= -kPlaneTolerance ? plane.surface
                                                                              : surfaces[i]);
            }
            if (from < -kPlaneTolerance && to > kPlaneTolerance) {
                kept.push_back(a + (b - a) * (from / (from - to)));
                on.push_back(plane.surface);
            } else if (from > kPlaneTolerance && to < -kPlaneTolerance) {
                kept.push_back(a + (b - a) * (from / (from - to)));
                on.push_back(surfaces[i]);
            }
        }
        if (kept.size() < 3) {
            return std::nullopt;
        }
        ring.swap(kept);
        surfaces.swap(on);
    }
    const Frame along{{}, {0, 1, 0}, {0, 0, 1}, {1, 0, 0}};
    std::optional<ConvexSolid> solid = ConvexSolid::prism(ring, 0.0, size.x, along, surfaces);
    for (const PlaneCut& plane : across) {
        if (solid) {
            solid = solid->clipped(plane.keeps, plane.surface);
        }
    }
    return solid;
}

}  // namespace

Result<Polyhedron> Body::toPolyhedron() const {
    Result<Polyhedron> solid = uneased();
    if (!solid || easings.empty()) {
        return solid;
    }
    return eased(std::move(*solid), endPlanes(), easings).map([](EasedSolid made) {
        return std::move(made.solid);
    });
}

// Planes that an end is cut to: those that lie across the length and belong to no curved surface.
std::vector<HalfSpace> Body::endPlanes() const {
    constexpr double kAcross = 0.5;  // of the unit normal: planes along the part shape its sides
    std::vector<HalfSpace> ends;
    for (const PlaneCut& plane : planes) {
        if (plane.surface < 0 && std::abs(plane.keeps.normal.x) > kAcross) {
            ends.push_back(plane.keeps);
        }
    }
    return ends;
}

Result<Polyhedron> Body::uneased() const {
    if (isTurned(*this)) {
        const std::optional<ConvexSolid> turned = turnedPiece(*this);
        if (!turned) {
            return fail(ErrorCode::OutOfRange, "The planes that it is worked to leave no wood.");
        }
        return turned->toPolyhedron();
    }
    Result<Polyhedron> solid = sharedByBoth();
    for (const PlaneCut& plane : planes) {
        if (!solid) {
            break;
        }
        std::optional<Polyhedron> left = cutByPlane(*solid, plane.keeps);
        if (!left) {
            return fail(ErrorCode::OutOfRange, "The planes that it is worked to leave no wood.");
        }
        solid = std::move(*left);
    }
    if (solid) {
        markSmooth(*solid, planes);
    }
    return solid;
}

Result<Polyhedron> Body::sharedByBoth() const {
    if (!(thickness > 0.0)) {
        return fail(ErrorCode::OutOfRange, "A part needs a thickness greater than zero.");
    }
    if (const Result<double> area = checked(face, "face"); !area) {
        return tl::unexpected<Error>(area.error());
    }
    if (!edge) {
        return Polyhedron::prism(face, 0.0, thickness);
    }
    if (const Result<double> area = checked(*edge, "edge"); !area) {
        return tl::unexpected<Error>(area.error());
    }
    if (*edge == Outline::rectangle(face.bounds().max.x, thickness)) {
        return Polyhedron::prism(face, 0.0, thickness);
    }
    const FlatOutline flatFace = face.flatten();
    const FlatOutline flatEdge = edge->flatten();
    if (!isPlainAlongLength(flatFace) || !isPlainAlongLength(flatEdge)) {
        return fail(ErrorCode::OutOfRange,
                    "With a second outline, both may step or turn back across the length only at "
                    "its ends.");
    }
    const std::optional<Polyhedron> solid = sharedByOutlines(flatFace, flatEdge);
    if (!solid) {
        return fail(ErrorCode::OutOfRange, "The face and the edge outline share no volume.");
    }
    return *solid;
}

std::vector<ConvexSolid> Body::pieces() const {
    std::vector<ConvexSolid> whole = uneasedPieces();
    if (easings.empty()) {
        return whole;
    }
    Result<Polyhedron> solid = uneased();
    if (!solid) {
        return whole;
    }
    const Result<EasedSolid> made = eased(std::move(*solid), endPlanes(), easings);
    return made ? easedPieces(std::move(whole), made->stretches) : whole;
}

std::vector<ConvexSolid> Body::uneasedPieces() const {
    if (isTurned(*this)) {
        const std::optional<ConvexSolid> turned = turnedPiece(*this);
        return turned ? std::vector<ConvexSolid>{*turned} : std::vector<ConvexSolid>();
    }
    std::vector<ConvexSolid> whole;
    if (!edge && face.isConvex()) {
        whole = {ConvexSolid::prism(face.flatten().points, 0.0, thickness)};
    } else {
        const FlatOutline flatEdge = edge ? edge->flatten() : FlatOutline{};
        whole = convexPieces(face.flatten(), thickness, edge ? &flatEdge : nullptr);
    }
    for (const PlaneCut& plane : planes) {
        std::vector<ConvexSolid> left;
        for (const ConvexSolid& piece : whole) {
            if (std::optional<ConvexSolid> cut = piece.clipped(plane.keeps, plane.surface)) {
                left.push_back(std::move(*cut));
            }
        }
        whole = std::move(left);
    }
    return whole;
}

bool Body::isBox() const {
    const Rect bounds = face.bounds();
    return !edge && planes.empty() && easings.empty() &&
           face == Outline::rectangle(bounds.max.x, bounds.max.y);
}

Result<double> Body::volume() const {
    const auto volumeOf = [](const Polyhedron& solid) { return solid.volume(); };
    if (edge || !planes.empty()) {
        return toPolyhedron().map(volumeOf);
    }
    if (!(thickness > 0.0)) {
        return fail(ErrorCode::OutOfRange, "A part needs a thickness greater than zero.");
    }
    Result<double> whole =
        checked(face, "face").map([this](double area) { return area * thickness; });
    if (!whole || easings.empty()) {
        return whole;
    }
    // Exact but for what is taken off, which is told by the facets before and after.
    const Result<double> before = uneased().map(volumeOf);
    const Result<double> after = toPolyhedron().map(volumeOf);
    return after ? Result<double>(*whole - (*before - *after)) : after;
}

}  // namespace shoulderline
