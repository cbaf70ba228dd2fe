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

}  // namespace

std::string findingsJson(const std::vector<Finding>& findings, const ResolvedPiece& resolved) {
    ordered_json list = ordered_json::array();
    for (const Finding& finding : findings) {
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
