#include "core/joint/shoulders.h"

#include <algorithm>
#include <utility>

#include "core/joint/size_chain.h"

namespace shoulderline {

namespace {

void leave(Size& shoulder, const Across& across, Length other) {
    shoulder = {};
    const Length taken = across.tenon.value + other;
    link(shoulder, RuleId::ShoulderLeft, across.whole, taken, across.whole - taken);
}

// The tenon from two stated shoulders; false where they leave none.
bool fitBetween(const Across& across, std::vector<std::string>& troubles) {
    const Length shoulders = across.first.value + across.second.value;
    const Length left = across.whole - shoulders;
    if (left <= kLengthTolerance) {
        troubles.push_back(std::string(across.words) + ": the stated shoulders leave no tenon");
        return false;
    }
    if (across.tenon.state != SizeState::ByRule && !nearlyEqual(across.tenon.value, left)) {
        troubles.push_back(std::string(across.words) +
                           " are all stated and do not make up the part; the shoulders decide");
    }
    across.tenon.state = SizeState::ByRule;
    link(across.tenon, RuleId::TenonBetweenShoulders, across.whole, shoulders, left);
    return true;
}

}  // namespace

void shareOut(const Across& across,
              const std::optional<StatedSize>& statedFirst,
              const std::optional<StatedSize>& statedSecond,
              bool isBareFaced,
              std::vector<std::string>& troubles) {
    const Length left = across.whole - across.tenon.value;
    if (isBareFaced) {
        link(across.first, RuleId::ShoulderLeft, across.whole, across.tenon.value, left);
        link(across.second, RuleId::BareFaced, across.whole, {}, {});
    } else {
        link(across.first, RuleId::TenonCentred, across.whole, {}, left / 2);
        link(across.second, RuleId::TenonCentred, across.whole, {}, left / 2);
    }
    state(across.first, statedFirst);
    state(across.second, statedSecond);
    if (statedFirst && statedSecond && fitBetween(across, troubles)) {
        return;
    }
    if (statedFirst) {
        leave(across.second, across, across.first.value);
    } else if (statedSecond) {
        leave(across.first, across, across.second.value);
    }
}

Group grouped(const Size& one, const Size& gap, bool isPair) {
    Group group{one, isPair ? gap.value : Length(), isPair};
    if (isPair) {
        group.whole.value = one.value * 2 + gap.value;
    }
    return group;
}

void divide(const Group& group, Length before, Size& one) {
    if (!group.isPair) {
        one = group.whole;
    } else if (!nearlyEqual(before, group.whole.value)) {
        link(one,
             RuleId::TenonBetweenShoulders,
             group.whole.value,
             group.gap,
             (group.whole.value - group.gap) / 2);
    }
}

void clearEdges(const JointTask& task,
                const Size& edge,
                StatedSizes& stated,
                std::array<std::optional<Size>, 2>& shoulders) {
    struct Side {
        SizeName name;
        Length groove;
        Length shaped;
    };
    const std::array<Side, 2> sides{
        {{SizeName::ShoulderFaceEdge, task.grooveAtFaceEdge, task.shapedAtFaceEdge},
         {SizeName::ShoulderBackEdge, task.grooveAtBackEdge, task.shapedAtBackEdge}}};
    for (std::size_t i = 0; i < sides.size(); ++i) {
        const auto& [name, groove, shaped] = sides[i];
        Size shoulder;
        if (shaped > kLengthTolerance && shaped + edge.value > groove) {
            link(shoulder, RuleId::ClearsShape, shaped, edge.value, shaped + edge.value);
        } else if (groove > edge.value + kLengthTolerance) {
            link(shoulder, RuleId::ClearsGroove, groove, {}, groove);
        } else {
            continue;
        }
        if (!stated[name]) {
            stated.set(name, {SizeState::Stated, shoulder.value});
            shoulders[i] = std::move(shoulder);
        }
    }
}

SizeName haunchedShoulder(const JointTask& task) {
    return task.endsAtFaceEdge() ? SizeName::ShoulderFaceEdge : SizeName::ShoulderBackEdge;
}

std::optional<Size> shoulderForHaunch(const JointTask& task,
                                      const Size& edge,
                                      const SizingGuide& guide,
                                      const StatedSizes& stated,
                                      Size& tenonWidth) {
    const bool isHaunched =
        task.form.has(JointFeature::Haunch) || task.form.has(JointFeature::SlopingHaunch);
    if (!isHaunched || stated[haunchedShoulder(task)]) {
        return std::nullopt;
    }
    Size haunch = shareOf(task.section.width, RuleId::HaunchWidthShare, guide);
    toGrid(haunch, snapNearest(haunch.value, guide.grid), guide.grid);
    const Length left = task.section.width - haunch.value - edge.value;
    if (!stated[SizeName::TenonWidth] && left < tenonWidth.value) {
        link(tenonWidth,
             RuleId::TenonWidthLeft,
             task.section.width,
             haunch.value + edge.value,
             left);
    }
    return haunch;
}

}  // namespace shoulderline
