#include "core/drawing/pulled_apart.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

// Two parts that come apart along the axis in hand: `high` moves at least `gap` further along it.
struct Apart {
    std::size_t low = 0;
    std::size_t high = 0;
    double gap = 0.0;
};
// Two that are joined across it.
struct Tie {
    std::size_t a = 0;
    std::size_t b = 0;
};

int axisNearestTo(Vec3 direction) {
    int axis = 0;
    for (int i = 1; i < 3; ++i) {
        axis = std::abs(direction[i]) > std::abs(direction[axis]) + 1e-6 ? i : axis;
    }
    return axis;
}

class Groups {
  public:
    explicit Groups(std::size_t count) : of_(count) {
        std::iota(of_.begin(), of_.end(), std::size_t{0});
    }
    [[nodiscard]] std::size_t find(std::size_t i) const {
        while (of_[i] != i) {
            i = of_[i];
        }
        return i;
    }
    void join(std::size_t a, std::size_t b) {
        const std::size_t low = std::min(find(a), find(b));
        of_[std::max(find(a), find(b))] = low;
    }

  private:
    std::vector<std::size_t> of_;
};

// Those of `aparts` that run in a ring between groups: whatever is not on one is peeled off from
// the ends inwards.
std::vector<Apart> inRings(std::vector<Apart> aparts, const Groups& groups, std::size_t count) {
    for (bool isPeeled = true; isPeeled;) {
        std::vector<int> into(count, 0);
        std::vector<int> outOf(count, 0);
        for (const Apart& apart : aparts) {
            ++outOf[groups.find(apart.low)];
            ++into[groups.find(apart.high)];
        }
        const auto end = std::remove_if(aparts.begin(), aparts.end(), [&](const Apart& apart) {
            return into[groups.find(apart.low)] == 0 || outOf[groups.find(apart.high)] == 0;
        });
        isPeeled = end != aparts.end();
        aparts.erase(end, aparts.end());
    }
    return aparts;
}

