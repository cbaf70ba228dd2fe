#include <algorithm>
#include <cmath>

#include "core/check/checks.h"
#include "core/check/figure_text.h"
#include "core/check/hole_edit.h"
#include "core/check/movement.h"
#include "core/resolve/holes.h"

namespace shoulderline {

namespace {

constexpr double kScrewSlack = 0.001;  // mm

class ScrewHoleJudge {
  public:
    ScrewHoleJudge(const CheckContext& context, std::vector<Finding>& findings)
        : context_(context), findings_(findings) {}

    void judge() {
        for (std::size_t i = 0; i < context_.resolved.parts.size(); ++i) {
            for (const ResolvedCut& cut : context_.resolved.parts[i].cuts) {
                if (cut.hole && cut.hole->kind == CutKind::ScrewHole) {
                    judgeHead(i, cut);
                    judgeSlot(i, cut);
                }
            }
        }
    }

  private:
    Finding& add(RuleId rule, Severity severity, std::size_t part, double value, double limit) {
        findings_.push_back(holeFinding(context_, rule, severity, part, value, limit));
        return findings_.back();
    }

    void judgeHead(std::size_t index, const ResolvedCut& cut) {
        const ResolvedHole& hole = *cut.hole;
        if (!hole.isForHead) {
            return;
        }
        const ResolvedPart& part = context_.resolved.parts[index];
        const double held = part.bodyBox().size()[axesOn(cut.face).into];
        const double left = held - hole.headDepth.value.mm();
        const double least = context_.resolved.rules[RuleId::ScrewUnderHead].length().mm();
        if (left >= least - kScrewSlack) {
            return;
        }
        Finding& finding = add(RuleId::ScrewUnderHead,
                               left <= kScrewSlack ? Severity::MustMend : Severity::LookAt,
                               index,
                               std::max(0.0, left),
                               least);
        finding.message =
            "the head of a screw sunk " + context_.shown(hole.headDepth.value) + " into {part}, " +
            context_.shownMm(held) + " thick there, leaves " +
            (left <= kScrewSlack ? std::string("no wood") : context_.shownMm(left) + " of wood") +
            " under it; the rule book asks " + context_.shownMm(least);
        const Length most = snapDown(Length::mm(held - least), holeStep(context_));
        if (hole.head != ScrewHead::Countersunk && most.mm() > 0.0) {
            finding.mends.push_back({"sink it " + context_.shown(most),
                                     withCut(context_, index, hole.cut, [&](CutStatement& stated) {
                                         stated.headDepth = CheckContext::statement(most);
                                     })});
        }
    }

    [[nodiscard]] const MovementReport& report() {
        if (!report_) {
            report_ = movementReport(context_.piece, context_.resolved, context_.species);
        }
        return *report_;
    }

    void judgeSlot(std::size_t index, const ResolvedCut& cut) {
        const ResolvedHole& hole = *cut.hole;
        if (hole.isForHead || hole.slot == SlotWay::Round) {
            return;
        }
        const std::optional<ScrewedTo> to = screwedTo(context_.resolved, index, hole);
        if (!to) {
            return;
        }
        const Vec3 slot = context_.resolved.parts[index].frame.directionToOuter(hole.slotAlong);
        constexpr double kAcross = 0.7;  // within 45 degrees
        if (std::abs(dot(slot, to->way)) < kAcross) {
            tellAlongGrain(index, cut, *to);
            return;
        }
        const PartMovement& moves = report().parts[to->mover];
        const std::optional<double> coefficient = moves.widthCoefficient;
        if (!coefficient || !to->moverIsWidth) {
            return;
        }
        const double needed = slottedHoleLength(to->distance.mm(),
                                                *coefficient,
                                                report().season.dry,
                                                report().season.damp,
                                                hole.diameter.mm())
                                  .value_or(0.0);
        if (hole.slotLength.value.mm() < needed - kScrewSlack) {
            tellShort(index, cut, *to, needed);
        }
    }

    void tellAlongGrain(std::size_t index, const ResolvedCut& cut, const ScrewedTo& to) {
        const SlotWay other = cut.hole->slot == SlotWay::Along ? SlotWay::Across : SlotWay::Along;
        Finding& finding = add(RuleId::SlotTakesMovement, Severity::LookAt, index, 0.0, 0.0);
        finding.value = 0.0;
        finding.message =
            "a slotted screw hole in {part} lies along the grain of {other}, which "
            "moves across it";
        finding.parts.push_back(to.mover);
        finding.mends.push_back({"slot it " + std::string(wordFor(other)) + " the part",
                                 withCut(context_, index, cut.hole->cut, [&](CutStatement& stated) {
                                     stated.slot = other;
                                 })});
    }

    void tellShort(std::size_t index, const ResolvedCut& cut, const ScrewedTo& to, double needed) {
        const ResolvedHole& hole = *cut.hole;
        Finding& finding = add(
            RuleId::SlotTakesMovement, Severity::LookAt, index, hole.slotLength.value.mm(), needed);
        finding.source += "; " + report().season.source;
        finding.parts.push_back(to.mover);
        finding.message = "a slotted screw hole in {part} is " +
                          context_.shown(hole.slotLength.value) + " long; {other} moves " +
                          figureText(needed - hole.diameter.mm(), 1) + " mm there, " +
                          context_.shown(to.distance) + " from its middle, over a year from " +
                          figureText(report().season.dry, 1) + " to " +
                          figureText(report().season.damp, 1) + " % moisture content";
        const Length longer = snapUp(Length::mm(needed), holeStep(context_));
        finding.mends.push_back({"make the slot " + context_.shown(longer) + " long",
                                 withCut(context_, index, hole.cut, [&](CutStatement& stated) {
                                     stated.length = CheckContext::statement(longer);
                                 })});
    }

    const CheckContext& context_;
    std::vector<Finding>& findings_;
    std::optional<MovementReport> report_;
};

}  // namespace

void checkScrewHoles(const CheckContext& context, std::vector<Finding>& findings) {
    ScrewHoleJudge(context, findings).judge();
}

}  // namespace shoulderline
