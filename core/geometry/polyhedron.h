#pragma once

#include <span>
#include <vector>

#include "core/geometry/box.h"
#include "core/geometry/frame.h"
#include "core/geometry/outline.h"
#include "core/geometry/vec.h"

namespace shoulderline {

// Two vertices of a polyhedron, the lower number first.
struct VertexPair {
    int low = 0;
    int high = 0;

    friend auto operator<=>(const VertexPair&, const VertexPair&) = default;
};
[[nodiscard]] constexpr VertexPair vertexPair(int a, int b) {
    return a < b ? VertexPair{a, b} : VertexPair{b, a};
}

// An edge between two faces. `left` is the face whose loop runs from low to high, `right` the
// other.
struct PolyhedronEdge {
    VertexPair ends;
    int left = 0;
    int right = 0;
    bool isSmooth = false;

    friend bool operator==(const PolyhedronEdge&, const PolyhedronEdge&) = default;
};

// A closed solid with plane faces, in some frame; millimetres. Each face is a loop of vertex
// numbers, counter-clockwise seen from outside, plane within 1e-6 mm, possibly not convex, without
// holes. Every edge belongs to just two faces, which run through it opposite ways.
struct Polyhedron {
    struct Face {
        std::vector<int> loop;
        friend bool operator==(const Face&, const Face&) = default;
    };
    std::vector<Vec3> vertices;
    std::vector<Face> faces;
    // Edges between facets of one curved surface, which are not drawn; ascending.
    std::vector<VertexPair> smoothEdges;

    friend bool operator==(const Polyhedron&, const Polyhedron&) = default;

    // `outline` (proper) in the x-y plane, extruded from z0 to z1 > z0; arcs as the facets of
    // Outline::flatten(kArcSagitta).
    [[nodiscard]] static Polyhedron prism(const Outline& outline, double z0, double z1);
    // The box as eight vertices and six faces, placed in `frame`.
    [[nodiscard]] static Polyhedron box(const Box& box, const Frame& frame = {});

    // Each edge once, ascending by its ends.
    [[nodiscard]] std::vector<PolyhedronEdge> edges() const;
    [[nodiscard]] double volume() const;
    // All zero without vertices.
    [[nodiscard]] Box bounds() const;
    // Restated in the outer frame of `frame`. Faces stay counter-clockwise seen from outside, also
    // when the frame is left-handed.
    [[nodiscard]] Polyhedron transformed(const Frame& frame) const;
    // Area vector of a face: along its outward normal, as long as its area is large.
    [[nodiscard]] Vec3 areaVector(int face) const;
};

// edges() without an allocation once `into` has grown: replaces what `into` holds.
void collectEdges(const Polyhedron& solid, std::vector<PolyhedronEdge>& into);

}  // namespace shoulderline
