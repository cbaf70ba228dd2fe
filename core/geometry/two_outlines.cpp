#include "core/geometry/two_outlines.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace shoulderline {

namespace {

constexpr double kSamePoint = 1e-9;  // millimetres

// One long side of an outline as a function of x: points with x rising.
struct Chain {
    std::vector<Vec2> points;
    std::vector<bool> isSmooth;

    [[nodiscard]] double at(double x) const {
        const auto after = std::upper_bound(
            points.begin(), points.end(), x, [](double v, Vec2 p) { return v < p.x; });
        if (after == points.begin()) {
            return points.front().y;
        }
        if (after == points.end()) {
            return points.back().y;
        }
        const Vec2 a = *(after - 1);
        const Vec2 b = *after;
        return a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x);
    }
};

// The lower and the upper side of an outline that is plain along the length.
struct Sides {
    std::array<Chain, 2> chains;  // lower, upper
    double low = 0.0;
    double high = 0.0;
};

std::size_t next(std::size_t i, std::size_t n) {
    return i + 1 == n ? 0 : i + 1;
}

std::optional<Sides> sidesOf(const FlatOutline& outline) {
    const std::vector<Vec2>& p = outline.points;
    const std::size_t n = p.size();
    if (n < 3) {
        return std::nullopt;
    }
    Sides sides;
    const auto [least, most] =
        std::minmax_element(p.begin(), p.end(), [](Vec2 a, Vec2 b) { return a.x < b.x; });
    sides.low = least->x;
    sides.high = most->x;
    // Counter-clockwise: the lower side leaves the last of the leftmost points.
    std::size_t start = static_cast<std::size_t>(least - p.begin());
    for (std::size_t i = 0; i < n && p[next(start, n)].x <= sides.low + kSamePoint; ++i) {
        start = next(start, n);
    }
    std::size_t at = start;
    const auto walk = [&](Chain& chain, double sign, double end) {
        chain.points.push_back(p[at]);
        chain.isSmooth.push_back(outline.isSmooth[at]);
        for (std::size_t i = 0; i < n && std::abs(p[at].x - end) > kSamePoint; ++i) {
            const std::size_t to = next(at, n);
            if ((p[to].x - p[at].x) * sign <= kSamePoint) {
                return false;
            }
            at = to;
            chain.points.push_back(p[at]);
            chain.isSmooth.push_back(outline.isSmooth[at]);
        }
        return true;
    };
    if (!walk(sides.chains[0], 1.0, sides.high)) {
        return std::nullopt;
    }
    for (std::size_t i = 0; i < n && p[next(at, n)].x >= sides.high - kSamePoint; ++i) {
        at = next(at, n);
    }
    if (!walk(sides.chains[1], -1.0, sides.low)) {
        return std::nullopt;
    }
    std::reverse(sides.chains[1].points.begin(), sides.chains[1].points.end());
    std::reverse(sides.chains[1].isSmooth.begin(), sides.chains[1].isSmooth.end());
    return sides;
}

// Builds the solid face by face; a vertex is where a side of one outline, seen across, meets a side
// of the other at one x.
class Builder {
  public:
    Builder(const Sides& face, const Sides& edge)
        : outlines_{&face, &edge},
          low_(std::max(face.low, edge.low)),
          high_(std::min(face.high, edge.high)) {}

    [[nodiscard]] std::optional<Polyhedron> build() {
        if (high_ - low_ <= kSamePoint) {
            return std::nullopt;
        }
        for (int outline = 0; outline < 2; ++outline) {
            for (int side = 0; side < 2; ++side) {
                addSide(outline, side);
            }
        }
        addEnd(low_, false);
        addEnd(high_, true);
        std::sort(solid_.smoothEdges.begin(), solid_.smoothEdges.end());
        solid_.smoothEdges.erase(std::unique(solid_.smoothEdges.begin(), solid_.smoothEdges.end()),
                                 solid_.smoothEdges.end());
        return std::move(solid_);
    }

  private:
    [[nodiscard]] const Chain& chain(int outline, int side) const {
        return outlines_[static_cast<std::size_t>(outline)]->chains[static_cast<std::size_t>(side)];
    }

