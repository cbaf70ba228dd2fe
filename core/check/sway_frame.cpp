#include "core/check/sway_frame.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/measure/length.h"

namespace shoulderline {

namespace {

constexpr double kSameLevel =
    0.5;  // members that meet a post so near one another meet it at one point

// Where a post is held, joined or pushed, from its foot up.
struct Node {
    double level = 0.0;
    std::size_t turn = 0;              // its unknowns
    std::optional<std::size_t> moves;  // none where it is held
};

class Solver {
  public:
    explicit Solver(const SwayFrame& frame) : frame_(frame), nodes_(frame.posts.size()) {
        placeNodes();
    }

    std::vector<EndMoments> solve() {
        if (unknowns_ > kMostUnknowns) {
            return {};
        }
        rows_.assign(unknowns_, std::vector<double>(unknowns_ + 1, 0.0));
        for (std::size_t post = 0; post < nodes_.size(); ++post) {
            const std::vector<Node>& nodes = nodes_[post];
            for (std::size_t i = 1; i < nodes.size(); ++i) {
                addPost(nodes[i - 1], nodes[i], frame_.posts[post].stiffness);
            }
        }
        for (const SwayFrame::Member& member : frame_.members) {
            const double k = member.stiffness / member.length;
            const std::size_t a = nodeAt(member.from, member.level).turn;
            const std::size_t b = nodeAt(member.to, member.level).turn;
            rows_[a][a] += 4 * k;
            rows_[b][b] += 4 * k;
            rows_[a][b] += 2 * k;
            rows_[b][a] += 2 * k;
        }
        for (const SwayFrame::Force& force : frame_.forces) {
            if (const auto moves = nodeAt(force.post, force.level).moves) {
                rows_[*moves][unknowns_] += force.newtons;
            }
        }
        return eliminate() ? endMoments() : std::vector<EndMoments>();
    }

  private:
    void placeNodes() {
        for (std::vector<Node>& nodes : nodes_) {
            nodes.push_back({});
        }
        const auto add = [&](std::size_t post, double level) {
            std::vector<Node>& nodes = nodes_[post];
            const bool isThere = std::any_of(nodes.begin(), nodes.end(), [&](const Node& node) {
                return std::abs(node.level - level) <= kSameLevel;
            });
            if (!isThere) {
                nodes.push_back({level, 0, std::nullopt});
            }
        };
        for (const SwayFrame::Member& member : frame_.members) {
            add(member.from, member.level);
            add(member.to, member.level);
        }
        for (const SwayFrame::Force& force : frame_.forces) {
            add(force.post, force.level);
        }
        for (std::size_t post = 0; post < nodes_.size(); ++post) {
            std::vector<Node>& nodes = nodes_[post];
            std::sort(nodes.begin(), nodes.end(), [](const Node& a, const Node& b) {
                return a.level < b.level;
            });
            for (Node& node : nodes) {
                node.turn = unknowns_++;
                if (node.level > kSameLevel || frame_.posts[post].footRolls) {
                    node.moves = unknowns_++;
                }
            }
        }
        // What a member joins moves together. Joined unknowns are told apart no more: the later one
        // becomes the earlier one, until nothing changes.
        bool isSettled = false;
        while (!isSettled) {
            isSettled = true;
            for (const SwayFrame::Member& member : frame_.members) {
                Node& a = nodeAt(member.from, member.level);
                Node& b = nodeAt(member.to, member.level);
                if (a.moves != b.moves) {
                    a.moves = b.moves = (a.moves && b.moves) ? std::min(a.moves, b.moves)
                                                             : std::optional<std::size_t>();
                    isSettled = false;
                }
            }
        }
    }

    Node& nodeAt(std::size_t post, double level) {
        std::vector<Node>& nodes = nodes_[post];
        return *std::min_element(nodes.begin(), nodes.end(), [level](const Node& a, const Node& b) {
            return std::abs(a.level - level) < std::abs(b.level - level);
        });
    }

