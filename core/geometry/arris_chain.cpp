#include "core/geometry/arris_chain.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace shoulderline {

namespace {

constexpr double kSameArris = 1e-6;  // millimetres
constexpr double kAlong = 1e-9;      // of a unit normal, across an axis
constexpr double kNoShare = 1e-9;

Vec3 normalOf(const Polyhedron& solid, int face) {
    return normalised(solid.areaVector(face));
}

// What each face of a body is, none for the facets of other easings and for steps.
std::vector<std::optional<BodyFace>> facesOf(const Polyhedron& solid,
                                             std::span<const HalfSpace> ends) {
    const Box bounds = solid.bounds();
    std::vector<std::optional<BodyFace>> faces(solid.faces.size());
    for (std::size_t f = 0; f < solid.faces.size(); ++f) {
        const std::vector<int>& loop = solid.faces[f].loop;
        const auto liesIn = [&](const HalfSpace& plane) {
            return std::all_of(loop.begin(), loop.end(), [&](int v) {
                return std::abs(plane.height(solid.vertices[static_cast<std::size_t>(v)])) <
                       kSameArris;
            });
        };
        const Vec3 n = normalOf(solid, static_cast<int>(f));
        const double x = solid.vertices[static_cast<std::size_t>(loop.front())].x;
        const bool isSquareEnd = std::abs(n.x) > 1.0 - kAlong &&
                                 std::abs(x - (n.x < 0 ? bounds.min.x : bounds.max.x)) < kSameArris;
        if (isSquareEnd || std::any_of(ends.begin(), ends.end(), liesIn)) {
            faces[f] = n.x < 0 ? BodyFace::StartEnd : BodyFace::FarEnd;
        } else if (std::abs(n.x) > 1.0 - kAlong) {
            continue;
        } else if (std::abs(n.z) < kAlong) {
            faces[f] = n.y < 0 ? BodyFace::FaceEdge : BodyFace::BackEdge;
        } else if (std::abs(n.y) < kAlong) {
            faces[f] = n.z < 0 ? BodyFace::FaceSide : BodyFace::BackSide;
        }
    }
    return faces;
}

}  // namespace

// Gathers the arrises that an easing is on and strings them together.
class ArrisChain::Finder {
  public:
    Finder(const Polyhedron& solid, std::span<const HalfSpace> ends, const Easing& easing) {
        const std::vector<std::optional<BodyFace>> faces = facesOf(solid, ends);
        const auto isOn = [&](int f) { return faces[static_cast<std::size_t>(f)] == easing.on; };
        const auto isOther = [&](int f) {
            return easing.with ? faces[static_cast<std::size_t>(f)] == easing.with : !isOn(f);
        };
        for (const PolyhedronEdge& edge : solid.edges()) {
            if (isOn(edge.left) && isOther(edge.right)) {
                add({edge.ends.low, edge.ends.high, edge.left, edge.right});
            } else if (isOn(edge.right) && isOther(edge.left)) {
                add({edge.ends.high, edge.ends.low, edge.right, edge.left});
            }
        }
    }

    // The edges of one chain, in order; empty when all have been given. An open chain begins at its
    // open end.
    [[nodiscard]] std::vector<DirectedEdge> next() {
        if (from_.empty()) {
            return {};
        }
        const auto open = std::find_if(from_.begin(), from_.end(), [&](const auto& entry) {
            return !ends_.contains(entry.first);
        });
        std::vector<DirectedEdge> edges;
        auto at = open == from_.end() ? from_.begin() : open;
        while (at != from_.end()) {
            edges.push_back(at->second);
            from_.erase(at);
            at = from_.find(edges.back().to);
        }
        return edges;
    }

  private:
    void add(const DirectedEdge& edge) {
        from_.emplace(edge.from, edge);
        ends_.emplace(edge.to, edge.from);
    }
    std::map<int, DirectedEdge> from_;
    std::map<int, int> ends_;
};

