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

// An edge with its length and the way it runs, worked out once.
struct Laid {
    const ViewEdge* edge;
    double length;
    Vec2 along;  // of length 1; none of an edge that does not count
};

Laid laid(const ViewEdge& edge) {
    const double length = lengthOf(edge);
    return {&edge, length, length < kShortest ? Vec2{} : (edge.b - edge.a) * (1.0 / length)};
}

// The part of `one`, in millimetres from its start, along which `over` runs within kSameLine.
std::optional<Stretch> coveredBy(const Laid& one, const Laid& over) {
    const Vec2 toA = over.edge->a - one.edge->a;
    const Vec2 toB = over.edge->b - one.edge->a;
    double t0 = dot(toA, one.along);
    double t1 = dot(toB, one.along);
    if (std::max(t0, t1) < kShortest || std::min(t0, t1) > one.length - kShortest) {
        return std::nullopt;
    }
    double d0 = cross(one.along, toA);
    double d1 = cross(one.along, toB);
    if (t0 > t1) {
        std::swap(t0, t1);
        std::swap(d0, d1);
    }
    const Stretch shared{std::max(t0, 0.0), std::min(t1, one.length)};
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
    explicit Joined(std::span<const ViewEdge> edges)
        : edges_(edges), isTaken_(edges.size()), meetingOf_(2 * edges.size()) {
        std::vector<std::pair<Corner, std::size_t>> ends;
        ends.reserve(2 * edges.size());
        for (std::size_t i = 0; i < edges.size(); ++i) {
            ends.emplace_back(cornerOf(edges[i], edges[i].a), 2 * i);
            ends.emplace_back(cornerOf(edges[i], edges[i].b), 2 * i + 1);
        }
        std::sort(ends.begin(), ends.end());
        ends_.reserve(ends.size());
        for (std::size_t k = 0; k < ends.size(); ++k) {
            if (k == 0 || ends[k].first != ends[k - 1].first) {
                meetings_.push_back(k);
            }
            meetingOf_[ends[k].second] = meetings_.size() - 1;
            ends_.push_back(ends[k].second);
        }
        meetings_.push_back(ends.size());
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
            extend(one, 2 * i + 1);
            std::swap(one.a, one.b);
            extend(one, 2 * i);
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
    // Past its end `b`, which is the end numbered `end`, as far as others go on there.
    void extend(ViewEdge& one, std::size_t end) {
        const Vec2 from = one.a;
        const double length = lengthOf(one);
        if (length < kShortest) {
            return;
        }
        const Vec2 along = (one.b - one.a) * (1.0 / length);
        while (const std::optional<std::size_t> next = goesOn(one, end, from, along)) {
            end = *next;
            one.b = placeOf(end);
        }
    }
    // The far end of the edge that goes on from `end`.
    std::optional<std::size_t> goesOn(const ViewEdge& one, std::size_t end, Vec2 from, Vec2 along) {
        constexpr double kStraightOn = 1e-6;  // millimetres
        const std::size_t meeting = meetingOf_[end];
        for (std::size_t k = meetings_[meeting]; k < meetings_[meeting + 1]; ++k) {
            if (isTaken_[ends_[k] / 2]) {
                continue;
            }
            const std::size_t farEnd = ends_[k] ^ 1U;
            const Vec2 far = placeOf(farEnd);
            if (dot(far - one.b, along) > kShortest &&
                std::abs(cross(along, far - from)) < kStraightOn &&
                std::abs(cross(along, one.b - from)) < kStraightOn) {
                isTaken_[ends_[k] / 2] = true;
                return farEnd;
            }
        }
        return std::nullopt;
    }
    [[nodiscard]] Vec2 placeOf(std::size_t end) const {
        const ViewEdge& edge = edges_[end / 2];
        return end % 2 == 0 ? edge.a : edge.b;
    }

    std::span<const ViewEdge> edges_;
    std::vector<bool> isTaken_;
    // Ends are numbered 2i and 2i + 1; those that meet in one corner stand in a row.
    std::vector<std::size_t> ends_;
    std::vector<std::size_t> meetings_;  // where in ends_ each corner's row begins
    std::vector<std::size_t> meetingOf_;
};

// Appends what the covered stretches (any order) leave of the edge.
void appendRest(const Laid& one, std::vector<Stretch>& covered, std::vector<ViewEdge>& into) {
    std::sort(covered.begin(), covered.end(), [](const Stretch& a, const Stretch& b) {
        return a.from < b.from;
    });
    const ViewEdge& edge = *one.edge;
    covered.push_back({one.length, one.length});
    double done = 0.0;
    for (const Stretch& s : covered) {
        if (s.from - done >= kShortest) {
            ViewEdge rest = edge;
            rest.a = done > 0.0 ? edge.a + one.along * done : edge.a;
            rest.b = s.from < one.length ? edge.a + one.along * s.from : edge.b;
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
    explicit Alongside(std::span<const Laid> edges)
        : edges_(edges), slanting_(std::vector<Rect>()) {
        std::vector<Rect> slanting;
        for (std::size_t i = 0; i < edges.size(); ++i) {
            const ViewEdge& edge = *edges[i].edge;
            runs_.push_back(runOf(edge));
            if (runs_.back() == Run::Slanting) {
                slanting.push_back(around(edge));
                slantingAt_.push_back(i);
            } else if (runs_.back() == Run::Upright) {
                upright_.push_back({edge.a.x, std::minmax(edge.a.y, edge.b.y), i});
            } else {
                level_.push_back({edge.a.y, std::minmax(edge.a.x, edge.b.x), i});
            }
        }
        const auto inOrder = [](const Standing& a, const Standing& b) { return a.at < b.at; };
        std::sort(upright_.begin(), upright_.end(), inOrder);
        std::sort(level_.begin(), level_.end(), inOrder);
        slanting_ = PlaneIndex(slanting);
    }

    // Calls `found` with the number of each of them.
    template <class Found>
    void query(std::size_t number, const Found& found) const {
        const Laid& one = edges_[number];
        const Rect rect = around(*one.edge);
        const Run run = runs_[number];
        if (!slantingAt_.empty()) {
            slanting_.query(rect, [&](std::size_t i) { found(slantingAt_[i]); });
        }
        // A slanting one runs along an upright one only where it is nearly upright itself.
        if (run == Run::Upright || (run == Run::Slanting && isNearly(one.along.x, one))) {
            queryBetween(upright_, {rect.min.x, rect.max.x}, {rect.min.y, rect.max.y}, found);
        }
        if (run == Run::Level || (run == Run::Slanting && isNearly(one.along.y, one))) {
            queryBetween(level_, {rect.min.y, rect.max.y}, {rect.min.x, rect.max.x}, found);
        }
    }

  private:
    struct Standing {
        double at;
        std::pair<double, double> between;
        std::size_t edge;
    };

    // Whether an edge that turns from a line by this sine can keep to it within kSameLine for as
    // far as anybody sees, 0.01 mm; any that is shorter can.
    static bool isNearly(double sine, const Laid& one) {
        constexpr double kSeen = 10.0 * kSameLine;
        return one.length < kSeen || std::abs(sine) < 2.5 * kSameLine / kSeen;
    }
    template <class Found>
    static void queryBetween(const std::vector<Standing>& standing,
                             const Stretch& at,
                             const Stretch& between,
                             const Found& found) {
        const auto first = std::lower_bound(
            standing.begin(), standing.end(), at.from - kSameLine, [](const Standing& s, double v) {
                return s.at < v;
            });
        for (auto it = first; it != standing.end() && it->at <= at.to + kSameLine; ++it) {
            if (it->between.first <= between.to && it->between.second >= between.from) {
                found(it->edge);
            }
        }
    }

    std::span<const Laid> edges_;
    std::vector<Run> runs_;
    std::vector<Standing> upright_;
    std::vector<Standing> level_;
    std::vector<std::size_t> slantingAt_;
    PlaneIndex slanting_;
};

}  // namespace

std::vector<ViewEdge> mergeCoincident(std::span<const ViewEdge> all) {
    const std::vector<ViewEdge> joined = Joined(all).take();
    std::vector<Laid> edges;
    edges.reserve(joined.size());
    for (const ViewEdge& edge : joined) {
        edges.push_back(laid(edge));
    }
    const Alongside alongside(edges);
    // rank[i] < rank[j]: edge i is drawn rather than edge j.
    std::vector<std::size_t> order(edges.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t i, std::size_t j) {
        if (joined[i].visible != joined[j].visible) {
            return joined[i].visible;
        }
        return edges[i].length > edges[j].length;
    });
    std::vector<std::size_t> rank(edges.size());
    for (std::size_t k = 0; k < order.size(); ++k) {
        rank[order[k]] = k;
    }
    std::vector<ViewEdge> result;
    std::vector<Stretch> covered;
    for (std::size_t i = 0; i < edges.size(); ++i) {
        covered.clear();
        if (edges[i].length < kShortest) {
            continue;
        }
        alongside.query(i, [&](std::size_t other) {
            if (rank[other] < rank[i]) {
                if (const std::optional<Stretch> s = coveredBy(edges[i], edges[other])) {
                    covered.push_back(*s);
                }
            }
        });
        appendRest(edges[i], covered, result);
    }
    return result;
}

}  // namespace shoulderline
