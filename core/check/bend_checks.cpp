#include <algorithm>
#include <cmath>

#include "core/check/checks.h"
#include "core/check/figure_text.h"
#include "core/resolve/bending.h"
#include "core/resolve/bending_text.h"
#include "core/resolve/joint_angles.h"
#include "core/timber/bending.h"

namespace shoulderline {

namespace {

Finding about(const CheckContext& context, RuleId rule, Severity severity, std::size_t part) {
    Finding finding = context.finding(rule, severity);
    finding.parts = {part};
    return finding;
}

// The edit that states the number of plies, over a thickness of theirs.
Edit statePlies(const CheckContext& context, std::size_t part, int plies) {
    Part changed = context.stated(part);
    if (changed.bend) {
        changed.bend->plies = std::to_string(plies);
        changed.bend->ply.clear();
    }
    return SetPart{changed.name, changed};
}

// The fewest plies that are bent to `share` times their thickness at least on their form.
std::optional<int> pliesThatBend(const ResolvedPart& part, double share) {
    constexpr int kMost = 200;
    const ResolvedBend& bend = *part.bend;
    for (int plies = 2; plies <= kMost; ++plies) {
        const double back = bend.isMeasured ? bend.springback : springbackShare(plies);
        if (bend.radius.value.mm() * (1.0 - back) >= share * part.thickness.value.mm() / plies) {
            return plies;
        }
    }
    return std::nullopt;
}

// The share of thickness at which the part's species breaks when bent dry; none without figures.
std::optional<double> ruptureShare(const CheckContext& context, const ResolvedPart& part) {
    for (const Stock& stock : context.piece.stocks) {
        const Species* species =
            stock.name == part.stock ? context.species.find(stock.species) : nullptr;
        if (species != nullptr && species->ruptureKpa && species->elasticityMpa) {
            constexpr double kKpaInMpa = 1000.0;
            return ruptureRadiusShare(*species->elasticityMpa, *species->ruptureKpa / kKpaInMpa);
        }
    }
    return std::nullopt;
}

void checkPlies(const CheckContext& context, std::size_t i, std::vector<Finding>& findings) {
    const ResolvedPart& part = context.resolved.parts[i];
    const ResolvedBend& bend = *part.bend;
    const double least = context.resolved.rules[RuleId::BendPlyLeast].value;
    const double share = bend.formRadius.value / bend.ply.value;
    const std::optional<double> breaks = ruptureShare(context, part);
    const bool mayBreak = breaks && share < *breaks;
    if (share >= least && !mayBreak) {
        return;
    }
    Finding finding = about(context,
                            mayBreak ? RuleId::BendPlyRupture : RuleId::BendPlyLeast,
                            mayBreak ? Severity::MustMend : Severity::LookAt,
                            i);
    finding.value = share;
    finding.limit = mayBreak ? *breaks : least;
    finding.unit = "ratio";
    finding.message = "{part}: plies of " + context.shown(bend.ply.value) +
                      " are bent to a form of " + context.shown(bend.formRadius.value) + ", " +
                      figureText(share, 0) + " times their thickness; " +
                      (mayBreak ? "dry wood of this species breaks at " + figureText(*breaks, 0)
                                : "the rule book asks " + figureText(least, 0));
    if (const std::optional<int> plies = pliesThatBend(part, std::max(least, finding.limit))) {
        finding.mends.push_back({"make it of " + std::to_string(*plies) + " plies of " +
                                     context.shown(part.thickness.value / *plies),
                                 statePlies(context, i, *plies)});
    }
    // In whole steps, so that the figure as it is read does it.
    const Length step = context.piece.unit == Unit::Inch ? Length::inches(1.0 / 16) : Length::mm(1);
    const double radius =
        snapUp(Length::mm(least * bend.ply.value.mm() / (1.0 - bend.springback)), step).mm();
    finding.mends.push_back(
        {"or bow it to a radius of " + context.shownMm(radius) + " or more", std::nullopt});
    findings.push_back(std::move(finding));
}

void checkSteamed(const CheckContext& context, std::size_t i, std::vector<Finding>& findings) {
    const ResolvedPart& part = context.resolved.parts[i];
    const double least = context.resolved.rules[RuleId::BendSteamLeast].value;
    const double share = part.bend->formRadius.value / part.thickness.value;
    if (share >= least) {
        return;
    }
    Finding finding = about(context, RuleId::BendSteamLeast, Severity::LookAt, i);
    finding.value = share;
    finding.limit = least;
    finding.unit = "ratio";
    finding.message = "{part}: steamed and bent to " + figureText(share, 0) +
                      " times its thickness; published trials of one wood, in a strap, went to " +
                      figureText(least, 0) + ". Steam scalds: gloves, and a vent in the box";
    finding.mends.push_back({"bow it to a radius of " +
                                 context.shown(part.thickness.value * least) + ", or laminate it",
                             std::nullopt});
    findings.push_back(std::move(finding));
}

void checkSawn(const CheckContext& context, std::size_t i, std::vector<Finding>& findings) {
    const ResolvedPart& part = context.resolved.parts[i];
    const BendWork work = bendWorkOf(part, context.resolved.rules);
    const double most = context.resolved.rules[RuleId::BendShortGrain].value;
    const double slope = std::tan(work.shortGrain.radians());
    if (slope <= most) {
        return;
    }
    // Of an arc, the slope at its ends is twice the rise over the chord's half, tan(angle / 2).
    const double rise = part.shoulderLength.value.mm() / 2 * std::tan(std::atan(most) / 2);
    Finding finding = about(context, RuleId::BendShortGrain, Severity::LookAt, i);
    finding.value = slope;
    finding.limit = most;
    finding.unit = "ratio";
    finding.message = "{part} is sawn to its bow, and its grain leaves it at " +
                      slopeText(work.shortGrain) + " by the shoulders; the rule book asks " +
                      slopeText(Angle::radians(std::atan(most))) + " at most";
    Part changed = context.stated(i);
    changed.bend->method = BendMethod::Laminated;
    finding.mends.push_back(
        {"laminate it, so that the grain runs with the bow", SetPart{changed.name, changed}});
    finding.mends.push_back(
        {"or let it rise " + context.shownMm(rise) + " at the most", std::nullopt});
    findings.push_back(std::move(finding));
}

// A straight tenon in a blank that curves on past the shoulder.
void checkTenons(const CheckContext& context, std::size_t i, std::vector<Finding>& findings) {
    const ResolvedPart& part = context.resolved.parts[i];
    const bool isFaceHollow = part.bend->hollow == Face::FaceSide;
    const double length = part.shoulderLength.value.mm();
    const double middle = part.thickness.value.mm() / 2;
    for (const TenonSolid& tenon : part.tenons) {
        const bool atStart = tenon.box.max.x <= length / 2;
        const double past = atStart ? -tenon.box.min.x : tenon.box.max.x - length;
        if (tenon.isHaunch || past <= 0.0) {
            continue;
        }
        const BlankPastShoulder blank = blankPast(part, atStart ? End::Start : End::Far, past);
        const double blankMiddle = middle + (isFaceHollow ? -blank.off : blank.off);
        const double over = std::max(blankMiddle - blank.thick / 2 - tenon.box.min.z,
                                     tenon.box.max.z - (blankMiddle + blank.thick / 2));
        if (over <= kLengthTolerance.mm()) {
            continue;
        }
        const ResolvedJoint& joint = context.resolved.joints[tenon.joint];
        Finding finding = about(context, RuleId::BendTenonInBlank, Severity::MustMend, i);
        finding.parts.push_back(joint.mortised);
        finding.joint = tenon.joint;
        finding.value = over;
        finding.unit = "mm";
        finding.message =
            "{joint}: the tenon is true to the chord, and at its end the curved "
            "blank lies " +
            context.shownMm(std::abs(blank.off)) + " off its middle, so that it stands " +
            context.shownMm(over) + " out of the wood";
        const double thinner = tenon.box.max.z - tenon.box.min.z - 2 * over;
        constexpr double kLeastTenon = 1.0;  // mm; thinner is none
        if (thinner > kLeastTenon) {
            finding.mends.push_back(
                {"make the tenon " + context.shownMm(thinner) + " thick, or shorter",
                 stateSize(context, tenon.joint, SizeName::TenonThickness, Length::mm(thinner))});
        }
        finding.mends.push_back({"or give the part less bow or more thickness", std::nullopt});
        findings.push_back(std::move(finding));
    }
}

// Shoulders square to the curve close on what is square to the chord at their leading corner only.
void checkShoulders(const CheckContext& context, std::size_t i, std::vector<Finding>& findings) {
    const ResolvedPart& part = context.resolved.parts[i];
    if (part.bend->shoulders == BendShoulders::Chord) {
        return;
    }
    double open = 0.0;
    for (const End end : {End::Start, End::Far}) {
        open = std::max(open, openAtShoulder(part, end));
    }
    constexpr double kLeastOpen = 0.1;  // mm; less is a tight joint
    if (open < kLeastOpen) {
        return;
    }
    Finding finding = about(context, RuleId::BendShoulderOpen, Severity::Note, i);
    finding.value = open;
    finding.unit = "mm";
    finding.message = "{part}: its shoulders are square to its curve, and stand open by " +
                      context.shownMm(open) + " at the " + std::string(wordFor(part.bend->hollow)) +
                      " where they meet what stands square to its chord";
    Part changed = context.stated(i);
    changed.bend->shoulders = BendShoulders::Chord;
    finding.mends.push_back({"cut them square to the chord", SetPart{changed.name, changed}});
    finding.mends.push_back(
        {"or turn what it meets to face the curve, or let the end in whole", std::nullopt});
    findings.push_back(std::move(finding));
}

}  // namespace

void checkBends(const CheckContext& context, std::vector<Finding>& findings) {
    for (std::size_t i = 0; i < context.resolved.parts.size(); ++i) {
        const ResolvedPart& part = context.resolved.parts[i];
        if (!part.bend) {
            continue;
        }
        switch (part.bend->method) {
            case BendMethod::Laminated:
                checkPlies(context, i, findings);
                break;
            case BendMethod::Steamed:
                checkSteamed(context, i, findings);
                break;
            case BendMethod::Sawn:
                checkSawn(context, i, findings);
                break;
        }
        checkTenons(context, i, findings);
        checkShoulders(context, i, findings);
    }
}

}  // namespace shoulderline
