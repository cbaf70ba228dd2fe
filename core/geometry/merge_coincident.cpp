#include <algorithm>
#include <cstddef>
#include <functional>
#include <numeric>
#include <optional>
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

}  // namespace

std::vector<ViewEdge> mergeCoincident(std::span<const ViewEdge> edges) {
    std::vector<Rect> rects;
    rects.reserve(edges.size());
    for (const ViewEdge& e : edges) {
        Rect rect{e.a, e.a};
        rect.include(e.b);
        const Vec2 margin{kSameLine, kSameLine};
        rects.push_back({rect.min - margin, rect.max + margin});
    }
    const PlaneIndex index(rects);
    // rank[i] < rank[j]: edge i is drawn rather than edge j.
    std::vector<std::size_t> order(edges.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t i, std::size_t j) {
        if (edges[i].visible != edges[j].visible) {
            return edges[i].visible;
        }
        return lengthOf(edges[i]) > lengthOf(edges[j]);
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
        index.query(rects[current], note);
        if (lengthOf(edges[current]) >= kShortest) {
            appendRest(edges[current], covered, result);
        }
    }
    return result;
}

}  // namespace shoulderline