class Axis {
  public:
    Axis(const ResolvedPiece& resolved, int axis, double clearance)
        : count_(resolved.parts.size()), groups_(count_) {
        for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
            const ResolvedJoint& joint = resolved.joints[i];
            if (joint.tenoned == joint.mortised) {
                continue;
            }
            if (axisNearestTo(joint.frame.x) != axis) {
                // What only rests is not held in line.
                (joint.kind == JointKind::Rests ? letGo_ : ties_)
                    .push_back({joint.tenoned, joint.mortised});
                continue;
            }
            const bool isAway = joint.frame.x[axis] > 0.0;
            const bool isWithin =
                resolved.parts[joint.tenoned].assembly == resolved.parts[joint.mortised].assembly;
            aparts_.push_back({isAway ? joint.tenoned : joint.mortised,
                               isAway ? joint.mortised : joint.tenoned,
                               lengthOfEntry(resolved, i) + clearance * (isWithin ? 1.0 : 2.0)});
        }
        std::vector<int> tiesOf(count_, 0);
        for (const Tie& tie : ties_) {
            ++tiesOf[tie.a];
            ++tiesOf[tie.b];
        }
        group();
        while (letGo(tiesOf)) {
            group();
        }
        // What still runs in rings cannot come apart, and moves together.
        for (std::vector<Apart> stuck = inRings(aparts_, groups_, count_); !stuck.empty();
             stuck = inRings(aparts_, groups_, count_)) {
            for (const Apart& pair : stuck) {
                ties_.push_back({pair.low, pair.high});
            }
            group();
            aparts_.erase(std::remove_if(aparts_.begin(),
                                         aparts_.end(),
                                         [&](const Apart& apart) {
                                             return groups_.find(apart.low) ==
                                                    groups_.find(apart.high);
                                         }),
                          aparts_.end());
        }
    }

    // How far each part moves along the axis.
    [[nodiscard]] std::vector<double> solve() const {
        constexpr int kRounds = 600;
        constexpr double kPull = 0.2;
        std::vector<double> at(count_, 0.0);
        for (int round = 0; round < kRounds; ++round) {
            const double pull = round < kRounds / 2 ? kPull : 0.0;
            std::vector<double> moves(count_, 0.0);
            std::vector<int> times(count_, 0);
            const auto spread = [&](std::size_t low, std::size_t high, double by) {
                moves[low] -= by / 2.0;
                moves[high] += by / 2.0;
                ++times[low];
                ++times[high];
            };
            for (const Apart& apart : aparts_) {
                const std::size_t low = groups_.find(apart.low);
                const std::size_t high = groups_.find(apart.high);
                const double lacks = apart.gap - (at[high] - at[low]);
                if (lacks > 0.0) {
                    spread(low, high, lacks);
                }
            }
            for (const Tie& tie : letGo_) {
                const std::size_t a = groups_.find(tie.a);
                const std::size_t b = groups_.find(tie.b);
                if (pull > 0.0 && a != b) {
                    spread(a, b, (at[a] - at[b]) * pull);
                }
            }
            for (std::size_t i = 0; i < count_; ++i) {
                at[i] += times[i] > 0 ? moves[i] / times[i] : 0.0;
            }
        }
        settle(at);
        std::vector<double> result(count_);
        for (std::size_t i = 0; i < count_; ++i) {
            result[i] = at[groups_.find(i)];
        }
        return result;
    }

  private:
    void group() {
        groups_ = Groups(count_);
        for (const Tie& tie : ties_) {
            groups_.join(tie.a, tie.b);
        }
    }

    // Unties, of each pair in a ring, the part with the fewest ties (both where they have as many).
    // Whether any was tied.
    bool letGo(const std::vector<int>& tiesOf) {
        std::vector<bool> isFreed(count_, false);
        for (const Apart& apart : inRings(aparts_, groups_, count_)) {
            const int low = tiesOf[apart.low];
            const int high = tiesOf[apart.high];
            isFreed[apart.low] = isFreed[apart.low] || (low > 0 && (high == 0 || low <= high));
            isFreed[apart.high] = isFreed[apart.high] || (high > 0 && (low == 0 || high <= low));
        }
        const auto kept = std::stable_partition(ties_.begin(), ties_.end(), [&](const Tie& tie) {
            return !isFreed[tie.a] && !isFreed[tie.b];
        });
        const bool isAny = kept != ties_.end();
        letGo_.insert(letGo_.end(), kept, ties_.end());
        ties_.erase(kept, ties_.end());
        return isAny;
    }

    // Takes up what the rounds left: no pair lacks anything afterwards.
    void settle(std::vector<double>& at) const {
        for (std::size_t pass = 0; pass < count_; ++pass) {
            bool isMoved = false;
            for (const Apart& apart : aparts_) {
                const std::size_t high = groups_.find(apart.high);
                const double least = at[groups_.find(apart.low)] + apart.gap;
                if (at[high] < least - 1e-9) {
                    at[high] = least;
                    isMoved = true;
                }
            }
            if (!isMoved) {
                return;
            }
        }
    }

    std::size_t count_;
    std::vector<Apart> aparts_;
    std::vector<Tie> ties_;
    std::vector<Tie> letGo_;
    Groups groups_;
};

}  // namespace

double pictureClearance(const ResolvedPiece& resolved) {
    const Vec3 over = resolved.bounds.size();
    return std::max({over.x, over.y, over.z}) / 20.0;
}

double lengthOfEntry(const ResolvedPiece& resolved, std::size_t joint) {
    const ResolvedJoint& cut = resolved.joints[joint];
    for (const TenonSolid& tenon : resolved.parts[cut.tenoned].tenons) {
        if (tenon.joint == joint) {
            const Frame relative = relativeFrame(cut.frame, resolved.parts[cut.tenoned].frame);
            return std::max(0.0, relative.outerBounds(tenon.box).max.x);
        }
    }
    return 0.0;
}

std::vector<Vec3> pulledApart(const ResolvedPiece& resolved, double clearance) {
    std::vector<Vec3> moves(resolved.parts.size());
    for (int axis = 0; axis < 3; ++axis) {
        const std::vector<double> along = Axis(resolved, axis, clearance).solve();
        for (std::size_t i = 0; i < moves.size(); ++i) {
            moves[i][axis] = along[i];
        }
    }
    return moves;
}

}  // namespace shoulderline