// A new corner wherever the chain passes `x`.
void ArrisChain::stopAt(double x, std::vector<DirectedEdge>& edges) {
    for (std::size_t i = 0; i < edges.size(); ++i) {
        const DirectedEdge edge = edges[i];
        const double a = at(edge.from).x;
        const double b = at(edge.to).x;
        if (x < std::min(a, b) + kSameArris || x > std::max(a, b) - kSameArris) {
            continue;
        }
        const int made = static_cast<int>(solid_->vertices.size());
        solid_->vertices.push_back(at(edge.from) +
                                   (at(edge.to) - at(edge.from)) * ((x - a) / (b - a)));
        replace(edge.on, edge.from, {edge.from, made});
        replace(edge.other, edge.to, {edge.to, made});
        edges[i].to = made;
        edges.insert(edges.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                     {made, edge.to, edge.on, edge.other});
        ++i;
    }
}

Result<void> ArrisChain::take(std::vector<DirectedEdge> edges) {
    if (isStopped()) {
        for (const auto& [stop, way] :
             {std::pair{easing_.from, 1.0}, std::pair{easing_.to, -1.0}}) {
            if (stop) {
                stopAt(*stop, edges);
                stopAt(*stop + way * easing_.runOut, edges);
            }
        }
        std::erase_if(edges, [&](const DirectedEdge& edge) {
            const double middle = (at(edge.from).x + at(edge.to).x) / 2;
            return (easing_.from && middle < *easing_.from) || (easing_.to && middle > *easing_.to);
        });
    }
    if (edges.empty()) {
        return {};
    }
    const bool isClosed = edges.front().from == edges.back().to;
    for (std::size_t k = 0; k < edges.size(); ++k) {
        const DirectedEdge& edge = edges[k];
        segments_.push_back(
            {edge.on, edge.other, normalOf(*solid_, edge.on), normalOf(*solid_, edge.other)});
        corners_.push_back({edge.from, std::nullopt, k});
        if (k > 0) {
            corners_.back().before = k - 1;
        }
    }
    if (isClosed) {
        corners_.front().before = edges.size() - 1;
        return {};
    }
    corners_.push_back({edges.back().to, edges.size() - 1, std::nullopt});
    for (ChainCorner* corner : {&corners_.front(), &corners_.back()}) {
        if (const Result<void> closed = closeEnd(*corner); !closed) {
            return closed;
        }
    }
    return {};
}

Result<void> ArrisChain::closeEnd(ChainCorner& corner) {
    if (shareAt(corner.vertex) <= 0.0) {
        return {};
    }
    const ChainSegment& only = segments_[corner.before ? *corner.before : *corner.after];
    for (std::size_t f = 0; f < solid_->faces.size(); ++f) {
        const int face = static_cast<int>(f);
        const std::vector<int>& loop = solid_->faces[f].loop;
        if (face == only.on || face == only.other ||
            std::find(loop.begin(), loop.end(), corner.vertex) == loop.end()) {
            continue;
        }
        if (corner.endFace >= 0) {
            return fail(ErrorCode::OutOfRange, "More than three faces meet where it ends.");
        }
        corner.endFace = face;
    }
    return {};
}

double ArrisChain::shareAt(int vertex) const {
    double share = 1.0;
    const double x = at(vertex).x;
    if (easing_.from) {
        share = std::min(share, (x - *easing_.from) / easing_.runOut);
    }
    if (easing_.to) {
        share = std::min(share, (*easing_.to - x) / easing_.runOut);
    }
    return share < kNoShare ? 0.0 : share;
}

Vec3 ArrisChain::middleOfLoop() const {
    Vec3 sum;
    for (const ChainCorner& corner : corners_) {
        sum = sum + at(corner.vertex);
    }
    return sum * (1.0 / static_cast<double>(corners_.size()));
}

