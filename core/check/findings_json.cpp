#include "core/check/findings_json.h"

#include <cmath>

#include <nlohmann/json.hpp>

namespace shoulderline {

namespace {

using nlohmann::ordered_json;

double rounded(double value) {
    const double result = std::round(value * 1e6) / 1e6;
    return result == 0.0 ? 0.0 : result;
}

ordered_json rangeJson(const JointStrength& strength) {
    if (!strength.isEstimated() || !strength.isCovered) {
        return {};
    }
    return {rounded(strength.bending.range.low), rounded(strength.bending.range.high)};
}

std::string rankWord(const MendedJoint& joint) {
    constexpr double kAlike = 0.005;
    const std::optional<double> times = joint.times();
    if (!times) {
        return "unknown";
    }
    return *times > 1.0 + kAlike ? "stronger" : *times < 1.0 - kAlike ? "weaker" : "alike";
}

ordered_json effectJson(const Mend& mend, const MendEffect& effect) {
    ordered_json joints = ordered_json::array();
    for (const MendedJoint& joint : effect.joints) {
        ordered_json sizes = ordered_json::array();
        for (const ChangedSize& size : joint.sizes) {
            sizes.push_back({{"name", size.name},
                             {"before_mm", rounded(size.before.mm())},
                             {"after_mm", rounded(size.after.mm())}});
        }
        joints.push_back({{"name", joint.name},
                          {"sizes", std::move(sizes)},
                          {"bends_before_nm", rangeJson(joint.before)},
                          {"bends_after_nm", rangeJson(joint.after)},
                          {"rank", rankWord(joint)}});
    }
    return {{"mend", mend.text},
            {"joints", std::move(joints)},
            {"must_mend_before", effect.mustMendBefore},
            {"must_mend_after", effect.mustMendAfter}};
}

}  // namespace

std::string findingsJson(const std::vector<Finding>& findings,
                         const ResolvedPiece& resolved,
                         const std::vector<FindingEffects>& effects) {
    ordered_json list = ordered_json::array();
    for (std::size_t f = 0; f < findings.size(); ++f) {
        const Finding& finding = findings[f];
        ordered_json parts = ordered_json::array();
        for (const std::size_t part : finding.parts) {
            parts.push_back(resolved.parts[part].name);
        }
        ordered_json mends = ordered_json::array();
        for (const Mend& mend : finding.mends) {
            mends.push_back(mend.text);
        }
        const bool hasFigure = !finding.unit.empty();
        list.push_back(
            {{"id", ruleIdText(finding.rule)},
             {"severity", wordFor(finding.severity)},
             {"parts", std::move(parts)},
             {"joint",
              finding.joint ? ordered_json(resolved.joints[*finding.joint].name) : ordered_json()},
             {"message", finding.message},
             {"value", hasFigure ? ordered_json(rounded(finding.value)) : ordered_json()},
             {"limit", hasFigure ? ordered_json(rounded(finding.limit)) : ordered_json()},
             {"unit", finding.unit},
             {"source", finding.source},
             {"mends", std::move(mends)}});
        ordered_json tried = ordered_json::array();
        for (std::size_t m = 0; f < effects.size() && m < effects[f].size(); ++m) {
            if (effects[f][m]) {
                tried.push_back(effectJson(finding.mends[m], *effects[f][m]));
            }
        }
        list.back()["effects"] = std::move(tried);
    }
    return ordered_json{{"findings", std::move(list)}}.dump(
               2, ' ', false, ordered_json::error_handler_t::replace) +
           "\n";
}

std::string findingsText(const std::vector<Finding>& findings) {
    if (findings.empty()) {
        return "Nothing to mend.\n";
    }
    std::string text;
    for (const Finding& finding : findings) {
        text += std::string(wordFor(finding.severity)) + ": " + finding.message + "\n";
        for (const Mend& mend : finding.mends) {
            text += "    mend: " + mend.text + "\n";
        }
        text += "    source: " + finding.source + "\n";
    }
    return text;
}

}  // namespace shoulderline
