#include "core/resolve/found_sizes.h"

#include "core/resolve/named_sizes.h"

namespace shoulderline {

namespace {

void addFound(std::vector<FoundSize>& all,
              const std::string& of,
              const std::string& name,
              const Size& size) {
    if (size.state != SizeState::AsFound) {
        return;
    }
    std::optional<Length> before;
    for (const Reason& reason : size.reasons) {
        const bool isFound = reason.rule == RuleId::AsFound || reason.rule == RuleId::PartFound ||
                             reason.rule == RuleId::StockMeasured;
        if (isFound && !nearlyEqual(reason.a, size.value, kLengthTolerance)) {
            before = reason.a;
        }
    }
    all.push_back({of, name, size.value, before});
}

}  // namespace

std::vector<FoundSize> foundIn(const ResolvedPart& part) {
    std::vector<FoundSize> all;
    addFound(all, part.of, "width", part.width);
    addFound(all, part.of, "thickness", part.thickness);
    return all;
}

std::vector<FoundSize> foundBehind(const ResolvedPiece& resolved, std::size_t index) {
    const ResolvedJoint& joint = resolved.joints[index];
    std::vector<FoundSize> all = foundIn(resolved.parts[joint.tenoned]);
    const std::vector<FoundSize> other = foundIn(resolved.parts[joint.mortised]);
    all.insert(all.end(), other.begin(), other.end());
    for (const auto& [name, size] : namedSizes(joint)) {
        addFound(all, {}, name, *size);
    }
    return all;
}

std::string foundText(const std::vector<FoundSize>& found,
                      const std::function<std::string(Length)>& shown) {
    std::string text;
    for (const FoundSize& one : found) {
        text += text.empty() ? "" : ", ";
        text += (one.of.empty() ? "" : one.of + "'s ") + one.name + " " + shown(one.found);
        if (one.before) {
            text += (one.of.empty() ? " (by rule " : " (stated ") + shown(*one.before) + ")";
        }
    }
    return text;
}

}  // namespace shoulderline
