#include "core/check/settle_ends.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <set>

#include "core/check/neighbours.h"
#include "core/joint/joint_sizing.h"
#include "core/resolve/resolve.h"

namespace shoulderline {

namespace {

using Key = std::pair<std::string, std::string>;  // stated names: tenoned, mortised

// One stated joint that meets others, and the ways it may be made.
struct Stated {
    Key key;
    JointFeatures before;
    std::vector<JointFeatures> ways;
};

// How good one way of making the joints of a group is; less is better.
struct Score {
    std::size_t meetings = 0;
    std::vector<double> strengths;  // ascending
    std::size_t changes = 0;

    [[nodiscard]] bool betters(const Score& other) const {
        if (meetings != other.meetings) {
            return meetings < other.meetings;
        }
        constexpr double kAlike = 1e-9;
        for (std::size_t i = 0; i < std::min(strengths.size(), other.strengths.size()); ++i) {
            const double slack = kAlike * std::max(strengths[i], other.strengths[i]);
            if (std::abs(strengths[i] - other.strengths[i]) > slack) {
                return strengths[i] > other.strengths[i];
            }
        }
        return changes < other.changes;
    }
};

Key keyOf(const ResolvedPiece& resolved, std::size_t joint) {
    const ResolvedJoint& one = resolved.joints[joint];
    return {resolved.parts[one.tenoned].of, resolved.parts[one.mortised].of};
}

class Settler {
  public:
    Settler(const Piece& piece, const Workbench& bench) : piece_(piece), bench_(bench) {}

    Settlement run();

  private:
    void findGroups();
    void addStated(const Key& key);
    [[nodiscard]] std::vector<JointFeatures> waysOf(JointKind kind,
                                                    const JointFeatures& before) const;
    [[nodiscard]] SetJointFeatures editFor(const std::vector<std::size_t>& chosen) const;
    [[nodiscard]] Score score(const std::vector<std::size_t>& group,
                              const std::vector<std::size_t>& chosen);
    void settleGroup(const std::vector<std::size_t>& group);
    void tryAll(const std::vector<std::size_t>& group);
    void betterByPairs(const std::vector<std::size_t>& group);
    [[nodiscard]] std::vector<std::size_t> shortened() const;
    void report(Settlement& settlement);

