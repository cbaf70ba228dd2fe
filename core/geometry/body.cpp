#include "core/geometry/body.h"

#include <string>
#include <vector>

#include "core/geometry/convex_solid.h"

namespace shoulderline {

namespace {

// The edge elevation's axes in the part's frame; its prisms are built along y. Left-handed, which
// Polyhedron::transformed allows for.
constexpr Frame kEdgeElevation{{}, {1, 0, 0}, {0, 0, 1}, {0, 1, 0}};

Result<double> checked(const Outline& outline, const char* which) {
    if (!outline.isProper()) {
        return fail(ErrorCode::OutOfRange,
                    std::string("The ") + which +
                        " outline does not go once counter-clockwise around an area without "
                        "crossing itself.");
    }
    return outline.area();
}

bool isRectangle(const Outline& outline) {
    if (outline.vertices.size() != 4) {
        return false;
    }
    for (std::size_t i = 0; i < 4; ++i) {
        const Vec2 side = outline.vertices[(i + 1) % 4].point - outline.vertices[i].point;
        if (outline.vertices[i].bulge != 0.0 || (side.x != 0.0 && side.y != 0.0)) {
            return false;
        }
    }
    return true;
}

// A surface number for each flattened side: sides that run on without a corner share theirs, a side
// between two corners has none.
std::vector<int> surfaceNumbers(const FlatOutline& flat, int first) {
    const std::size_t n = flat.points.size();
    std::size_t corner = 0;
    while (corner + 1 < n && flat.isSmooth[corner]) {
        ++corner;
    }
    std::vector<int> numbers(n, ConvexSolid::kOwnSurface);
    int number = first;
    for (std::size_t k = 0; k < n; ++k) {
        const std::size_t i = (corner + k) % n;
        number += flat.isSmooth[i] ? 0 : 1;
        if (flat.isSmooth[i] || flat.isSmooth[(i + 1) % n]) {
            numbers[i] = number;
        }
    }
    return numbers;
}

Result<Polyhedron> shared(const Outline& face, double thickness, const Outline& edge) {
    const FlatOutline flatFace = face.flatten();
    const FlatOutline flatEdge = edge.flatten();
    const std::vector<int> faceNumbers = surfaceNumbers(flatFace, 0);
    const std::vector<int> edgeNumbers =
        surfaceNumbers(flatEdge, static_cast<int>(flatFace.points.size()) + 1);
    std::optional<ConvexSolid> solid =
        ConvexSolid::prism(flatFace.points, 0.0, thickness, {}, faceNumbers);
    const std::size_t n = flatEdge.points.size();
    for (std::size_t i = 0; i < n && solid; ++i) {
        const Vec2 a = flatEdge.points[i];
        const Vec2 side = flatEdge.points[(i + 1) % n] - a;
        const Vec3 normal = normalised(Vec3{side.y, 0.0, -side.x});
        solid = solid->clipped({normal, dot(normal, {a.x, 0.0, a.y})}, edgeNumbers[i]);
    }
    if (!solid) {
        return fail(ErrorCode::OutOfRange, "The face and the edge outline share no volume.");
    }
    return solid->toPolyhedron();
}

}  // namespace

Result<Polyhedron> Body::toPolyhedron() const {
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
    if (face.isConvex() && edge->isConvex()) {
        return shared(face, thickness, *edge);
    }
    const Rect inFace = face.bounds();
    const Rect inEdge = edge->bounds();
    if (isRectangle(*edge) && inEdge.min.x <= inFace.min.x && inEdge.max.x >= inFace.max.x &&
        inEdge.min.y <= 0.0 && inEdge.max.y >= thickness) {
        return Polyhedron::prism(face, 0.0, thickness);
    }
    if (isRectangle(face) && inFace.min.x <= inEdge.min.x && inFace.max.x >= inEdge.max.x &&
        inEdge.min.y >= 0.0 && inEdge.max.y <= thickness) {
        return Polyhedron::prism(*edge, inFace.min.y, inFace.max.y).transformed(kEdgeElevation);
    }
    return fail(ErrorCode::OutOfRange,
                "With a second outline, both must be convex, or one a plain rectangle around the "
                "other.");
}

Result<double> Body::volume() const {
    if (edge) {
        return toPolyhedron().map([](const Polyhedron& solid) { return solid.volume(); });
    }
    if (!(thickness > 0.0)) {
        return fail(ErrorCode::OutOfRange, "A part needs a thickness greater than zero.");
    }
    return checked(face, "face").map([this](double area) { return area * thickness; });
}

}  // namespace shoulderline
