#include <algorithm>
#include <cmath>
#include <compare>
#include <cstddef>
#include <functional>
#include <numeric>
#include <optional>
#include <utility>
#include <vector>

#include "core/geometry/hidden_lines.h"
#include "core/geometry/spatial_index.h"

namespace shoulderline {

namespace {

constexpr double kShortest = 1e-5;  // millimetres: shorter remains are dropped

struct Stretch {
    double from = 0.0;
    double to = 0.0;
};

double lengthOf(const ViewEdge& e) {
    return norm(e.b - e.a);
}

// The part of `edge`, in millimetres from its start, along which `over` runs within kSameLine.
std::optional<Stretch> coveredBy(const ViewEdge& edge, const ViewEdge& over) {
    const double length = lengthOf(edge);
    const Vec2 along = (edge.b - edge.a) * (1.0 / length);
    double t0 = dot(over.a - edge.a, along);
    double t1 = dot(over.b - edge.a, along);
    double d0 = cross(along, over.a - edge.a);
    double d1 = cross(along, over.b - edge.a);
    if (t0 > t1) {
        std::swap(t0, t1);
        std::swap(d0, d1);
    }
    const Stretch shared{std::max(t0, 0.0), std::min(t1, length)};
    if (shared.to - shared.from < kShortest) {
        return std::nullopt;
    }
    const auto apart = [&](double t) { return std::abs(d0 + (d1 - d0) * (t - t0) / (t1 - t0)); };
    if (apart(shared.from) > kSameLine || apart(shared.to) > kSameLine) {
        return std::nullopt;
    }
    return shared;
}

// A corner of an edge, to a tenth of a micrometre.
struct Corner {
    int solid = 0;
    bool visible = true;
    long long x = 0;
    long long y = 0;

    friend auto operator<=>(const Corner&, const Corner&) = default;
};

// Edges of one solid that run on in a line, seen alike, as one: a curved part seen flat has its
// facets in a row.
class Joined {
  public:
    explicit Joined(std::span<const ViewEdge> edges) : edges_(edges), isTaken_(edges.size()) {
        for (std::size_t i = 0; i < edges.size(); ++i) {
            corners_.emplace_back(cornerOf(edges[i], edges[i].a), i);
            corners_.emplace_back(cornerOf(edges[i], edges[i].b), i);
        }
        std::sort(corners_.begin(), corners_.end());
    }

    [[nodiscard]] std::vector<ViewEdge> take() {
        std::vector<ViewEdge> joined;
        joined.reserve(edges_.size());
        for (std::size_t i = 0; i < edges_.size(); ++i) {
            if (isTaken_[i]) {
                continue;
            }
            isTaken_[i] = true;
            ViewEdge one = edges_[i];
            extend(one);
            std::swap(one.a, one.b);
            extend(one);
            std::swap(one.a, one.b);
            joined.push_back(one);
        }
        return joined;
    }

  private:
    static Corner cornerOf(const ViewEdge& edge, Vec2 p) {
        constexpr double kPerMm = 1e4;
        return {edge.solid, edge.visible, std::llround(p.x * kPerMm), std::llround(p.y * kPerMm)};
    }
    // Past its end `b`, as far as others go on there.
    void extend(ViewEdge& one) {
        const Vec2 from = one.a;
        const double length = lengthOf(one);
        if (length < kShortest) {
            return;
        }
        const Vec2 along = (one.b - one.a) * (1.0 / length);
        while (const std::optional<Vec2> next = goesOn(one, from, along)) {
            one.b = *next;
        }
    }
    std::optional<Vec2> goesOn(const ViewEdge& one, Vec2 from, Vec2 along) {
        constexpr double kStraight = 1e-6;  // millimetres
        const Corner corner = cornerOf(one, one.b);
        for (auto it = std::lower_bound(
                 corners_.begin(), corners_.end(), std::pair(corner, std::size_t{0}));
             it != corners_.end() && it->first == corner;
             ++it) {
            const ViewEdge& other = edges_[it->second];
            if (isTaken_[it->second]) {
                continue;
            }
            const Vec2 far = cornerOf(other, other.a) == corner ? other.b : other.a;
            if (dot(far - one.b, along) > kShortest &&
                std::abs(cross(along, far - from)) < kStraight &&
                std::abs(cross(along, one.b - from)) < kStraight) {
                isTaken_[it->second] = true;
                return far;
            }
        }
        return std::nullopt;
    }

