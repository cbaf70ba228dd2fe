#include "core/geometry/convex_solid.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <utility>

#include "core/geometry/indices.h"

namespace shoulderline {

namespace {

HalfSpace planeOf(const std::vector<Vec3>& vertices, const std::vector<int>& loop) {
    const Vec3 origin = vertices[asIndex(loop[0])];
    Vec3 area;
    Vec3 middle;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const Vec3 p = vertices[asIndex(loop[i])] - origin;
        const Vec3 q = vertices[asIndex(loop[i + 1 == loop.size() ? 0 : i + 1])] - origin;
        area = area + cross(p, q);
        middle = middle + p;
    }
    const Vec3 normal = normalised(area);
    return {normal, dot(normal, origin + middle * (1.0 / static_cast<double>(loop.size())))};
}

// Which side of the cutting plane a vertex lies on.
enum class Side { Inside, On, Outside };

Side sideOf(double height) {
    if (height > kPlaneTolerance) {
        return Side::Outside;
    }
    return height < -kPlaneTolerance ? Side::Inside : Side::On;
}

// One cut in progress: where each vertex lies, and the new vertices on cut edges.
class Cut {
  public:
    Cut(std::vector<Vec3>& vertices, const HalfSpace& halfSpace) : vertices_(vertices) {
        heights_.reserve(vertices.size());
        for (const Vec3& p : vertices) {
            heights_.push_back(halfSpace.height(p));
        }
    }

    [[nodiscard]] bool anyOn(Side side) const {
        return std::any_of(
            heights_.begin(), heights_.end(), [&](double h) { return sideOf(h) == side; });
    }

    // Whether the whole loop lies on the plane.
    [[nodiscard]] bool holds(const std::vector<int>& loop) const {
        return std::all_of(loop.begin(), loop.end(), [&](int i) {
            return sideOf(heights_[asIndex(i)]) == Side::On;
        });
    }

    // The loop without what lies outside; under three corners when nothing is left.
    [[nodiscard]] std::vector<int> kept(const std::vector<int>& loop) {
        std::vector<int> result;
        result.reserve(loop.size() + 1);
        for (std::size_t i = 0; i < loop.size(); ++i) {
            const int from = loop[i];
            const int to = loop[i + 1 == loop.size() ? 0 : i + 1];
            const Side a = sideOf(heights_[asIndex(from)]);
            const Side b = sideOf(heights_[asIndex(to)]);
            if (a != Side::Outside) {
                result.push_back(from);
            }
            if ((a == Side::Inside && b == Side::Outside) ||
                (a == Side::Outside && b == Side::Inside)) {
                result.push_back(crossing(vertexPair(from, to)));
            }
        }
        return result;
    }

    // All vertices on the plane, counter-clockwise seen against `normal`.
    [[nodiscard]] std::vector<int> cap(Vec3 normal) const {
        std::vector<int> loop;
        Vec3 middle;
        for (std::size_t i = 0; i < vertices_.size(); ++i) {
            if (i >= heights_.size() || sideOf(heights_[i]) == Side::On) {
                loop.push_back(static_cast<int>(i));
                middle = middle + vertices_[i];
            }
        }
        middle = middle * (1.0 / static_cast<double>(std::max<std::size_t>(loop.size(), 1)));
        const Vec3 helper = std::abs(normal.x) < 0.6 ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
        const Vec3 u = normalised(cross(helper, normal));
        const Vec3 v = cross(normal, u);
        std::vector<std::pair<double, int>> byAngle;
        byAngle.reserve(loop.size());
        for (const int i : loop) {
            const Vec3 d = vertices_[asIndex(i)] - middle;
            byAngle.emplace_back(std::atan2(dot(d, v), dot(d, u)), i);
        }
        std::sort(byAngle.begin(), byAngle.end());
        std::transform(byAngle.begin(), byAngle.end(), loop.begin(), [](const auto& corner) {
            return corner.second;
        });
        return loop;
    }

  private:
    int crossing(VertexPair edge) {
        const auto known = crossings_.find(edge);
        if (known != crossings_.end()) {
            return known->second;
        }
        const double low = heights_[asIndex(edge.low)];
        const double high = heights_[asIndex(edge.high)];
        const Vec3 a = vertices_[asIndex(edge.low)];
        const Vec3 b = vertices_[asIndex(edge.high)];
        const int index = static_cast<int>(vertices_.size());
        vertices_.push_back(a + (b - a) * (low / (low - high)));
        crossings_.emplace(edge, index);
        return index;
    }

