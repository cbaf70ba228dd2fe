#include "core/geometry/plane_cut.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

namespace shoulderline {

namespace {

class Cutter {
  public:
    Cutter(const Polyhedron& solid, const HalfSpace& keeps) : solid_(solid), keeps_(keeps) {
        for (const Vec3& vertex : solid.vertices) {
            heights_.push_back(keeps.height(vertex));
        }
        made_.vertices = solid.vertices;
    }

    [[nodiscard]] bool takesNothing() const {
        return std::none_of(heights_.begin(), heights_.end(), isOut);
    }
    [[nodiscard]] bool takesAll() const {
        return std::none_of(heights_.begin(), heights_.end(), isIn);
    }
    std::optional<Polyhedron> cut();

  private:
    static bool isOut(double height) { return height > kPlaneTolerance; }
    static bool isIn(double height) { return height < -kPlaneTolerance; }
    [[nodiscard]] double height(int vertex) const {
        return heights_[static_cast<std::size_t>(vertex)];
    }

    int crossing(int a, int b);
    void cutFace(const Polyhedron::Face& face);
    void joinChains(std::vector<std::vector<int>> chains);
    bool closeCut();
    void keepSmooth();
    void dropUnused();

    const Polyhedron& solid_;
    HalfSpace keeps_;
    std::vector<double> heights_;
    std::map<VertexPair, int> crossings_;
    Polyhedron made_;
};

int Cutter::crossing(int a, int b) {
    const VertexPair edge = vertexPair(a, b);
    const auto [at, isNew] = crossings_.try_emplace(edge, static_cast<int>(made_.vertices.size()));
    if (isNew) {
        const Vec3 low = solid_.vertices[static_cast<std::size_t>(edge.low)];
        const Vec3 high = solid_.vertices[static_cast<std::size_t>(edge.high)];
        const double share = height(edge.low) / (height(edge.low) - height(edge.high));
        made_.vertices.push_back(low + (high - low) * share);
    }
    return at->second;
}

// The stretches of a face's loop that stay, each from where it comes in to where it goes out.
void Cutter::cutFace(const Polyhedron::Face& face) {
    const std::vector<int>& loop = face.loop;
    const std::size_t n = loop.size();
    std::size_t start = 0;
    while (start < n && !isOut(height(loop[start]))) {
        ++start;
    }
    if (start == n) {
        made_.faces.push_back(face);
        return;
    }
    std::vector<std::vector<int>> chains;
    std::vector<int> chain;
    bool hasWood = false;
    for (std::size_t k = 1; k <= n; ++k) {
        const int before = loop[(start + k - 1) % n];
        const int at = loop[(start + k) % n];
        if (isOut(height(before)) && isIn(height(at))) {
            chain.push_back(crossing(before, at));
        }
        if (!isOut(height(at))) {
            chain.push_back(at);
            hasWood = hasWood || isIn(height(at));
            continue;
        }
        if (isIn(height(before))) {
            chain.push_back(crossing(before, at));
        }
        if (hasWood) {
            chains.push_back(std::move(chain));
        }
        chain.clear();
        hasWood = false;
    }
    joinChains(std::move(chains));
}

// Joins the stretches along the cut: sorted along it, the ends pair off in turn.
void Cutter::joinChains(std::vector<std::vector<int>> chains) {
    if (chains.size() == 1) {
        made_.faces.push_back({std::move(chains.front())});
        return;
    }
    if (chains.empty()) {
        return;
    }
    struct Tip {
        double along;
        std::size_t chain;
        bool isStart;
    };
    const auto point = [&](int i) { return made_.vertices[static_cast<std::size_t>(i)]; };
    const Vec3 origin = point(chains.front().front());
    Vec3 line;
    for (const std::vector<int>& chain : chains) {
        const Vec3 to = point(chain.back()) - origin;
        line = dot(to, to) > dot(line, line) ? to : line;
    }
    std::vector<Tip> tips;
    for (std::size_t i = 0; i < chains.size(); ++i) {
        tips.push_back({dot(point(chains[i].front()) - origin, line), i, true});
        tips.push_back({dot(point(chains[i].back()) - origin, line), i, false});
    }
    std::sort(
        tips.begin(), tips.end(), [](const Tip& a, const Tip& b) { return a.along < b.along; });
    std::vector<std::size_t> after(chains.size());
    for (std::size_t i = 0; i + 1 < tips.size(); i += 2) {
        const bool isFirstStart = tips[i].isStart;
        const Tip& out = isFirstStart ? tips[i + 1] : tips[i];
        const Tip& in = isFirstStart ? tips[i] : tips[i + 1];
        after[out.chain] = in.chain;
    }
    std::vector<bool> isDone(chains.size(), false);
    for (std::size_t i = 0; i < chains.size(); ++i) {
        std::vector<int> loop;
        for (std::size_t at = i; !isDone[at]; at = after[at]) {
            isDone[at] = true;
            loop.insert(loop.end(), chains[at].begin(), chains[at].end());
        }
        if (!loop.empty()) {
            made_.faces.push_back({std::move(loop)});
        }
    }
}

// Every edge that only one face runs along borders the cut.
bool Cutter::closeCut() {
    std::set<std::pair<int, int>> open;
    for (const Polyhedron::Face& face : made_.faces) {
        for (std::size_t i = 0; i < face.loop.size(); ++i) {
            const int a = face.loop[i];
            const int b = face.loop[(i + 1) % face.loop.size()];
            if (open.erase({a, b}) == 0) {
                open.insert({b, a});
            }
        }
    }
    while (!open.empty()) {
        std::vector<int> loop{open.begin()->first};
        int at = open.begin()->second;
        open.erase(open.begin());
        while (at != loop.front()) {
            const auto next = open.lower_bound({at, 0});
            if (next == open.end() || next->first != at) {
                return false;
            }
            loop.push_back(at);
            at = next->second;
            open.erase(next);
        }
        made_.faces.push_back({std::move(loop)});
        const Vec3 area = made_.areaVector(static_cast<int>(made_.faces.size()) - 1);
        if (dot(area, keeps_.normal) <= 0) {
            return false;  // the inner border of a ring
        }
    }
    return true;
}

void Cutter::keepSmooth() {
    for (const VertexPair& edge : solid_.smoothEdges) {
        const auto cut = crossings_.find(edge);
        if (cut != crossings_.end()) {
            made_.smoothEdges.push_back(
                vertexPair(isOut(height(edge.low)) ? edge.high : edge.low, cut->second));
        } else if (!isOut(height(edge.low)) && !isOut(height(edge.high)) &&
                   (isIn(height(edge.low)) || isIn(height(edge.high)))) {
            made_.smoothEdges.push_back(edge);
        }
    }
}

void Cutter::dropUnused() {
    std::vector<int> number(made_.vertices.size(), -1);
    std::vector<Vec3> kept;
    for (Polyhedron::Face& face : made_.faces) {
        for (int& vertex : face.loop) {
            int& as = number[static_cast<std::size_t>(vertex)];
            if (as < 0) {
                as = static_cast<int>(kept.size());
                kept.push_back(made_.vertices[static_cast<std::size_t>(vertex)]);
            }
            vertex = as;
        }
    }
    made_.vertices = std::move(kept);
    for (VertexPair& edge : made_.smoothEdges) {
        edge = vertexPair(number[static_cast<std::size_t>(edge.low)],
                          number[static_cast<std::size_t>(edge.high)]);
    }
    std::sort(made_.smoothEdges.begin(), made_.smoothEdges.end());
}

std::optional<Polyhedron> Cutter::cut() {
    for (const Polyhedron::Face& face : solid_.faces) {
        cutFace(face);
    }
    if (!closeCut()) {
        return std::nullopt;
    }
    keepSmooth();
    dropUnused();
    return std::move(made_);
}

}  // namespace

std::optional<Polyhedron> cutByPlane(const Polyhedron& solid, const HalfSpace& keeps) {
    Cutter cutter(solid, keeps);
    if (cutter.takesNothing()) {
        return solid;
    }
    if (cutter.takesAll()) {
        return std::nullopt;
    }
    return cutter.cut();
}

void markSmooth(Polyhedron& solid, std::span<const PlaneCut> planes) {
    if (std::none_of(planes.begin(), planes.end(), [](const PlaneCut& plane) {
            return plane.surface >= 0;
        })) {
        return;
    }
    std::vector<int> surfaceOf;
    for (const Polyhedron::Face& face : solid.faces) {
        const auto isIn = [&](const PlaneCut& plane) {
            return plane.surface >= 0 &&
                   std::all_of(face.loop.begin(), face.loop.end(), [&](int i) {
                       return std::abs(plane.keeps.height(
                                  solid.vertices[static_cast<std::size_t>(i)])) < 1e-6;
                   });
        };
        const auto plane = std::find_if(planes.begin(), planes.end(), isIn);
        surfaceOf.push_back(plane == planes.end() ? ConvexSolid::kOwnSurface : plane->surface);
    }
    for (const PolyhedronEdge& edge : solid.edges()) {
        const int left = surfaceOf[static_cast<std::size_t>(edge.left)];
        if (left >= 0 && left == surfaceOf[static_cast<std::size_t>(edge.right)]) {
            solid.smoothEdges.push_back(edge.ends);
        }
    }
    std::sort(solid.smoothEdges.begin(), solid.smoothEdges.end());
    solid.smoothEdges.erase(std::unique(solid.smoothEdges.begin(), solid.smoothEdges.end()),
                            solid.smoothEdges.end());
}

}  // namespace shoulderline