    std::span<const ViewEdge> edges_;
    std::vector<bool> isTaken_;
    std::vector<std::pair<Corner, std::size_t>> corners_;
};

// Appends what the covered stretches (any order) leave of the edge.
void appendRest(const ViewEdge& edge, std::vector<Stretch>& covered, std::vector<ViewEdge>& into) {
    std::sort(covered.begin(), covered.end(), [](const Stretch& a, const Stretch& b) {
        return a.from < b.from;
    });
    const double length = lengthOf(edge);
    covered.push_back({length, length});
    const Vec2 along = (edge.b - edge.a) * (1.0 / length);
    double done = 0.0;
    for (const Stretch& s : covered) {
        if (s.from - done >= kShortest) {
            ViewEdge rest = edge;
            rest.a = done > 0.0 ? edge.a + along * done : edge.a;
            rest.b = s.from < length ? edge.a + along * s.from : edge.b;
            into.push_back(rest);
        }
        done = std::max(done, s.to);
    }
}

Rect around(const ViewEdge& edge) {
    Rect rect{edge.a, edge.a};
    rect.include(edge.b);
    const Vec2 margin{kSameLine, kSameLine};
    return {rect.min - margin, rect.max + margin};
}

enum class Run { Upright, Level, Slanting };

Run runOf(const ViewEdge& edge) {
    constexpr double kSquare = 1e-9;  // millimetres: none of an edge's length across it
    return std::abs(edge.a.x - edge.b.x) < kSquare   ? Run::Upright
           : std::abs(edge.a.y - edge.b.y) < kSquare ? Run::Level
                                                     : Run::Slanting;
}

// Finds for an edge those that may run along it. Most edges of a framed piece are upright or level,
// and of these only those of the same run can; they are looked up by where they stand.
class Alongside {
  public:
    explicit Alongside(const std::vector<ViewEdge>& edges)
        : edges_(edges), slanting_(std::vector<Rect>()) {
        std::vector<Rect> slanting;
        for (std::size_t i = 0; i < edges.size(); ++i) {
            runs_.push_back(runOf(edges[i]));
            if (runs_.back() == Run::Slanting) {
                slanting.push_back(around(edges[i]));
                slantingAt_.push_back(i);
            } else {
                byPlace(runs_.back()).emplace_back(placeOf(i), i);
            }
        }
        std::sort(upright_.begin(), upright_.end());
        std::sort(level_.begin(), level_.end());
        slanting_ = PlaneIndex(slanting);
    }

    void query(std::size_t edge, const std::function<void(std::size_t)>& found) {
        const Rect rect = around(edges_[edge]);
        slanting_.query(rect, [&](std::size_t i) { found(slantingAt_[i]); });
        const Run run = runs_[edge];
        if (run != Run::Level) {
            queryBetween(upright_, {rect.min.x - kSameLine, rect.max.x + kSameLine}, found);
        }
        if (run != Run::Upright) {
            queryBetween(level_, {rect.min.y - kSameLine, rect.max.y + kSameLine}, found);
        }
    }

  private:
    using Places = std::vector<std::pair<double, std::size_t>>;

    Places& byPlace(Run run) { return run == Run::Upright ? upright_ : level_; }
    [[nodiscard]] double placeOf(std::size_t i) const {
        return runs_[i] == Run::Upright ? edges_[i].a.x : edges_[i].a.y;
    }
    static void queryBetween(const Places& places,
                             const Stretch& between,
                             const std::function<void(std::size_t)>& found) {
        for (auto it = std::lower_bound(
                 places.begin(), places.end(), std::pair(between.from, std::size_t{0}));
             it != places.end() && it->first <= between.to;
             ++it) {
            found(it->second);
        }
    }

    const std::vector<ViewEdge>& edges_;
    std::vector<Run> runs_;
    Places upright_;
    Places level_;
    std::vector<std::size_t> slantingAt_;
    PlaneIndex slanting_;
};

}  // namespace

std::vector<ViewEdge> mergeCoincident(std::span<const ViewEdge> all) {
    const std::vector<ViewEdge> edges = Joined(all).take();
    Alongside alongside(edges);
    std::vector<double> lengths;
    lengths.reserve(edges.size());
    for (const ViewEdge& e : edges) {
        lengths.push_back(lengthOf(e));
    }
    // rank[i] < rank[j]: edge i is drawn rather than edge j.
    std::vector<std::size_t> order(edges.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t i, std::size_t j) {
        if (edges[i].visible != edges[j].visible) {
            return edges[i].visible;
        }
        return lengths[i] > lengths[j];
    });
    std::vector<std::size_t> rank(edges.size());
    for (std::size_t k = 0; k < order.size(); ++k) {
        rank[order[k]] = k;
    }
    std::vector<ViewEdge> result;
    std::vector<Stretch> covered;
    std::size_t current = 0;
    const std::function<void(std::size_t)> note = [&](std::size_t other) {
        if (rank[other] < rank[current]) {
            if (const std::optional<Stretch> s = coveredBy(edges[current], edges[other])) {
                covered.push_back(*s);
            }
        }
    };
    for (current = 0; current < edges.size(); ++current) {
        covered.clear();
        if (lengths[current] >= kShortest) {
            alongside.query(current, note);
            appendRest(edges[current], covered, result);
        }
    }
    return result;
}

}  // namespace shoulderline