    std::vector<Vec3>& vertices_;
    std::vector<double> heights_;
    std::map<VertexPair, int> crossings_;
};

// What is left of `pieces` without `solid`.
std::vector<ConvexSolid> without(const std::vector<ConvexSolid>& pieces, const ConvexSolid& solid) {
    std::vector<ConvexSolid> rest;
    for (const ConvexSolid& piece : pieces) {
        std::vector<ConvexSolid> left = difference(piece, solid);
        rest.insert(rest.end(), left.begin(), left.end());
    }
    return rest;
}

}  // namespace

ConvexSolid ConvexSolid::box(const Box& box, const Frame& frame) {
    const Vec2 corners[] = {{box.min.x, box.min.y},
                            {box.max.x, box.min.y},
                            {box.max.x, box.max.y},
                            {box.min.x, box.max.y}};
    return prism(corners, box.min.z, box.max.z, frame);
}

ConvexSolid ConvexSolid::prism(std::span<const Vec2> polygon,
                               double z0,
                               double z1,
                               const Frame& frame,
                               std::span<const int> surfaces) {
    const int n = static_cast<int>(polygon.size());
    ConvexSolid solid;
    for (const double z : {z0, z1}) {
        for (const Vec2 p : polygon) {
            solid.vertices_.push_back({p.x, p.y, z});
        }
    }
    Face bottom;
    Face top;
    for (int i = 0; i < n; ++i) {
        bottom.loop.push_back(n - 1 - i);
        top.loop.push_back(n + i);
    }
    solid.faces_.push_back(bottom);
    solid.faces_.push_back(top);
    for (int i = 0; i < n; ++i) {
        const int next = i + 1 == n ? 0 : i + 1;
        Face side;
        side.loop = {i, next, n + next, n + i};
        side.surface = surfaces.empty() ? kOwnSurface : surfaces[asIndex(i)];
        solid.faces_.push_back(side);
    }
    return solid.transformed(frame);
}

std::optional<ConvexSolid> ConvexSolid::clipped(const HalfSpace& halfSpace, int surface) const {
    ConvexSolid result;
    result.vertices_ = vertices_;
    Cut cut(result.vertices_, halfSpace);
    if (!cut.anyOn(Side::Inside)) {
        return std::nullopt;
    }
    if (!cut.anyOn(Side::Outside)) {
        result.faces_ = faces_;
        for (Face& face : result.faces_) {
            if (face.surface == kOwnSurface && cut.holds(face.loop)) {
                face.surface = surface;
            }
        }
        return result;
    }
    for (const Face& face : faces_) {
        std::vector<int> loop = cut.kept(face.loop);
        if (loop.size() >= 3) {
            result.faces_.push_back({face.plane, std::move(loop), face.surface});
        }
    }
    result.faces_.push_back({halfSpace, cut.cap(halfSpace.normal), surface});
    result.dropUnusedVertices();
    return result;
}

void ConvexSolid::dropUnusedVertices() {
    std::vector<int> renamed(vertices_.size(), -1);
    std::vector<Vec3> used;
    for (Face& face : faces_) {
        for (int& index : face.loop) {
            int& name = renamed[asIndex(index)];
            if (name < 0) {
                name = static_cast<int>(used.size());
                used.push_back(vertices_[asIndex(index)]);
            }
            index = name;
        }
    }
    vertices_ = std::move(used);
}

double ConvexSolid::volume() const {
    // Pyramids from one corner to the faces: a face at that corner has none.
    double three = 0.0;
    for (const Face& face : faces_) {
        const Vec3 base = vertices_[asIndex(face.loop[0])];
        Vec3 twice;
        for (std::size_t i = 1; i + 1 < face.loop.size(); ++i) {
            twice = twice + cross(vertices_[asIndex(face.loop[i])] - base,
                                  vertices_[asIndex(face.loop[i + 1])] - base);
        }
        three += 0.5 * dot(twice, base - vertices_[0]);
    }
    return three / 3.0;
}

