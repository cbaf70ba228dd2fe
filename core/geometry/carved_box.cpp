#include "core/geometry/carved_box.h"

#include <algorithm>
#include <array>
#include <map>
#include <utility>
#include <vector>

namespace shoulderline {

namespace {

constexpr double kSamePlane = 1e-6;  // mm

// The blank in cells between all planes of the boxes.
class Cells {
  public:
    Cells(const Box& blank, std::span<const Box> hollows) {
        for (int axis = 0; axis < 3; ++axis) {
            std::vector<double>& at = planes_[static_cast<std::size_t>(axis)];
            at = {blank.min[axis], blank.max[axis]};
            for (const Box& hollow : hollows) {
                for (const double plane : {hollow.min[axis], hollow.max[axis]}) {
                    if (plane > blank.min[axis] && plane < blank.max[axis]) {
                        at.push_back(plane);
                    }
                }
            }
            std::sort(at.begin(), at.end());
            at.erase(
                std::unique(
                    at.begin(), at.end(), [](double a, double b) { return b - a < kSamePlane; }),
                at.end());
        }
        wood_.resize(static_cast<std::size_t>(count(0) * count(1) * count(2)));
        for (int i = 0; i < count(0); ++i) {
            for (int j = 0; j < count(1); ++j) {
                for (int k = 0; k < count(2); ++k) {
                    const Vec3 middle{middleOf(0, i), middleOf(1, j), middleOf(2, k)};
                    wood_[cell({i, j, k})] =
                        std::none_of(hollows.begin(), hollows.end(), [&](const Box& hollow) {
                            return hollow.holds({middle, middle});
                        });
                }
            }
        }
    }

    [[nodiscard]] int count(int axis) const {
        return static_cast<int>(planes_[static_cast<std::size_t>(axis)].size()) - 1;
    }
    [[nodiscard]] double plane(int axis, int i) const {
        return planes_[static_cast<std::size_t>(axis)][static_cast<std::size_t>(i)];
    }
    using At = std::array<int, 3>;
    [[nodiscard]] bool isWood(const At& at) const {
        for (int axis = 0; axis < 3; ++axis) {
            const int i = at[static_cast<std::size_t>(axis)];
            if (i < 0 || i >= count(axis)) {
                return false;
            }
        }
        return wood_[cell(at)];
    }

  private:
    [[nodiscard]] double middleOf(int axis, int i) const {
        return (plane(axis, i) + plane(axis, i + 1)) / 2.0;
    }
    [[nodiscard]] std::size_t cell(const At& at) const {
        return static_cast<std::size_t>((at[0] * count(1) + at[1]) * count(2) + at[2]);
    }

    std::array<std::vector<double>, 3> planes_;
    std::vector<bool> wood_;
};

// Puts the faces between wood and air together.
class Shell {
  public:
    explicit Shell(const Cells& cells) : cells_(cells) {}

    // The faces on the sides of one cell of wood that look at air.
    void add(const Cells::At& at) {
        for (std::size_t axis = 0; axis < 3; ++axis) {
            for (const int way : {-1, 1}) {
                Cells::At beyond = at;
                beyond[axis] += way;
                if (!cells_.isWood(beyond)) {
                    addFace(at, axis, way);
                }
            }
        }
    }

    // Edges between faces of one plane are no edges to be seen. None where one has more than two.
    [[nodiscard]] std::optional<Polyhedron> solid() && {
        std::map<VertexPair, std::vector<std::size_t>> facesAt;
        for (std::size_t f = 0; f < solid_.faces.size(); ++f) {
            const std::vector<int>& loop = solid_.faces[f].loop;
            for (std::size_t i = 0; i < loop.size(); ++i) {
                facesAt[vertexPair(loop[i], loop[(i + 1) % loop.size()])].push_back(f);
            }
        }
        for (const auto& [ends, faces] : facesAt) {
            if (faces.size() != 2) {
                return std::nullopt;
            }
            if (facing_[faces[0]] == facing_[faces[1]]) {
                solid_.smoothEdges.push_back(ends);  // in their order, as the map has them
            }
        }
        if (solid_.faces.empty()) {
            return std::nullopt;
        }
        return std::move(solid_);
    }

  private:
    void addFace(const Cells::At& at, std::size_t axis, int way) {
        const std::size_t u = (axis + 1) % 3;
        const std::size_t v = (axis + 2) % 3;
        Cells::At corner = at;
        corner[axis] += way > 0 ? 1 : 0;
        Polyhedron::Face face;
        constexpr std::array<std::pair<int, int>, 4> kRound{{{0, 0}, {1, 0}, {1, 1}, {0, 1}}};
        for (const auto& [du, dv] : kRound) {
            Cells::At p = corner;
            p[u] += du;
            p[v] += dv;
            face.loop.push_back(vertexAt(p));
        }
        if (way < 0) {
            std::reverse(face.loop.begin(), face.loop.end());
        }
        solid_.faces.push_back(std::move(face));
        facing_.push_back(static_cast<int>(axis + 1) * way);
    }
    [[nodiscard]] int vertexAt(const Cells::At& p) {
        const auto [it, isNew] = numbers_.try_emplace(p, static_cast<int>(numbers_.size()));
        if (isNew) {
            solid_.vertices.push_back(
                {cells_.plane(0, p[0]), cells_.plane(1, p[1]), cells_.plane(2, p[2])});
        }
        return it->second;
    }

    const Cells& cells_;
    Polyhedron solid_;
    std::vector<int> facing_;  // by face: its axis from 1, below zero where it looks back along it
    std::map<Cells::At, int> numbers_;
};

}  // namespace

std::optional<Polyhedron> carvedBox(const Box& blank, std::span<const Box> hollows) {
    const Cells cells(blank, hollows);
    Shell shell(cells);
    for (int i = 0; i < cells.count(0); ++i) {
        for (int j = 0; j < cells.count(1); ++j) {
            for (int k = 0; k < cells.count(2); ++k) {
                if (cells.isWood({i, j, k})) {
                    shell.add({i, j, k});
                }
            }
        }
    }
    return std::move(shell).solid();
}

}  // namespace shoulderline
