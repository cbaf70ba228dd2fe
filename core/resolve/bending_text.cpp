#include "core/resolve/bending_text.h"

#include <algorithm>
#include <cmath>

#include "core/resolve/joint_angles.h"
#include "core/timber/bending.h"

namespace shoulderline {

namespace {

std::string percent(double share) {
    return std::to_string(std::lround(share * 100)) + " %";
}

double steeperEnd(const BentLine& line) {
    return std::max(std::abs(headingAtStart(line)), std::abs(headingAtEnd(line)));
}

}  // namespace

BendWork bendWorkOf(const ResolvedPart& part, const RuleBook& rules) {
    const ResolvedBend& bend = *part.bend;
    BendWork work;
    const double tenons = (part.startTenon + part.farTenon).mm();
    const double along = bend.alongCurve().mm() + tenons;
    const bool isSawn = bend.method == BendMethod::Sawn;
    work.blankLength =
        Length::mm(along) + (isSawn ? Length() : rules[RuleId::BendLengthExtra].length());
    const Length extra = isSawn ? Length() : rules[RuleId::BendWidthExtra].length();
    work.blankWidth = part.width.value + extra;
    const Rect edge = part.body.edge ? part.body.edge->bounds() : Rect{};
    const double solid = edge.max.y - edge.min.y;
    const double inPart = lengthOf(bend.line) * part.thickness.value.mm();
    work.solidThickness = Length::mm(solid);
    work.solidWaste = 1.0 - inPart / (solid * part.shoulderLength.value.mm());
    work.shortGrain = Angle::radians(steeperEnd(bend.line));
    if (bend.method == BendMethod::Laminated) {
        const double planing = rules[RuleId::BendPlaning].value;
        work.roughPly = Length::mm(bend.ply.value.mm() + 2 * planing);
        work.boardWidth = Length::mm(
            boardForPlies(bend.plies, bend.ply.value.mm(), planing, rules[RuleId::BendKerf].value));
        work.boardWaste =
            1.0 - (inPart * part.width.value.mm()) /
                      (work.boardWidth.mm() * work.blankWidth.mm() * work.blankLength.mm());
        work.clampGap = rules[RuleId::BendClampGap].length();
        if (work.clampGap.mm() > 0) {
            work.clamps = static_cast<int>(std::ceil(work.blankLength / work.clampGap)) + 1;
        }
        work.hours = rules[RuleId::BendClampHours].value;
    }
    return work;
}

BlankPastShoulder blankPast(const ResolvedPart& part, End end, double past) {
    const ResolvedBend& bend = *part.bend;
    const double half = part.thickness.value.mm() / 2;
    const double length = part.shoulderLength.value.mm();
    const double at = end == End::Start ? -past : length + past;
    const auto heightOf = [&](double by) {
        const BentLine run = between(
            beside(bend.line, by), end == End::Start ? at : 0.0, end == End::Start ? length : at);
        return end == End::Start ? run.front().point.y : run.back().point.y;
    };
    const double low = heightOf(-half);
    const double high = heightOf(half);
    return {-(low + high) / 2, high - low};
}

std::vector<std::string> bendSettings(const ResolvedPart& part,
                                      const RuleBook& rules,
                                      const LengthStyle& style) {
    const ResolvedBend& bend = *part.bend;
    const BendWork work = bendWorkOf(part, rules);
    const auto shown = [&](Length length) { return letterLength(length, style, true); };
    std::vector<std::string> lines;
    lines.push_back(std::string(wordFor(bend.method)) + ", hollow on its " +
                    std::string(wordFor(bend.hollow)) + ": rises " + shown(bend.rise.value) +
                    " over a chord of " + shown(part.shoulderLength.value) + ", radius " +
                    shown(bend.radius.value) + " at its middle line, " + shown(bend.alongCurve()) +
                    " along the curve");
    if (bend.shoulders == BendShoulders::Curve) {
        lines.push_back("shoulders square to the curve, " + slopeText(work.shortGrain) +
                        " from the chord; the tenon straight and true to the chord");
    }
    if (bend.method == BendMethod::Laminated) {
        lines.push_back(std::to_string(bend.plies) + " plies of " + shown(bend.ply.value) +
                        ", sawn " + shown(work.roughPly) + " and planed; " +
                        shown(work.boardWidth) + " of board for them, kerfs and planing and all");
    }
    if (bend.springback > 0.0 || bend.method == BendMethod::Steamed) {
        lines.push_back("form: rise " + shown(bend.formRise()) + ", radius " +
                        shown(bend.formRadius.value) + " at the middle line" +
                        (bend.springback > 0.0
                             ? std::string(bend.isMeasured ? "; springback as found, "
                                                           : "; springback expected, ") +
                                   letterLength(bend.formRise() - bend.rise.value, style, true) +
                                   " of rise (an estimate: bend one and measure it)"
                             : std::string("; springback of steamed wood is not in the rule book: "
                                           "bend one and measure it")));
    }
    lines.push_back("blank: " + shown(work.blankLength) + " x " + shown(work.blankWidth));
    if (bend.method == BendMethod::Laminated) {
        lines.push_back("glue-up: " + std::to_string(work.clamps) + " clamps, one every " +
                        shown(work.clampGap) + ", " + std::to_string(std::lround(work.hours)) +
                        " hours in the form; " + rules[RuleId::BendGlue].sentence);
    }
    lines.push_back(
        (bend.method == BendMethod::Sawn ? "sawn from stock "
                                         : "sawn from the solid it would want stock ") +
        shown(work.solidThickness) + " thick, " + percent(work.solidWaste) + " of it waste" +
        (bend.method == BendMethod::Laminated
             ? " (against " + percent(work.boardWaste) + " as plies)"
             : std::string()) +
        ", its grain leaving it at " + slopeText(work.shortGrain) + " by the shoulders");
    return lines;
}

}  // namespace shoulderline
