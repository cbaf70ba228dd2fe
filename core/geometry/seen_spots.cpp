#include "core/geometry/seen_spots.h"

#include <algorithm>

#include "core/geometry/hidden_lines.h"
#include "core/geometry/rect.h"

namespace shoulderline {

namespace {

// A face that looks at the viewer, as it is seen.
struct SeenFace {
    std::vector<Vec2> ring;
    Rect bounds;
    Vec3 plane;  // nearness at (x, y): plane.x * x + plane.y * y + plane.z
    int solid = 0;

    [[nodiscard]] double nearnessAt(Vec2 p) const {
        return plane.x * p.x + plane.y * p.y + plane.z;
    }
    [[nodiscard]] bool covers(Vec2 p) const {
        if (p.x < bounds.min.x || p.x > bounds.max.x || p.y < bounds.min.y || p.y > bounds.max.y) {
            return false;
        }
        bool isInside = false;
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Vec2 a = ring[i];
            const Vec2 b = ring[(i + 1) % ring.size()];
            const bool isCrossed =
                (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x);
            isInside = isInside != isCrossed;
        }
        return isInside;
    }
};

std::vector<SeenFace> facesTowards(std::span<const Polyhedron> solids, const View& view) {
    constexpr double kEdgeOn = 1e-6;  // of its area
    std::vector<SeenFace> seen;
    for (std::size_t s = 0; s < solids.size(); ++s) {
        const Polyhedron& solid = solids[s];
        for (std::size_t f = 0; f < solid.faces.size(); ++f) {
            const Vec3 area = solid.areaVector(static_cast<int>(f));
            const double facing = dot(area, view.towardsViewer);
            if (facing <= kEdgeOn * norm(area)) {
                continue;
            }
            SeenFace face;
            face.solid = static_cast<int>(s);
            const std::vector<int>& loop = solid.faces[f].loop;
            for (const int v : loop) {
                const Vec2 p = view.project(solid.vertices[static_cast<std::size_t>(v)]);
                face.ring.push_back(p);
                face.bounds = face.ring.size() == 1 ? Rect{p, p} : face.bounds;
                face.bounds.include(p);
            }
            const Vec3& corner = solid.vertices[static_cast<std::size_t>(loop.front())];
            face.plane = {-dot(area, view.right) / facing,
                          -dot(area, view.up) / facing,
                          dot(area, corner) / facing};
            seen.push_back(std::move(face));
        }
    }
    return seen;
}

}  // namespace

std::vector<SeenSpot> seenSpots(std::span<const Polyhedron> solids, const View& view) {
    constexpr double kLeast = 3.0;  // mm of wood: what is narrower is not pointed at
    const std::vector<SeenFace> faces = facesTowards(solids, view);
    std::vector<SeenSpot> spots;
    for (const SeenFace& face : faces) {
        const Vec2 size = face.bounds.size();
        if (std::min(size.x, size.y) < kLeast) {
            continue;
        }
        const auto steps = [](double length) {
            constexpr double kApart = 25.0;  // about, between places on a long face
            constexpr int kMost = 12;
            return std::clamp(static_cast<int>(length / kApart), 5, kMost);
        };
        const int across = steps(size.x);
        const int up = steps(size.y);
        for (int i = 0; i < across; ++i) {
            for (int j = 0; j < up; ++j) {
                const Vec2 p =
                    face.bounds.min + Vec2{size.x * (i + 0.5) / across, size.y * (j + 0.5) / up};
                if (!face.covers(p)) {
                    continue;
                }
                const double nearness = face.nearnessAt(p) + kNearerBy;
                const bool isHidden =
                    std::any_of(faces.begin(), faces.end(), [&](const SeenFace& other) {
                        return other.covers(p) && other.nearnessAt(p) > nearness;
                    });
                if (!isHidden) {
                    spots.push_back({p, face.solid});
                }
            }
        }
    }
    return spots;
}

}  // namespace shoulderline