    int vertex(double x, int faceSide, int edgeSide) {
        const Vec3 p{x, chain(0, faceSide).at(x), chain(1, edgeSide).at(x)};
        const std::array<long long, 3> key{
            std::llround(p.x * 1e7), std::llround(p.y * 1e7), std::llround(p.z * 1e7)};
        const auto [it, isNew] = numbers_.emplace(key, static_cast<int>(solid_.vertices.size()));
        if (isNew) {
            solid_.vertices.push_back(p);
        }
        return it->second;
    }
    int vertex(int outline, double x, int side, int across) {
        return outline == 0 ? vertex(x, side, across) : vertex(x, across, side);
    }

    // The faces over one side of one outline: between its corners, from the other outline's lower
    // to its upper side.
    void addSide(int outline, int side) {
        const Chain& mine = chain(outline, side);
        for (std::size_t i = 0; i + 1 < mine.points.size(); ++i) {
            const double a = std::max(mine.points[i].x, low_);
            const double b = std::min(mine.points[i + 1].x, high_);
            if (b - a <= kSamePoint) {
                continue;
            }
            std::vector<int> there = along(outline, side, 0, a, b);
            const std::vector<int> back = along(outline, side, 1, a, b);
            there.insert(there.end(), back.rbegin(), back.rend());
            // The lower side of the face outline looks towards -y, that of the edge outline towards
            // -z: the same walk turns the other way for it.
            addFace(std::move(there), (side == 1) != (outline == 1));
        }
        for (std::size_t i = 0; i < mine.points.size(); ++i) {
            const double x = mine.points[i].x;
            if (mine.isSmooth[i] && x > low_ - kSamePoint && x < high_ + kSamePoint) {
                const int p = vertex(outline, x, side, 0);
                const int q = vertex(outline, x, side, 1);
                if (p != q) {
                    solid_.smoothEdges.push_back(vertexPair(p, q));
                }
            }
        }
    }

    // Vertices from a to b along one side of the other outline.
    std::vector<int> along(int outline, int side, int across, double a, double b) {
        std::vector<int> walk{vertex(outline, a, side, across)};
        for (const Vec2 p : chain(1 - outline, across).points) {
            if (p.x > a + kSamePoint && p.x < b - kSamePoint) {
                walk.push_back(vertex(outline, p.x, side, across));
            }
        }
        walk.push_back(vertex(outline, b, side, across));
        return walk;
    }

    void addEnd(double x, bool isFar) {
        addFace({vertex(x, 0, 0), vertex(x, 0, 1), vertex(x, 1, 1), vertex(x, 1, 0)}, isFar);
    }

    void addFace(std::vector<int> loop, bool isReversed) {
        std::vector<int> once;
        for (const int v : loop) {
            if (once.empty() || once.back() != v) {
                once.push_back(v);
            }
        }
        while (once.size() > 1 && once.front() == once.back()) {
            once.pop_back();
        }
        if (once.size() < 3) {
            return;
        }
        if (isReversed) {
            std::reverse(once.begin(), once.end());
        }
        solid_.faces.push_back({std::move(once)});
    }

    std::array<const Sides*, 2> outlines_;
    double low_;
    double high_;
    Polyhedron solid_;
    std::map<std::array<long long, 3>, int> numbers_;
};

// A stretch of an outline between two lines across the length.
struct Trapezoid {
    double x0 = 0.0;
    double x1 = 0.0;
    std::array<double, 2> lower;  // at x0 and x1
    std::array<double, 2> upper;

    // Whether its sides run along the length.
    [[nodiscard]] bool isStraight() const {
        return std::abs(lower[1] - lower[0]) <= kSamePoint &&
               std::abs(upper[1] - upper[0]) <= kSamePoint && upper[0] - lower[0] > kSamePoint;
    }
};

// The outline between x0 and x1, where no corner of it lies between.
std::vector<Trapezoid> stretches(const FlatOutline& outline, double x0, double x1) {
    struct Crossing {
        double middle;
        std::array<double, 2> ends;
    };
    std::vector<Crossing> crossings;
    const std::size_t n = outline.points.size();
    for (std::size_t i = 0; i < n; ++i) {
        const Vec2 a = outline.points[i];
        const Vec2 b = outline.points[next(i, n)];
        if (std::min(a.x, b.x) > x0 + kSamePoint || std::max(a.x, b.x) < x1 - kSamePoint ||
            std::abs(b.x - a.x) <= kSamePoint) {
            continue;
        }
        const auto at = [&](double x) { return a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x); };
        crossings.push_back({at((x0 + x1) / 2.0), {at(x0), at(x1)}});
    }
    std::sort(crossings.begin(), crossings.end(), [](const Crossing& a, const Crossing& b) {
        return a.middle < b.middle;
    });
    std::vector<Trapezoid> found;
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
        found.push_back({x0, x1, crossings[i].ends, crossings[i + 1].ends});
    }
    return found;
}