    const Piece& piece_;
    const Workbench& bench_;
    std::vector<Stated> stated_;
    std::map<Key, std::size_t> byKey_;
    std::vector<std::vector<std::size_t>> groups_;  // that depend on one another
    std::vector<std::size_t> chosen_;               // of each stated joint, the way
    std::size_t tried_ = 0;
    std::size_t meetingsBefore_ = 0;
};

std::vector<JointFeatures> Settler::waysOf(JointKind kind, const JointFeatures& before) const {
    using enum JointFeature;
    std::vector<JointFeatures> ways{before};
    JointFeatures plain = before;
    plain.erase(Mitred);
    plain.erase(Shortened);
    const auto add = [&](std::initializer_list<JointFeature> more) {
        JointFeatures way = plain;
        for (const JointFeature feature : more) {
            if (!mayHave(kind, feature)) {
                return;
            }
            way.insert(feature);
        }
        if (std::find(ways.begin(), ways.end(), way) == ways.end()) {
            ways.push_back(std::move(way));
        }
    };
    add({});
    add({Mitred});
    add({Shortened});
    const bool isHaunched = plain.contains(Haunch) || plain.contains(SlopingHaunch);
    const bool isParted = plain.contains(Double) || plain.contains(Twin);
    if (!isHaunched && !isParted && !plain.contains(RoundEnds)) {
        add({Haunch});
        add({Haunch, Mitred});
        add({Haunch, Shortened});
        add({Double});
    }
    return ways;
}

void Settler::addStated(const Key& key) {
    if (byKey_.contains(key)) {
        return;
    }
    const JointStatement* statement = findJointStatement(piece_, key.first, key.second);
    const JointKind kind =
        statement != nullptr ? statement->kind.value_or(JointKind::Blind) : JointKind::Blind;
    Stated stated{key, statement != nullptr ? statement->features : JointFeatures{}, {}};
    stated.ways = waysOf(kind, stated.before);
    byKey_.emplace(key, stated_.size());
    stated_.push_back(std::move(stated));
}

// Which joints meet: as the piece is, and as it would be with nothing mitred or shortened.
void Settler::findGroups() {
    std::vector<Key> pairs;  // two after two
    const auto look = [&](const ResolvedPiece& resolved) {
        const std::vector<Meeting> meetings = allMeetings(resolved);
        for (const Meeting& meeting : meetings) {
            if (!meeting.first.joint && !meeting.second.joint) {
                continue;
            }
            const Key first =
                keyOf(resolved, meeting.first.joint.value_or(meeting.second.joint.value_or(0)));
            const Key second =
                keyOf(resolved, meeting.second.joint.value_or(meeting.first.joint.value_or(0)));
            pairs.push_back(first);
            pairs.push_back(second);
        }
        return meetings.size();
    };
    meetingsBefore_ = look(resolve(piece_, bench_.rules, bench_.workshop));
    Piece plain = piece_;
    for (JointStatement& joint : plain.joints) {
        joint.features.erase(JointFeature::Mitred);
        joint.features.erase(JointFeature::Shortened);
    }
    look(resolve(plain, bench_.rules, bench_.workshop));
    for (const Key& key : pairs) {
        addStated(key);
    }
    std::vector<std::size_t> groupOf(stated_.size());
    std::iota(groupOf.begin(), groupOf.end(), std::size_t{0});
    for (std::size_t i = 0; i + 1 < pairs.size(); i += 2) {
        const std::size_t a = groupOf[byKey_.at(pairs[i])];
        const std::size_t b = groupOf[byKey_.at(pairs[i + 1])];
        std::replace(groupOf.begin(), groupOf.end(), std::max(a, b), std::min(a, b));
    }
    std::map<std::size_t, std::vector<std::size_t>> groups;
    for (std::size_t i = 0; i < groupOf.size(); ++i) {
        groups[groupOf[i]].push_back(i);
    }
    for (auto& [first, members] : groups) {
        groups_.push_back(std::move(members));
    }
}

SetJointFeatures Settler::editFor(const std::vector<std::size_t>& chosen) const {
    SetJointFeatures edit;
    for (std::size_t i = 0; i < stated_.size(); ++i) {
        const Stated& one = stated_[i];
        const JointFeatures& way = one.ways[chosen[i]];
        for (const JointFeature feature : allWords<JointFeature>()) {
            if (way.contains(feature) != one.before.contains(feature)) {
                edit.all.push_back({one.key.first, one.key.second, feature, way.contains(feature)});
            }
        }
    }
    return edit;
}

Score Settler::score(const std::vector<std::size_t>& group,
                     const std::vector<std::size_t>& chosen) {
    ++tried_;
    const SetJointFeatures edit = editFor(chosen);
    const Result<Piece> piece = apply(piece_, edit);
    const ResolvedPiece resolved = resolve(piece ? *piece : piece_, bench_.rules, bench_.workshop);
    const StrengthEstimator estimator(piece_, resolved, bench_.species, bench_.book);
    std::set<Key> keys;
    for (const std::size_t i : group) {
        keys.insert(stated_[i].key);
    }
    Score score;
    std::set<std::size_t> posts;
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        if (!keys.contains(keyOf(resolved, i))) {
            continue;
        }
        posts.insert(resolved.joints[i].mortised);
        const JointStrength strength = estimator.strengthOf(i);
        if (strength.isEstimated()) {
            score.strengths.push_back(strength.bending.range.middle());
        }
    }
    for (const std::size_t post : posts) {
        score.meetings += meetingsIn(resolved, post).size();
    }
    score.meetings += resolved.troubles.size();  // a way that cannot be made is none
    std::sort(score.strengths.begin(), score.strengths.end());
    for (const std::size_t i : group) {
        score.changes += chosen[i] == 0 ? 0u : 1u;
    }
    return score;
}

void Settler::tryAll(const std::vector<std::size_t>& group) {
    std::vector<std::size_t> now = chosen_;
    std::optional<Score> best;
    const auto step = [&](const auto& self, std::size_t at) -> void {
        if (at == group.size()) {
            Score one = score(group, now);
            if (!best || one.betters(*best)) {
                best = std::move(one);
                chosen_ = now;
            }
            return;
        }
        for (std::size_t way = 0; way < stated_[group[at]].ways.size(); ++way) {
            now[group[at]] = way;
            self(self, at + 1);
        }
    };
    step(step, 0);
}

void Settler::betterByPairs(const std::vector<std::size_t>& group) {
    Score best = score(group, chosen_);
    constexpr int kRounds = 4;
    bool isBetter = true;
    for (int round = 0; round < kRounds && isBetter; ++round) {
        isBetter = false;
        for (const std::size_t a : group) {
            for (const std::size_t b : group) {
                const std::vector<std::size_t> held = chosen_;
                std::vector<std::size_t> now = held;
                for (now[a] = 0; now[a] < stated_[a].ways.size(); ++now[a]) {
                    for (now[b] = a == b ? now[a] : 0; now[b] < stated_[b].ways.size(); ++now[b]) {
                        Score one = score(group, now);
                        if (one.betters(best)) {
                            best = std::move(one);
                            chosen_ = now;
                            isBetter = true;
                        }
                        if (a == b) {
                            break;
                        }
                    }
                }
            }
        }
    }
}

void Settler::settleGroup(const std::vector<std::size_t>& group) {
    constexpr double kMostTried = 3000.0;
    double ways = 1.0;
    for (const std::size_t i : group) {
        ways *= static_cast<double>(stated_[i].ways.size());
    }
    if (ways <= kMostTried) {
        tryAll(group);
    } else {
        betterByPairs(group);
    }
}

// The plain rule: each of them shortened for its neighbour, where it may be.
std::vector<std::size_t> Settler::shortened() const {
    std::vector<std::size_t> chosen(stated_.size(), 0);
    for (std::size_t i = 0; i < stated_.size(); ++i) {
        JointFeatures wanted = stated_[i].before;
        wanted.erase(JointFeature::Mitred);
        wanted.insert(JointFeature::Shortened);
        const auto& ways = stated_[i].ways;
        const auto it = std::find(ways.begin(), ways.end(), wanted);
        chosen[i] = it == ways.end() ? 0 : static_cast<std::size_t>(it - ways.begin());
    }
    return chosen;
}

void Settler::report(Settlement& settlement) {
    struct Weakest {
        std::optional<double> moment;
        std::string name;
        bool isCovered = false;
        std::size_t meetings = 0;
    };
    const auto weakestOf = [&](const std::vector<std::size_t>& chosen) {
        const Result<Piece> piece = apply(piece_, editFor(chosen));
        const ResolvedPiece resolved =
            resolve(piece ? *piece : piece_, bench_.rules, bench_.workshop);
        const StrengthEstimator estimator(piece_, resolved, bench_.species, bench_.book);
        Weakest weakest;
        for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
            if (!byKey_.contains(keyOf(resolved, i))) {
                continue;
            }
            const JointStrength strength = estimator.strengthOf(i);
            const double moment = strength.bending.range.middle();
            if (strength.isEstimated() && (!weakest.moment || moment < *weakest.moment)) {
                weakest.moment = moment;
                weakest.name = resolved.joints[i].name;
                weakest.isCovered = strength.isCovered;
            }
        }
        weakest.meetings = allMeetings(resolved).size();
        return weakest;
    };
    const Weakest chosen = weakestOf(chosen_);
    const Weakest plain = weakestOf(shortened());
    settlement.weakest = chosen.moment;
    settlement.weakestName = chosen.name;
    settlement.weakestByPlainRule = plain.moment;
    settlement.isCovered = chosen.isCovered && plain.isCovered;
    settlement.meetingsAfter = chosen.meetings;
}

Settlement Settler::run() {
    findGroups();
    chosen_.assign(stated_.size(), 0);
    for (const std::vector<std::size_t>& group : groups_) {
        settleGroup(group);
    }
    Settlement settlement;
    settlement.meetingsBefore = meetingsBefore_;
    settlement.edit = editFor(chosen_);
    for (std::size_t i = 0; i < stated_.size(); ++i) {
        if (chosen_[i] != 0) {
            settlement.joints.push_back({stated_[i].key.first,
                                         stated_[i].key.second,
                                         stated_[i].before,
                                         stated_[i].ways[chosen_[i]]});
        }
    }
    report(settlement);
    settlement.tried = tried_;
    return settlement;
}

}  // namespace

Settlement settleEnds(const Piece& piece, const Workbench& bench) {
    return Settler(piece, bench).run();
}

}  // namespace shoulderline
