#include "core/geometry/hidden_lines.h"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <limits>

#include "core/geometry/indices.h"
#include "core/geometry/spatial_index.h"

namespace shoulderline {

namespace {

// Faces turned from the view direction by more than this (sine) are seen edge-on and hide nothing.
constexpr double kEdgeOn = 1e-7;
// How far to each side of an edge it is looked whether a face covers it there.
constexpr double kBeside = 1e-6;
// Edges and pieces of edges shorter than this do not count.
constexpr double kShortestSeen = 1e-5;

enum class Facing { Front, EdgeOn, Back };

// A front-facing face: its corners in the view (a run of Scene::corners) and its plane there:
// nearness(p) = dot(slope, p) + level.
struct HidingFace {
    std::size_t first = 0;
    std::size_t count = 0;
    Vec2 slope;
    double level = 0.0;
    double nearest = 0.0;  // the greatest nearness of a corner
};

// Part of an edge, as fractions of its length.
struct HiddenStretch {
    double from = 0.0;
    double to = 0.0;
};

// One edge in the view.
struct Seen {
    Vec2 a;
    Vec2 b;
    double nearA = 0.0;
    double nearB = 0.0;
    double length = 0.0;
};

struct Scene {
    std::vector<Vec2> corners;
    std::vector<HidingFace> faces;
    std::vector<Rect> rects;         // one a face
    std::vector<Facing> facings;     // one a face of every solid, in order
    std::vector<std::size_t> first;  // where each solid's facings begin
};

Scene sceneOf(std::span<const Polyhedron> solids, const View& view) {
    Scene scene;
    for (const Polyhedron& solid : solids) {
        scene.first.push_back(scene.facings.size());
        for (std::size_t f = 0; f < solid.faces.size(); ++f) {
            const Vec3 normal = normalised(solid.areaVector(static_cast<int>(f)));
            const double towards = view.nearness(normal);
            scene.facings.push_back(towards > kEdgeOn    ? Facing::Front
                                    : towards < -kEdgeOn ? Facing::Back
                                                         : Facing::EdgeOn);
            if (towards <= kEdgeOn) {
                continue;
            }
            HidingFace face;
            face.first = scene.corners.size();
            face.slope = view.project(normal) * (-1.0 / towards);
            Rect rect;
            for (const int index : solid.faces[f].loop) {
                const Vec3& p = solid.vertices[asIndex(index)];
                const Vec2 corner = view.project(p);
                const double nearness = view.nearness(p);
                if (face.count == 0) {
                    rect = {corner, corner};
                    face.nearest = nearness;
                }
                rect.include(corner);
                face.nearest = std::max(face.nearest, nearness);
                face.level += nearness - dot(face.slope, corner);
                scene.corners.push_back(corner);
                ++face.count;
            }
            face.level /= static_cast<double>(face.count);
            scene.faces.push_back(face);
            scene.rects.push_back(rect);
        }
    }
    return scene;
}

// Judges edges one at a time against the scene; keeps its working room between them.
class Judge {
  public:
    explicit Judge(const Scene& scene)
        : scene_(scene),
          index_(scene.rects),
          note_([this](std::size_t face) { candidates_.push_back(face); }) {}
    Judge(const Judge&) = delete;
    Judge& operator=(const Judge&) = delete;

    // What may hide edges of a solid: `seen` is around it in the view, `farthest` the nearness of
    // its farthest corner. Its edges are then looked at against these alone, which for a stick are
    // few.
    void lookAround(const Rect& seen, double farthest) {
        candidates_.clear();
        index_.query(seen, note_);
        near_.clear();
        for (const std::size_t f : candidates_) {
            if (scene_.faces[f].nearest > farthest + kNearerBy) {
                near_.push_back({scene_.rects[f], f});
            }
        }
    }

