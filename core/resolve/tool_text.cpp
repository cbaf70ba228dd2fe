#include "core/resolve/tool_text.h"

namespace shoulderline {

namespace {

constexpr std::string_view kCutter = "{cutter}";

}  // namespace

bool namesCutter(const RuleBook& rules, RuleId tool) {
    return rules[tool].subject.find(kCutter) != std::string::npos;
}

std::string toolText(const RuleBook& rules, RuleId tool, const std::string& cutter) {
    std::string text = rules[tool].subject;
    const std::size_t at = text.find(kCutter);
    if (at == std::string::npos) {
        return text;
    }
    if (!cutter.empty()) {
        return text.replace(at, kCutter.size(), cutter);
    }
    // With the space that parts it from its neighbour.
    const std::size_t from = at > 0 ? at - 1 : at;
    return text.erase(from, kCutter.size() + 1);
}

std::string cautionText(const RuleBook& rules, RuleId tool) {
    return toolText(rules, tool) + ": " + rules[tool].sentence;
}

std::vector<std::string> cautionTexts(const RuleBook& rules, const std::set<RuleId>& tools) {
    std::vector<std::string> texts;
    for (const RuleId tool : tools) {
        texts.push_back(cautionText(rules, tool));
    }
    return texts;
}

}  // namespace shoulderline
