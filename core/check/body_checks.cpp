#include <algorithm>
#include <cmath>
#include <set>

#include "core/check/checks.h"
#include "core/check/figure_text.h"
#include "core/measure/angle_text.h"
#include "core/resolve/sitting.h"

namespace shoulderline {

namespace {

// The set with gaps of that width at the most: by its number or its greatest gap, as it is stated.
// None for a set at a stated pitch, whose gaps the maker chose one by one.
std::optional<Mend> narrowed(const CheckContext& context, std::size_t part, double least) {
    const ResolvedPart& member = context.resolved.parts[part];
    Part changed = context.stated(part);
    Spacing& spacing = *changed.spacing;
    if (!spacing.pitch.empty()) {
        return std::nullopt;
    }
    if (!spacing.greatestGap.empty()) {
        spacing.greatestGap = CheckContext::statement(Length::mm(least));
        return Mend{"state the greatest gap as " + context.shownMm(least),
                    SetPart{changed.name, changed}};
    }
    const auto count = std::count_if(
        context.resolved.parts.begin(), context.resolved.parts.end(), [&](const ResolvedPart& p) {
            return p.stated == member.stated && p.hand == member.hand;
        });
    const double width = member.width.value.mm();
    const double gap = member.gap.mm();
    const double between = static_cast<double>(count) * (width + gap) + gap;
    const double wanted = std::ceil((between - least) / (width + least) - 1e-9);
    spacing.count = figureText(wanted, 0);
    return Mend{"make it " + spacing.count + " of them, " +
                    context.shownMm((between - wanted * width) / (wanted + 1.0)) + " apart",
                SetPart{changed.name, changed}};
}

// A set whose gaps let a small child's body through and not its head.
void checkGaps(const CheckContext& context, std::vector<Finding>& findings) {
    const Rule& rule = context.resolved.rules[RuleId::GapHead];
    const double least = rule.low.value_or(rule.value);
    const double most = rule.high.value_or(least);
    std::set<std::size_t> told;
    for (std::size_t i = 0; i < context.resolved.parts.size(); ++i) {
        const ResolvedPart& part = context.resolved.parts[i];
        const double gap = part.gap.mm();
        const bool isWide = gap > least + kLengthTolerance.mm() && gap < most;
        // The gap is as long as the members: one that is short lets nobody through.
        if (!context.stated(i).spacing || !isWide || part.shoulderLength.value.mm() <= least ||
            !told.insert(part.stated).second) {
            continue;
        }
        Finding finding = context.finding(RuleId::GapHead, Severity::Note);
        finding.parts = {i};
        finding.value = gap;
        finding.limit = least;
        finding.unit = "mm";
        finding.message = "gaps of " + context.shown(part.gap) +
                          " beside {part} let a small child's body through and not its head; " +
                          "where small children are about, make them " + context.shownMm(least) +
                          " or less, or " + context.shownMm(most) + " or more";
        if (std::optional<Mend> mend = narrowed(context, i, least)) {
            finding.mends.push_back(std::move(*mend));
        }
        findings.push_back(std::move(finding));
    }
}

// Stations at which a back leans less or more than published seats do.
void checkLeans(const CheckContext& context, std::vector<Finding>& findings) {
    const Rule& rule = context.resolved.rules[RuleId::SwingLean];
    const double least = rule.low.value_or(0.0);
    const double most = rule.high.value_or(rule.value);
    constexpr double kHair = 0.05;  // degrees
    for (const ResolvedSwing& swing : context.resolved.swings) {
        for (const SwingPosition& position : swing.positions) {
            const double lean = position.lean.degrees();
            if (swing.leaning.empty() || (lean >= least - kHair && lean <= most + kHair)) {
                continue;
            }
            const double nearest = lean < least ? least : most;
            Finding finding = context.finding(RuleId::SwingLean, Severity::Note);
            finding.parts = {swing.leaning.front()};
            finding.value = lean;
            finding.limit = nearest;
            finding.unit = "deg";
            finding.message = "{part} leans " + showAngle(position.lean) + " at station '" +
                              position.name + "'; published backs lean from " +
                              showAngle(Angle::degrees(least)) + " to " +
                              showAngle(Angle::degrees(most));
            Assembly changed = context.piece.assemblies[swing.assembly];
            for (RestStation& station : changed.swing->stations) {
                if (station.name == position.name) {
                    station.behind.clear();
                    station.lean = figureText(nearest, 1) + " deg";
                }
            }
            finding.mends.push_back({"let it lean " + showAngle(Angle::degrees(nearest)) + " there",
                                     SetAssembly{changed}});
            findings.push_back(std::move(finding));
        }
    }
}

// An angle of sitting against the published range of `id`; `mend` takes the nearest that is in it.
void checkAngle(const CheckContext& context,
                RuleId id,
                Angle angle,
                const std::vector<std::size_t>& parts,
                const std::string& says,
                const std::string& mend,
                std::vector<Finding>& findings) {
    const Rule& rule = context.resolved.rules[id];
    const double least = rule.low.value_or(0.0);
    const double most = rule.high.value_or(rule.value);
    constexpr double kHair = 0.05;  // degrees
    if (parts.empty() || (angle.degrees() >= least - kHair && angle.degrees() <= most + kHair)) {
        return;
    }
    const double nearest = angle.degrees() < least ? least : most;
    Finding finding = context.finding(id, Severity::Note);
    finding.parts = {parts.front()};
    finding.value = angle.degrees();
    finding.limit = nearest;
    finding.unit = "deg";
    finding.message = says + " " + showAngle(angle) + "; published seats have from " +
                      showAngle(Angle::degrees(least)) + " to " + showAngle(Angle::degrees(most));
    finding.mends.push_back({mend + " " + showAngle(Angle::degrees(nearest)), std::nullopt});
    findings.push_back(std::move(finding));
}

void checkSitting(const CheckContext& context, std::vector<Finding>& findings) {
    const std::optional<Sitting> sitting = sittingOn(context.resolved);
    if (!sitting) {
        return;
    }
    checkAngle(context,
               RuleId::SeatSlope,
               sitting->slope,
               sitting->seat,
               "the seat ({part}) slopes down to its back by",
               "let it slope",
               findings);
    if (const std::optional<Angle> between = sitting->between()) {
        checkAngle(context,
                   RuleId::SeatToBack,
                   *between,
                   sitting->back,
                   "between the seat and the back ({part}) there are",
                   "lean the back, or slope the seat, for",
                   findings);
    }
}

}  // namespace

void checkBodies(const CheckContext& context, std::vector<Finding>& findings) {
    checkGaps(context, findings);
    checkLeans(context, findings);
    checkSitting(context, findings);
}

}  // namespace shoulderline