    // The hidden stretches of an edge of that solid: apart, ascending.
    const std::vector<HiddenStretch>& hiddenStretches(const Seen& edge) {
        const Rect around{{std::min(edge.a.x, edge.b.x), std::min(edge.a.y, edge.b.y)},
                          {std::max(edge.a.x, edge.b.x), std::max(edge.a.y, edge.b.y)}};
        left_.clear();
        right_.clear();
        const double farthest = std::min(edge.nearA, edge.nearB);
        for (const NearFace& one : near_) {
            if (one.rect.min.x > around.max.x || one.rect.max.x < around.min.x ||
                one.rect.min.y > around.max.y || one.rect.max.y < around.min.y) {
                continue;
            }
            const HidingFace& face = scene_.faces[one.face];
            if (face.nearest > farthest + kNearerBy) {
                cover(edge, face);
            }
        }
        unite(left_, edge.length);
        unite(right_, edge.length);
        intersect();
        return hidden_;
    }

  private:
    // Adds where the face lies before the lines that run along the edge a little to its left and to
    // its right. Most faces that are near an edge lie to one side of it: these go quickly.
    void cover(const Seen& edge, const HidingFace& face) {
        const Vec2 along = edge.b - edge.a;
        const double beside = edge.length * kBeside;  // of a line, as `sides_` are told
        sides_.clear();
        double least = std::numeric_limits<double>::infinity();
        double most = -least;
        const Vec2* corner = scene_.corners.data() + face.first;
        for (std::size_t i = 0; i < face.count; ++i) {
            const double side = cross(along, corner[i] - edge.a);
            sides_.push_back(side);
            least = std::min(least, side);
            most = std::max(most, side);
        }
        if (least > beside || most < -beside) {
            return;
        }
        cover(edge, face, beside, left_);
        cover(edge, face, -beside, right_);
    }

    // The same for the line that lies at `beside`, as `sides_` are told.
    void cover(const Seen& edge,
               const HidingFace& face,
               double beside,
               std::vector<HiddenStretch>& into) {
        const Vec2 along = edge.b - edge.a;
        const Vec2* corner = scene_.corners.data() + face.first;
        crossings_.clear();
        Vec2 last = corner[face.count - 1] - edge.a;
        double lastSide = sides_.back() - beside;
        for (std::size_t i = 0; i < face.count; ++i) {
            const Vec2 next = corner[i] - edge.a;
            const double nextSide = sides_[i] - beside;
            if ((lastSide > 0.0) != (nextSide > 0.0)) {
                const Vec2 hit = last + (next - last) * (lastSide / (lastSide - nextSide));
                crossings_.push_back(dot(hit, along) / (edge.length * edge.length));
            }
            last = next;
            lastSide = nextSide;
        }
        if (crossings_.empty()) {
            return;
        }
        std::sort(crossings_.begin(), crossings_.end());
        // How much nearer the face is at the edge's two ends; linear between them.
        const double gapA = dot(face.slope, edge.a) + face.level - edge.nearA;
        const double gapB = dot(face.slope, edge.b) + face.level - edge.nearB;
        for (std::size_t i = 0; i + 1 < crossings_.size(); i += 2) {
            addNearer({crossings_[i], crossings_[i + 1]}, gapA, gapB, into);
        }
    }

    static void addNearer(HiddenStretch s,
                          double gapA,
                          double gapB,
                          std::vector<HiddenStretch>& into) {
        s = {std::max(s.from, 0.0), std::min(s.to, 1.0)};
        if (gapA <= 0.0 && gapB <= 0.0) {
            return;
        }
        if (gapA <= 0.0) {
            s.from = std::max(s.from, gapA / (gapA - gapB));
        } else if (gapB <= 0.0) {
            s.to = std::min(s.to, gapA / (gapA - gapB));
        }
        const double fromGap = gapA + (gapB - gapA) * s.from;
        const double toGap = gapA + (gapB - gapA) * s.to;
        if (s.from < s.to && std::max(fromGap, toGap) > kNearerBy) {
            into.push_back(s);
        }
    }

    // Sorts and joins; gaps too short to be seen are closed.
    static void unite(std::vector<HiddenStretch>& list, double length) {
        std::sort(list.begin(), list.end(), [](const HiddenStretch& a, const HiddenStretch& b) {
            return a.from < b.from;
        });
        const double closed = kShortestSeen / length;
        std::size_t kept = 0;
        for (const HiddenStretch& s : list) {
            if (kept > 0 && s.from <= list[kept - 1].to + closed) {
                list[kept - 1].to = std::max(list[kept - 1].to, s.to);
            } else {
                list[kept++] = s;
            }
        }
        list.resize(kept);
    }