std::optional<int> ArrisChain::edgeBetween(int vertex, int a, int b) const {
    if (a < 0 || b < 0) {
        return std::nullopt;
    }
    const auto neighbours = [&](int face) {
        const std::vector<int>& loop = solid_->faces[static_cast<std::size_t>(face)].loop;
        const auto it = std::find(loop.begin(), loop.end(), vertex);
        std::vector<int> beside;
        if (it != loop.end()) {
            beside.push_back(it == loop.begin() ? loop.back() : *(it - 1));
            beside.push_back(it + 1 == loop.end() ? loop.front() : *(it + 1));
        }
        return beside;
    };
    const std::vector<int> ofB = neighbours(b);
    for (const int v : neighbours(a)) {
        if (std::find(ofB.begin(), ofB.end(), v) != ofB.end()) {
            return v;
        }
    }
    return std::nullopt;
}

void ArrisChain::replace(int face, int vertex, const std::vector<int>& points) {
    std::vector<int>& loop = solid_->faces[static_cast<std::size_t>(face)].loop;
    const auto it = std::find(loop.begin(), loop.end(), vertex);
    if (it != loop.end()) {
        const auto place = loop.erase(it);
        loop.insert(place, points.begin(), points.end());
    }
}

Result<std::vector<ArrisChain>> ArrisChain::find(Polyhedron& solid,
                                                 std::span<const HalfSpace> ends,
                                                 const Easing& easing) {
    const double room = easing.from && easing.to ? *easing.to - *easing.from : kSameArris;
    const int stops = (easing.from ? 1 : 0) + (easing.to ? 1 : 0);
    if (stops == 2 && room < 2 * easing.runOut + kSameArris) {
        return fail(ErrorCode::OutOfRange, "Its stops leave nothing between them.");
    }
    if (stops > 0 && !(easing.runOut > 0.0)) {
        return fail(ErrorCode::OutOfRange, "A stopped one needs a length to run out over.");
    }
    Finder finder(solid, ends, easing);
    std::vector<ArrisChain> chains;
    for (std::vector<DirectedEdge> edges = finder.next(); !edges.empty(); edges = finder.next()) {
        ArrisChain chain(solid, easing);
        if (const Result<void> taken = chain.take(std::move(edges)); !taken) {
            return tl::unexpected<Error>(taken.error());
        }
        if (!chain.segments_.empty()) {
            chains.push_back(std::move(chain));
        }
    }
    if (chains.empty()) {
        return fail(ErrorCode::OutOfRange, "There is no such arris.");
    }
    return chains;
}

Polyhedron tidied(Polyhedron solid) {
    for (Polyhedron::Face& face : solid.faces) {
        std::vector<int>& loop = face.loop;
        loop.erase(std::unique(loop.begin(), loop.end()), loop.end());
        while (loop.size() > 1 && loop.front() == loop.back()) {
            loop.pop_back();
        }
    }
    std::erase_if(solid.faces, [](const Polyhedron::Face& face) { return face.loop.size() < 3; });
    std::vector<int> number(solid.vertices.size(), -1);
    std::vector<Vec3> kept;
    for (Polyhedron::Face& face : solid.faces) {
        for (int& vertex : face.loop) {
            int& as = number[static_cast<std::size_t>(vertex)];
            if (as < 0) {
                as = static_cast<int>(kept.size());
                kept.push_back(solid.vertices[static_cast<std::size_t>(vertex)]);
            }
            vertex = as;
        }
    }
    std::vector<VertexPair> smooth;
    for (const VertexPair& edge : solid.smoothEdges) {
        const int a = number[static_cast<std::size_t>(edge.low)];
        const int b = number[static_cast<std::size_t>(edge.high)];
        if (a >= 0 && b >= 0 && a != b) {
            smooth.push_back(vertexPair(a, b));
        }
    }
    std::sort(smooth.begin(), smooth.end());
    smooth.erase(std::unique(smooth.begin(), smooth.end()), smooth.end());
    solid.vertices = std::move(kept);
    solid.smoothEdges = std::move(smooth);
    return solid;
}

bool isClosed(const Polyhedron& solid) {
    const std::vector<PolyhedronEdge> edges = solid.edges();
    return solid.faces.size() >= 4 &&
           std::none_of(edges.begin(), edges.end(), [](const PolyhedronEdge& edge) {
               return edge.left < 0 || edge.right < 0;
           });
}

}  // namespace shoulderline
