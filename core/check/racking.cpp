#include "core/check/racking.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <optional>
#include <unordered_map>

namespace shoulderline {

namespace {

constexpr double kAlong = 0.9;                // cosine: runs that way, leaning a little at most
constexpr double kOnFloor = 25.0;             // a foot this near the lowest one stands on the floor
constexpr double kUsualElasticity = 11000.0;  // MPa

class Union {
  public:
    explicit Union(std::size_t count) : parents_(count) {
        std::iota(parents_.begin(), parents_.end(), std::size_t{0});
    }
    std::size_t find(std::size_t i) {
        while (parents_[i] != i) {
            parents_[i] = parents_[parents_[i]];
            i = parents_[i];
        }
        return i;
    }
    void join(std::size_t a, std::size_t b) { parents_[find(a)] = find(b); }

  private:
    std::vector<std::size_t> parents_;
};

Vec3 direction(RackingWay way) {
    return way == RackingWay::Across ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
}

// Second moment of a part's section about the axis across `bent`, the direction it bends in.
double inertia(const ResolvedPart& part, Vec3 bent) {
    const double w = part.width.value.mm();
    const double t = part.thickness.value.mm();
    const bool isAlongWidth =
        std::abs(dot(part.frame.y, bent)) >= std::abs(dot(part.frame.z, bent));
    return isAlongWidth ? t * w * w * w / 12.0 : w * t * t * t / 12.0;
}

// A member as found: its part, and the posts and joints at its two ends.
struct Found {
    std::size_t part = 0;
    std::size_t posts[2] = {0, 0};
    std::size_t joints[2] = {0, 0};
    int ends = 0;
};

class Finder {
  public:
    Finder(const Piece& piece, const ResolvedPiece& resolved, const SpeciesTable& species)
        : resolved_(resolved), bodies_(resolved.parts.size()) {
        for (const Stock& stock : piece.stocks) {
            const Species* wood = species.find(stock.species);
            elasticity_[stock.name] =
                wood != nullptr ? wood->elasticityMpa.value_or(kUsualElasticity) : kUsualElasticity;
        }
        for (const ResolvedJoint& joint : resolved.joints) {
            bodies_.join(joint.tenoned, joint.mortised);
        }
        findPosts();
    }

    RackingFrames find() {
        RackingFrames all;
        all.floor = floor_;
        std::map<std::size_t, std::size_t> numbers;
        for (std::size_t i = 0; i < resolved_.parts.size(); ++i) {
            all.bodyOf.push_back(numbers.emplace(bodies_.find(i), numbers.size()).first->second);
        }
        for (const RackingWay way : {RackingWay::Across, RackingWay::InDepth}) {
            addFrames(way, all);
        }
        return all;
    }

  private:
    void findPosts() {
        isPost_.assign(resolved_.parts.size(), false);
        bool isFirst = true;
        for (std::size_t i = 0; i < resolved_.parts.size(); ++i) {
            const ResolvedPart& part = resolved_.parts[i];
            if (part.role == Role::Post && std::abs(part.frame.x.z) > kAlong) {
                isPost_[i] = true;
                const double foot = boundsInSpace(part).min.z;
                floor_ = isFirst ? foot : std::min(floor_, foot);
                isFirst = false;
            }
        }
        for (std::size_t i = 0; i < resolved_.parts.size(); ++i) {
            const ResolvedPart& part = resolved_.parts[i];
            if (isPost_[i] && boundsInSpace(part).min.z > floor_ + kOnFloor) {
                isPost_[i] = false;
            }
        }
    }

    [[nodiscard]] bool isBentUpright(const ResolvedJoint& joint) const {
        return joint.hasTenon() && std::abs(joint.frame.y.z) > kAlong;
    }

