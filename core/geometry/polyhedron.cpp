#include "core/geometry/polyhedron.h"

#include <cstddef>

#include "core/geometry/indices.h"

namespace shoulderline {

namespace {

// Six times the volume of the pyramid over the face with its tip at `tip`.
double sixPyramids(const Polyhedron& solid, const Polyhedron::Face& face, Vec3 tip) {
    double sum = 0.0;
    const Vec3 a = solid.vertices[asIndex(face.loop[0])] - tip;
    for (std::size_t i = 1; i + 1 < face.loop.size(); ++i) {
        const Vec3 b = solid.vertices[asIndex(face.loop[i])] - tip;
        const Vec3 c = solid.vertices[asIndex(face.loop[i + 1])] - tip;
        sum += dot(a, cross(b, c));
    }
    return sum;
}

}  // namespace

Polyhedron Polyhedron::prism(const Outline& outline, double z0, double z1) {
    const FlatOutline flat = outline.flatten();
    const int n = static_cast<int>(flat.points.size());
    Polyhedron solid;
    solid.vertices.reserve(flat.points.size() * 2);
    for (const double z : {z0, z1}) {
        for (const Vec2 p : flat.points) {
            solid.vertices.push_back({p.x, p.y, z});
        }
    }
    Face bottom;
    Face top;
    for (int i = 0; i < n; ++i) {
        bottom.loop.push_back(n - 1 - i);
        top.loop.push_back(n + i);
    }
    solid.faces.push_back(bottom);
    solid.faces.push_back(top);
    for (int i = 0; i < n; ++i) {
        const int next = i + 1 == n ? 0 : i + 1;
        solid.faces.push_back({{i, next, n + next, n + i}});
        if (flat.isSmooth[asIndex(i)]) {
            solid.smoothEdges.push_back({i, n + i});
        }
    }
    return solid;
}

Polyhedron Polyhedron::box(const Box& box, const Frame& frame) {
    const Vec3& a = box.min;
    const Vec3& b = box.max;
    Polyhedron solid;
    solid.vertices = {{a.x, a.y, a.z},
                      {b.x, a.y, a.z},
                      {b.x, b.y, a.z},
                      {a.x, b.y, a.z},
                      {a.x, a.y, b.z},
                      {b.x, a.y, b.z},
                      {b.x, b.y, b.z},
                      {a.x, b.y, b.z}};
    solid.faces = {{{3, 2, 1, 0}},
                   {{4, 5, 6, 7}},
                   {{0, 1, 5, 4}},
                   {{1, 2, 6, 5}},
                   {{2, 3, 7, 6}},
                   {{3, 0, 4, 7}}};
    return solid.transformed(frame);
}

void collectEdges(const Polyhedron& solid, std::vector<PolyhedronEdge>& into) {
    into.clear();
    // Each edge twice, once from each of its faces; -1 for the face not known yet.
    for (std::size_t f = 0; f < solid.faces.size(); ++f) {
        const std::vector<int>& loop = solid.faces[f].loop;
        for (std::size_t i = 0; i < loop.size(); ++i) {
            const int from = loop[i];
            const int to = loop[i + 1 == loop.size() ? 0 : i + 1];
            const int face = static_cast<int>(f);
            into.push_back({vertexPair(from, to), from < to ? face : -1, from < to ? -1 : face});
        }
    }
    std::sort(into.begin(), into.end(), [](const PolyhedronEdge& a, const PolyhedronEdge& b) {
        return a.ends != b.ends ? a.ends < b.ends : a.left > b.left;
    });
    std::size_t kept = 0;
    for (std::size_t i = 0; i < into.size(); ++i) {
        if (kept > 0 && into[kept - 1].ends == into[i].ends) {
            into[kept - 1].right = into[i].right;
            continue;
        }
        into[kept++] = into[i];
    }
    into.resize(kept);
    if (!solid.smoothEdges.empty()) {
        for (PolyhedronEdge& edge : into) {
            edge.isSmooth =
                std::binary_search(solid.smoothEdges.begin(), solid.smoothEdges.end(), edge.ends);
        }
    }
}

std::vector<PolyhedronEdge> Polyhedron::edges() const {
    std::vector<PolyhedronEdge> result;
    collectEdges(*this, result);
    return result;
}

double Polyhedron::volume() const {
    double six = 0.0;
    for (const Face& face : faces) {
        six += sixPyramids(*this, face, vertices[0]);
    }
    return six / 6.0;
}

Box Polyhedron::bounds() const {
    if (vertices.empty()) {
        return {};
    }
    Box box{vertices[0], vertices[0]};
    for (const Vec3& p : vertices) {
        box = Box::around(box, {p, p});
    }
    return box;
}

Polyhedron Polyhedron::transformed(const Frame& frame) const {
    Polyhedron result = *this;
    for (Vec3& p : result.vertices) {
        p = frame.toOuter(p);
    }
    if (!frame.isRightHanded()) {
        for (Face& face : result.faces) {
            std::reverse(face.loop.begin(), face.loop.end());
        }
    }
    return result;
}

Vec3 Polyhedron::areaVector(int face) const {
    const std::vector<int>& loop = faces[asIndex(face)].loop;
    const Vec3 origin = vertices[asIndex(loop[0])];
    Vec3 twice;
    for (std::size_t i = 1; i + 1 < loop.size(); ++i) {
        twice = twice +
                cross(vertices[asIndex(loop[i])] - origin, vertices[asIndex(loop[i + 1])] - origin);
    }
    return twice * 0.5;
}

}  // namespace shoulderline
