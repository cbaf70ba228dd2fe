#include "core/check/strength_json.h"

#include <algorithm>
#include <cmath>
#include <set>

#include <nlohmann/json.hpp>

#include "core/check/figure_text.h"

namespace shoulderline {

namespace {

using nlohmann::ordered_json;

double roundedToThousandths(double value) {
    constexpr double kSteps = 1e3;
    const double result = std::round(value * kSteps) / kSteps;
    return result == 0.0 ? 0.0 : result;
}

ordered_json json(const Range& range) {
    return {roundedToThousandths(range.low), roundedToThousandths(range.high)};
}

ordered_json json(const Capacity& capacity) {
    ordered_json each = ordered_json::object();
    for (std::size_t i = 0; i < kMechanismCount; ++i) {
        if (capacity.each[i]) {
            each[std::string(wordFor(static_cast<Mechanism>(i)))] = json(*capacity.each[i]);
        }
    }
    return {
        {"range", json(capacity.range)}, {"governs", wordFor(capacity.governs)}, {"each", each}};
}

ordered_json json(const Load& load) {
    return {{"name", load.name},
            {"newtons", roundedToThousandths(load.newtons)},
            {"seat_newtons", roundedToThousandths(load.seatNewtons)},
            {"level_mm", roundedToThousandths(load.level)},
            {"repeated", load.isRepeated},
            {"just_tips", load.isTipping},
            {"source", load.source}};
}

ordered_json json(const StrengthReport& report,
                  std::size_t index,
                  const ResolvedPiece& resolved,
                  const StrengthBook& book) {
    const JointRating& rating = report.joints[index];
    const JointStrength& strength = rating.strength;
    ordered_json object{{"joint", resolved.joints[index].name},
                        {"rank", report.ranks[index]},
                        {"covered_by_tests", strength.isCovered}};
    if (!strength.isEstimated()) {
        object["no_estimate"] = strength.whyNot;
        return object;
    }
    if (strength.isCovered) {
        object["bending_newton_metres"] = json(strength.bending);
        object["withdrawal_newtons"] = json(strength.withdrawal);
        object["shear_newtons"] = json(strength.shear);
    } else {
        object["governs"] = wordFor(strength.bending.governs);
    }
    if (rating.working) {
        const Working& working = *rating.working;
        ordered_json by{{"load", report.loads[working.demand.load].name},
                        {"newton_metres", roundedToThousandths(working.demand.newtonMetres)},
                        {"shear_newtons", roundedToThousandths(working.demand.shearNewtons)},
                        {"by_shear", working.isByShear}};
        if (strength.isCovered) {
            by["allowable_share"] = roundedToThousandths(working.allowable);
            by["ratio"] = json(working.ratio);
        }
        object["worked"] = std::move(by);
    }
    ordered_json assumptions = ordered_json::array();
    for (const AssumptionText* one : assumptionTexts(strength.assumptions, book)) {
        assumptions.push_back(one->id);
    }
    object["assumptions"] = std::move(assumptions);
    return object;
}

}  // namespace

std::vector<const AssumptionText*> assumptionTexts(const Assumptions& taken,
                                                   const StrengthBook& book) {
    std::vector<const AssumptionText*> texts;
    for (std::size_t i = 0; i < kAssumptionCount; ++i) {
        if (taken.test(i)) {
            texts.push_back(&book[static_cast<Assumption>(i)]);
        }
    }
    return texts;
}

std::string strengthClause(const StrengthReport& report, std::size_t joint) {
    const JointStrength& strength = report.joints[joint].strength;
    if (!strength.isEstimated()) {
        return strength.whyNot;
    }
    if (!strength.isCovered) {
        return "rank " + std::to_string(report.ranks[joint]) + " of " +
               std::to_string(report.estimated) + ", outside the sizes tested";
    }
    return rangeText(strength.bending.range, "N\u00a0m") + ", the " +
           std::string(wordFor(strength.bending.governs)) + " governs";
}

std::string workingClause(const StrengthReport& report, std::size_t joint) {
    const JointRating& rating = report.joints[joint];
    if (!rating.working || !rating.strength.isCovered) {
        return {};
    }
    return rangeText(rating.working->ratio, "") + " by '" +
           report.loads[rating.working->demand.load].name + "'";
}

std::string strengthJson(const ResolvedPiece& resolved,
                         const StrengthReport& report,
                         const StrengthBook& book) {
    ordered_json document{{"caution", book.caution()},
                          {"loads", ordered_json::array()},
                          {"joints", ordered_json::array()},
                          {"assumptions", ordered_json::array()},
                          {"troubles", report.troubles}};
    for (const Load& load : report.loads) {
        document["loads"].push_back(json(load));
    }
    Assumptions all;
    for (const std::size_t index : report.order) {
        document["joints"].push_back(json(report, index, resolved, book));
        all |= report.joints[index].strength.assumptions;
    }
    for (const AssumptionText* one : assumptionTexts(all, book)) {
        document["assumptions"].push_back(
            {{"id", one->id}, {"text", one->text}, {"source", one->source}});
    }
    return document.dump(2, ' ', false, ordered_json::error_handler_t::replace) + "\n";
}

std::string strengthText(const ResolvedPiece& resolved,
                         const StrengthReport& report,
                         const StrengthBook& book) {
    std::string text = book.caution() + "\n\nLoads\n";
    for (const Load& load : report.loads) {
        text += "  " + load.name + ": ";
        if (load.newtons > 0.0) {
            text += estimateText(load.newtons) + " N";
        }
        if (load.seatNewtons > 0.0) {
            text += (load.newtons > 0.0 ? ", " : "") + estimateText(load.seatNewtons) +
                    " N on the seat";
        }
        text += std::string(load.isTipping ? " (all that does not tip it)" : "") + "; " +
                load.source + "\n";
    }
    if (report.loads.empty()) {
        text += "  none that reaches a joint: state one, or a seat height\n";
    }
    text += "\nJoints, the hardest worked first\n";
    Assumptions all;
    std::set<std::string> told;  // twins and sets that are alike are told once
    for (const std::size_t index : report.order) {
        const JointRating& rating = report.joints[index];
        const ResolvedJoint& joint = resolved.joints[index];
        std::string line = resolved.parts[joint.tenoned].of +
                           (joint.kind == JointKind::Rests ? " on " : " into ") +
                           resolved.parts[joint.mortised].of + ": " + strengthClause(report, index);
        if (const std::string working = workingClause(report, index); !working.empty()) {
            line += "; worked " + working;
        } else if (rating.working) {
            line += "; worked hardest by '" + report.loads[rating.working->demand.load].name + "'";
        }
        if (told.insert(line).second) {
            text += "  " + line + "\n";
        }
        all |= rating.strength.assumptions;
    }
    text += "\nTaken for granted\n";
    for (const AssumptionText* one : assumptionTexts(all, book)) {
        text += "  " + one->text + " (" + one->source + ")\n";
    }
    for (const std::string& trouble : report.troubles) {
        text += "\nnot counted: " + trouble + "\n";
    }
    return text;
}

}  // namespace shoulderline