    std::vector<Found> membersOf(RackingWay way) const {
        std::unordered_map<std::size_t, Found> byPart;
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < resolved_.joints.size(); ++i) {
            const ResolvedJoint& joint = resolved_.joints[i];
            const ResolvedPart& part = resolved_.parts[joint.tenoned];
            if (!isPost_[joint.mortised] || !isBentUpright(joint) ||
                std::abs(dot(part.frame.x, direction(way))) <= kAlong) {
                continue;
            }
            const auto [it, isNew] = byPart.try_emplace(joint.tenoned);
            Found& found = it->second;
            if (isNew) {
                found.part = joint.tenoned;
                order.push_back(joint.tenoned);
            }
            if (found.ends < 2) {
                found.posts[found.ends] = joint.mortised;
                found.joints[found.ends] = i;
            }
            ++found.ends;
        }
        std::vector<Found> members;
        for (const std::size_t part : order) {
            const Found& found = byPart[part];
            if (found.ends == 2 && found.posts[0] != found.posts[1]) {
                members.push_back(found);
            }
        }
        return members;
    }

    [[nodiscard]] double placeOf(std::size_t post, RackingWay way) const {
        const ResolvedPart& part = resolved_.parts[post];
        const Vec3 size = part.bodyBox().size();
        return dot(part.frame.toOuter({size.x / 2, size.y / 2, size.z / 2}), direction(way));
    }

    [[nodiscard]] double elasticityOf(const ResolvedPart& part) const {
        const auto it = elasticity_.find(part.stock);
        return it == elasticity_.end() ? kUsualElasticity : it->second;
    }

    void addFrames(RackingWay way, RackingFrames& all) {
        const std::vector<Found> members = membersOf(way);
        Union joined(resolved_.parts.size());
        for (const Found& member : members) {
            joined.join(member.posts[0], member.posts[1]);
        }
        std::map<std::size_t, std::size_t> byRoot;  // frame of a set of joined posts
        for (const Found& member : members) {
            const std::size_t root = joined.find(member.posts[0]);
            const auto [it, isNew] = byRoot.emplace(root, all.frames.size());
            if (isNew) {
                all.frames.push_back({way, all.bodyOf[member.part], {}, {}, {}, {}});
            }
            RackingFrame& frame = all.frames[it->second];
            for (const std::size_t post : member.posts) {
                if (std::find(frame.posts.begin(), frame.posts.end(), post) == frame.posts.end()) {
                    frame.posts.push_back(post);
                }
            }
            frame.members.push_back({member.part, member.joints[0], member.joints[1]});
        }
        for (const auto& [root, index] : byRoot) {
            complete(all.frames[index]);
        }
    }

    // Puts the posts in order and works out stiffness and levels.
    void complete(RackingFrame& frame) const {
        std::sort(frame.posts.begin(), frame.posts.end(), [&](std::size_t a, std::size_t b) {
            return placeOf(a, frame.way) < placeOf(b, frame.way);
        });
        for (const std::size_t post : frame.posts) {
            const ResolvedPart& part = resolved_.parts[post];
            frame.places.push_back(placeOf(post, frame.way));
            frame.sway.posts.push_back(
                {elasticityOf(part) * inertia(part, direction(frame.way)), false});
        }
        const auto indexOf = [&](std::size_t joint) {
            const auto it =
                std::find(frame.posts.begin(), frame.posts.end(), resolved_.joints[joint].mortised);
            return static_cast<std::size_t>(it - frame.posts.begin());
        };
        for (const RackingMember& member : frame.members) {
            const ResolvedPart& part = resolved_.parts[member.part];
            const std::size_t from = indexOf(member.fromJoint);
            const std::size_t to = indexOf(member.toJoint);
            const double level = (resolved_.joints[member.fromJoint].frame.origin.z +
                                  resolved_.joints[member.toJoint].frame.origin.z) /
                                     2.0 -
                                 floor_;
            frame.sway.members.push_back({from,
                                          to,
                                          std::max(level, 1.0),
                                          std::abs(frame.places[to] - frame.places[from]),
                                          elasticityOf(part) * inertia(part, {0, 0, 1})});
        }
    }

    const ResolvedPiece& resolved_;
    Union bodies_;
    std::unordered_map<std::string_view, double> elasticity_;
    std::vector<bool> isPost_;
    double floor_ = 0.0;
};

}  // namespace

RackingFrames rackingFrames(const Piece& piece,
                            const ResolvedPiece& resolved,
                            const SpeciesTable& species) {
    return Finder(piece, resolved, species).find();
}

}  // namespace shoulderline