    void intersect() {
        hidden_.clear();
        std::size_t i = 0;
        std::size_t j = 0;
        while (i < left_.size() && j < right_.size()) {
            const HiddenStretch both{std::max(left_[i].from, right_[j].from),
                                     std::min(left_[i].to, right_[j].to)};
            if (both.from < both.to) {
                hidden_.push_back(both);
            }
            if (left_[i].to < right_[j].to) {
                ++i;
            } else {
                ++j;
            }
        }
    }

    const Scene& scene_;
    PlaneIndex index_;
    std::function<void(std::size_t)> note_;
    struct NearFace {
        Rect rect;
        std::size_t face = 0;
    };
    std::vector<std::size_t> candidates_;
    std::vector<NearFace> near_;
    std::vector<double>
        sides_;  // of the face's corners: the edge's length times how far to its left
    std::vector<double> crossings_;
    std::vector<HiddenStretch> left_;
    std::vector<HiddenStretch> right_;
    std::vector<HiddenStretch> hidden_;
};

// Appends the edge in pieces. Pieces too short to be seen go to their neighbour.
void append(const Seen& seen,
            const std::vector<HiddenStretch>& hidden,
            int solid,
            int edge,
            std::vector<ViewEdge>& into) {
    const double least = kShortestSeen / seen.length;
    const Vec2 along = seen.b - seen.a;
    double done = 0.0;
    Vec2 reached = seen.a;
    const auto piece = [&](double to, bool visible) {
        const Vec2 end = to >= 1.0 ? seen.b : seen.a + along * to;
        into.push_back({reached, end, visible, solid, edge});
        reached = end;
        done = to;
    };
    for (HiddenStretch s : hidden) {
        s.to = s.to > 1.0 - least ? 1.0 : s.to;
        if (s.to - s.from < least) {
            continue;
        }
        if (s.from - done >= least) {
            piece(s.from, true);
        }
        piece(s.to, false);
    }
    if (done < 1.0) {
        piece(1.0, true);
    }
}

void lookAround(const Polyhedron& solid, const View& view, Judge& judge) {
    if (solid.vertices.empty()) {
        return;
    }
    const Vec2 first = view.project(solid.vertices.front());
    Rect seen{first, first};
    double farthest = view.nearness(solid.vertices.front());
    for (const Vec3& corner : solid.vertices) {
        seen.include(view.project(corner));
        farthest = std::min(farthest, view.nearness(corner));
    }
    judge.lookAround(seen, farthest);
}

}  // namespace

std::vector<ViewEdge> hiddenLines(std::span<const Polyhedron> solids, const View& view) {
    const Scene scene = sceneOf(solids, view);
    Judge judge(scene);
    std::vector<ViewEdge> result;
    std::vector<PolyhedronEdge> edges;
    const std::vector<HiddenStretch> whole{{0.0, 1.0}};
    for (std::size_t s = 0; s < solids.size(); ++s) {
        const Polyhedron& solid = solids[s];
        const Facing* facing = scene.facings.data() + scene.first[s];
        collectEdges(solid, edges);
        lookAround(solid, view, judge);
        result.reserve(result.size() + edges.size());
        for (std::size_t e = 0; e < edges.size(); ++e) {
            const PolyhedronEdge& edge = edges[e];
            const Facing left = facing[asIndex(edge.left)];
            const Facing right = facing[asIndex(edge.right)];
            if (edge.isSmooth && (left == Facing::Front) == (right == Facing::Front)) {
                continue;
            }
            const Vec3& p = solid.vertices[asIndex(edge.ends.low)];
            const Vec3& q = solid.vertices[asIndex(edge.ends.high)];
            Seen seen{view.project(p), view.project(q), view.nearness(p), view.nearness(q)};
            const Vec2 along = seen.b - seen.a;
            seen.length = norm(along);
            if (seen.length < kShortestSeen) {
                continue;
            }
            // Between two faces turned away there is wood before the edge.
            const bool ownHides = left == Facing::Back && right == Facing::Back;
            append(seen,
                   ownHides ? whole : judge.hiddenStretches(seen),
                   static_cast<int>(s),
                   static_cast<int>(e),
                   result);
        }
    }
    return result;
}

}  // namespace shoulderline