// `frame` is the one that the trapezoid lies in, see ConvexSolid::prism().
std::optional<ConvexSolid> prismOver(const Trapezoid& t,
                                     double z0,
                                     double z1,
                                     const Frame& frame = {}) {
    std::vector<Vec2> corners{{t.x0, t.lower[0]}, {t.x1, t.lower[1]}};
    if (t.upper[1] - t.lower[1] > kSamePoint) {
        corners.push_back({t.x1, t.upper[1]});
    }
    if (t.upper[0] - t.lower[0] > kSamePoint) {
        corners.push_back({t.x0, t.upper[0]});
    }
    if (corners.size() < 3) {
        return std::nullopt;
    }
    return ConvexSolid::prism(corners, z0, z1, frame);
}

std::optional<ConvexSolid> clippedBy(std::optional<ConvexSolid> solid, const Trapezoid& edge) {
    const auto clip = [&](Vec2 a, Vec2 b) {
        const Vec2 side = b - a;
        const Vec3 normal = normalised(Vec3{side.y, 0.0, -side.x});
        if (solid) {
            solid = solid->clipped({normal, dot(normal, {a.x, 0.0, a.y})});
        }
    };
    clip({edge.x0, edge.lower[0]}, {edge.x1, edge.lower[1]});
    clip({edge.x1, edge.upper[1]}, {edge.x0, edge.upper[0]});
    return solid;
}

}  // namespace

bool isPlainAlongLength(const FlatOutline& outline) {
    return sidesOf(outline).has_value();
}

std::optional<Polyhedron> sharedByOutlines(const FlatOutline& face, const FlatOutline& edge) {
    const std::optional<Sides> faceSides = sidesOf(face);
    const std::optional<Sides> edgeSides = sidesOf(edge);
    if (!faceSides || !edgeSides) {
        return std::nullopt;
    }
    return Builder(*faceSides, *edgeSides).build();
}

std::vector<ConvexSolid> convexPieces(const FlatOutline& face,
                                      double thickness,
                                      const FlatOutline* edge) {
    std::vector<double> cuts;
    for (const FlatOutline* outline : {&face, edge}) {
        if (outline != nullptr) {
            for (const Vec2 p : outline->points) {
                cuts.push_back(p.x);
            }
        }
    }
    std::sort(cuts.begin(), cuts.end());
    cuts.erase(
        std::unique(
            cuts.begin(), cuts.end(), [](double a, double b) { return b - a <= kSamePoint; }),
        cuts.end());
    double low = 0.0;
    double high = thickness;
    if (edge != nullptr) {
        for (const Vec2 p : edge->points) {
            low = std::min(low, p.y - 1.0);
            high = std::max(high, p.y + 1.0);
        }
    }
    std::vector<ConvexSolid> pieces;
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
        for (const Trapezoid& t : stretches(face, cuts[i], cuts[i + 1])) {
            if (edge == nullptr) {
                if (std::optional<ConvexSolid> solid = prismOver(t, low, high)) {
                    pieces.push_back(std::move(*solid));
                }
                continue;
            }
            for (const Trapezoid& e : stretches(*edge, cuts[i], cuts[i + 1])) {
                if (t.isStraight()) {
                    // As most of a bent part: its edge's outline through a straight width.
                    const Frame inEdge{{}, {1, 0, 0}, {0, 0, 1}, {0, -1, 0}};
                    if (std::optional<ConvexSolid> solid =
                            prismOver(e, -t.upper[0], -t.lower[0], inEdge)) {
                        pieces.push_back(std::move(*solid));
                    }
                } else if (std::optional<ConvexSolid> solid =
                               clippedBy(prismOver(t, low, high), e)) {
                    pieces.push_back(std::move(*solid));
                }
            }
        }
    }
    return pieces;
}

}  // namespace shoulderline
