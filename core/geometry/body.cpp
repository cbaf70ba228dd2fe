#include "core/geometry/body.h"

#include <string>
#include <vector>

#include "core/geometry/plane_cut.h"
#include "core/geometry/two_outlines.h"

namespace shoulderline {

namespace {

Result<double> checked(const Outline& outline, const char* which) {
    if (!outline.isProper()) {
        return fail(ErrorCode::OutOfRange,
                    std::string("The ") + which +
                        " outline does not go once counter-clockwise around an area without "
                        "crossing itself.");
    }
    return outline.area();
}

}  // namespace

Result<Polyhedron> Body::toPolyhedron() const {
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
    return !edge && planes.empty() && face == Outline::rectangle(bounds.max.x, bounds.max.y);
}

Result<double> Body::volume() const {
    if (edge || !planes.empty()) {
        return toPolyhedron().map([](const Polyhedron& solid) { return solid.volume(); });
    }
    if (!(thickness > 0.0)) {
        return fail(ErrorCode::OutOfRange, "A part needs a thickness greater than zero.");
    }
    return checked(face, "face").map([this](double area) { return area * thickness; });
}

}  // namespace shoulderline