    // A length of post between two nodes: turning and moving of both ends.
    void addPost(const Node& low, const Node& high, double stiffness) {
        const double l = high.level - low.level;
        const double k = stiffness / l;
        // Order: low turns, high turns, low moves, high moves.
        const double m[4][4] = {{4 * k, 2 * k, 6 * k / l, -6 * k / l},
                                {2 * k, 4 * k, 6 * k / l, -6 * k / l},
                                {6 * k / l, 6 * k / l, 12 * k / (l * l), -12 * k / (l * l)},
                                {-6 * k / l, -6 * k / l, -12 * k / (l * l), 12 * k / (l * l)}};
        const std::optional<std::size_t> at[4] = {low.turn, high.turn, low.moves, high.moves};
        for (int i = 0; i < 4; ++i) {
            for (int j = 0; j < 4; ++j) {
                if (at[i] && at[j]) {
                    rows_[*at[i]][*at[j]] += m[i][j];
                }
            }
        }
    }

    // Gauss with the largest pivot of each column. Unknowns that were joined to others have empty
    // rows and stay zero.
    bool eliminate() {
        const std::size_t n = unknowns_;
        double greatest = 0.0;
        std::vector<bool> isUsed(n, false);
        for (std::size_t i = 0; i < n; ++i) {
            isUsed[i] = rows_[i][i] != 0.0;
            greatest = std::max(greatest, std::abs(rows_[i][i]));
        }
        for (std::size_t i = 0; i < n; ++i) {
            if (!isUsed[i]) {
                rows_[i][i] = greatest;
            }
        }
        for (std::size_t column = 0; column < n; ++column) {
            std::size_t pivot = column;
            for (std::size_t row = column + 1; row < n; ++row) {
                if (std::abs(rows_[row][column]) > std::abs(rows_[pivot][column])) {
                    pivot = row;
                }
            }
            // Turning and moving differ by the square of a length; what is left of a frame that
            // can move freely is rounding.
            constexpr double kNothing = 1e-14;
            if (!(std::abs(rows_[pivot][column]) > kNothing * greatest)) {
                return false;
            }
            std::swap(rows_[pivot], rows_[column]);
            for (std::size_t row = column + 1; row < n; ++row) {
                const double factor = rows_[row][column] / rows_[column][column];
                if (factor != 0.0) {
                    for (std::size_t k = column; k <= n; ++k) {
                        rows_[row][k] -= factor * rows_[column][k];
                    }
                }
            }
        }
        result_.assign(n, 0.0);
        for (std::size_t i = n; i-- > 0;) {
            double sum = rows_[i][n];
            for (std::size_t k = i + 1; k < n; ++k) {
                sum -= rows_[i][k] * result_[k];
            }
            result_[i] = sum / rows_[i][i];
        }
        return true;
    }

    std::vector<EndMoments> endMoments() {
        std::vector<EndMoments> moments;
        for (const SwayFrame::Member& member : frame_.members) {
            const double k = 2 * member.stiffness / member.length / Length::kMmPerMetre;
            const double a = result_[nodeAt(member.from, member.level).turn];
            const double b = result_[nodeAt(member.to, member.level).turn];
            moments.push_back({k * (2 * a + b), k * (a + 2 * b)});
        }
        return moments;
    }

    const SwayFrame& frame_;
    std::vector<std::vector<Node>> nodes_;
    std::size_t unknowns_ = 0;
    std::vector<std::vector<double>> rows_;
    std::vector<double> result_;
};

}  // namespace

std::vector<EndMoments> solveSway(const SwayFrame& frame) {
    return Solver(frame).solve();
}

SideFrameForces sideFrameForces(const SideFrame& f) {
    const double over = f.railHeight + f.backHeight;
    SideFrameForces forces;
    forces.frontFoot = (f.backNewtons * over - f.seatNewtons * f.fromBack) / f.footSpacing;
    forces.backFoot =
        (f.seatNewtons * (f.footSpacing - f.fromBack) + f.backNewtons * over) / f.footSpacing;
    forces.backFootLevel = f.backNewtons;
    forces.railAtSeat = forces.frontFoot * (f.footSpacing - f.fromBack) / Length::kMmPerMetre;
    forces.railAtBack = f.backNewtons * over / Length::kMmPerMetre;
    forces.postAbove = f.backNewtons * f.backHeight / Length::kMmPerMetre;
    forces.postBelow = f.backNewtons * f.railHeight / Length::kMmPerMetre;
    return forces;
}

double tippingForce(const SideFrame& f) {
    return f.seatNewtons * f.fromBack / (f.railHeight + f.backHeight);
}

}  // namespace shoulderline