Vec3 ConvexSolid::centroid() const {
    const Vec3 tip = vertices_[0];
    Vec3 moment;
    double six = 0.0;
    for (const Face& face : faces_) {
        const Vec3 a = vertices_[asIndex(face.loop[0])] - tip;
        for (std::size_t i = 1; i + 1 < face.loop.size(); ++i) {
            const Vec3 b = vertices_[asIndex(face.loop[i])] - tip;
            const Vec3 c = vertices_[asIndex(face.loop[i + 1])] - tip;
            const double part = dot(a, cross(b, c));
            moment = moment + (a + b + c) * (0.25 * part);
            six += part;
        }
    }
    return six > 0.0 ? tip + moment * (1.0 / six) : tip;
}

Box ConvexSolid::bounds() const {
    Box box{vertices_[0], vertices_[0]};
    for (const Vec3& p : vertices_) {
        box = Box::around(box, {p, p});
    }
    return box;
}

Extent ConvexSolid::extentAlong(Vec3 direction) const {
    Extent extent{dot(vertices_[0], direction), dot(vertices_[0], direction)};
    for (const Vec3& p : vertices_) {
        extent.min = std::min(extent.min, dot(p, direction));
        extent.max = std::max(extent.max, dot(p, direction));
    }
    return extent;
}

bool ConvexSolid::contains(Vec3 p, double margin) const {
    return std::all_of(faces_.begin(), faces_.end(), [&](const Face& face) {
        return face.plane.height(p) <= margin;
    });
}

Polyhedron ConvexSolid::toPolyhedron() const {
    Polyhedron solid;
    solid.vertices = vertices_;
    for (const Face& face : faces_) {
        solid.faces.push_back({face.loop});
    }
    for (const PolyhedronEdge& edge : solid.edges()) {
        const int left = edge.left < 0 ? kOwnSurface : faces_[asIndex(edge.left)].surface;
        if (left != kOwnSurface && edge.right >= 0 && faces_[asIndex(edge.right)].surface == left) {
            solid.smoothEdges.push_back(edge.ends);
        }
    }
    return solid;
}

ConvexSolid ConvexSolid::transformed(const Frame& frame) const {
    ConvexSolid result = *this;
    for (Vec3& p : result.vertices_) {
        p = frame.toOuter(p);
    }
    for (Face& face : result.faces_) {
        if (!frame.isRightHanded()) {
            std::reverse(face.loop.begin(), face.loop.end());
        }
        face.plane = planeOf(result.vertices_, face.loop);
    }
    return result;
}

std::optional<ConvexSolid> intersection(const ConvexSolid& a, const ConvexSolid& b) {
    if (!a.bounds().meets(b.bounds())) {
        return std::nullopt;
    }
    return within(a, b, 0.0);
}

std::optional<ConvexSolid> within(const ConvexSolid& a, const ConvexSolid& b, double margin) {
    std::optional<ConvexSolid> rest;
    const ConvexSolid* now = &a;
    for (const ConvexSolid::Face& face : b.faces()) {
        const HalfSpace plane{face.plane.normal, face.plane.offset + margin};
        const bool isWhole =
            std::all_of(now->vertices().begin(), now->vertices().end(), [&](const Vec3& corner) {
                return plane.height(corner) <= kPlaneTolerance;
            });
        if (isWhole) {
            continue;
        }
        rest = now->clipped(plane);
        if (!rest) {
            return std::nullopt;
        }
        now = &*rest;
    }
    return rest ? std::move(rest) : std::optional(a);
}

std::vector<ConvexSolid> difference(const ConvexSolid& a, const ConvexSolid& b) {
    if (!intersection(a, b)) {
        return {a};
    }
    std::vector<ConvexSolid> pieces;
    std::optional<ConvexSolid> rest = a;
    for (const ConvexSolid::Face& face : b.faces()) {
        if (std::optional<ConvexSolid> outside = rest->clipped(face.plane.opposite())) {
            pieces.push_back(*std::move(outside));
        }
        std::optional<ConvexSolid> inside = rest->clipped(face.plane);
        if (!inside) {
            break;
        }
        rest = std::move(inside);
    }
    return pieces;
}

double unionVolume(std::span<const ConvexSolid> solids) {
    double volume = 0.0;
    for (std::size_t i = 0; i < solids.size(); ++i) {
        std::vector<ConvexSolid> fresh{solids[i]};
        for (std::size_t j = 0; j < i && !fresh.empty(); ++j) {
            fresh = without(fresh, solids[j]);
        }
        for (const ConvexSolid& piece : fresh) {
            volume += piece.volume();
        }
    }
    return volume;
}

}  // namespace shoulderline
