#include <nlohmann/json.hpp>

#include "core/check/figure_text.h"
#include "core/check/settle.h"

namespace shoulderline {

namespace {

using nlohmann::ordered_json;

std::string wordsOf(const JointFeatures& features) {
    std::string text;
    for (const JointFeature feature : features) {
        text += text.empty() ? "" : ", ";
        text += wordFor(feature);
    }
    return text.empty() ? "plain" : text;
}

ordered_json listOf(const JointFeatures& features) {
    ordered_json list = ordered_json::array();
    for (const JointFeature feature : features) {
        list.push_back(wordFor(feature));
    }
    return list;
}

std::string gainText(const Settlement& settlement) {
    const std::optional<double> gain = settlement.gain();
    constexpr double kAlike = 0.005;
    if (!gain) {
        return "There is no estimate of how strong the joints are.\n";
    }
    if (*gain < 1.0 + kAlike) {
        return "The weakest of them, " + settlement.weakestName +
               ", is as strong as with every tenon shortened.\n";
    }
    return "The weakest of them, " + settlement.weakestName +
           (settlement.isCovered
                ? ", is " + figureText(*gain, 2) +
                      " times as strong in bending as with every tenon shortened"
                : ", ranks above what every tenon shortened would give; outside the sizes that "
                  "were tested no figure is given") +
           "; an estimate for comparing joints, no proof that it is safe.\n";
}

}  // namespace

std::string settlementText(const Settlement& settlement) {
    std::string text;
    if (settlement.joints.empty() && settlement.rails.empty()) {
        text = settlement.meetingsBefore == 0 ? "No mortises meet; nothing to settle.\n"
                                              : "Nothing better was found.\n";
    }
    for (const SettledJoint& joint : settlement.joints) {
        text += joint.tenoned + " into " + joint.mortised + ": " + wordsOf(joint.before) +
                ", now " + wordsOf(joint.after) + "\n";
    }
    for (const SettledRail& rail : settlement.rails) {
        text += rail.text + "\n";
    }
    if (settlement.meetingsBefore != settlement.meetingsAfter || !settlement.joints.empty()) {
        text += "Places where mortises meet: " + std::to_string(settlement.meetingsBefore) +
                ", now " + std::to_string(settlement.meetingsAfter) + ".\n" + gainText(settlement);
    }
    return text;
}

std::string settlementJson(const Settlement& settlement) {
    ordered_json joints = ordered_json::array();
    for (const SettledJoint& joint : settlement.joints) {
        joints.push_back({{"tenoned", joint.tenoned},
                          {"mortised", joint.mortised},
                          {"before", listOf(joint.before)},
                          {"after", listOf(joint.after)}});
    }
    ordered_json rails = ordered_json::array();
    for (const SettledRail& rail : settlement.rails) {
        rails.push_back({{"rail", rail.rail}, {"move", rail.text}, {"by_mm", rail.by.mm()}});
    }
    const std::optional<double> gain = settlement.isCovered ? settlement.gain() : std::nullopt;
    return ordered_json{
               {"joints", std::move(joints)},
               {"rails", std::move(rails)},
               {"meetings_before", settlement.meetingsBefore},
               {"meetings_after", settlement.meetingsAfter},
               {"weakest", settlement.weakestName},
               {"gain", gain ? ordered_json(*gain) : ordered_json()},
               {"is_measured", settlement.isCovered},
               {"caution",
                "an estimate for comparing joints, no proof that a piece is safe; local codes and "
                "licensed practice decide"}}
               .dump(2, ' ', false, ordered_json::error_handler_t::replace) +
           "\n";
}

}  // namespace shoulderline
