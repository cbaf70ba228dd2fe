#include <algorithm>
#include <cmath>

#include "core/check/checks.h"
#include "core/check/figure_text.h"
#include "core/check/proportions.h"
#include "core/check/strength_report.h"

namespace shoulderline {

namespace {

constexpr double kAlike = 0.01;  // worked as hard as another, within what an estimate can tell
constexpr const char* kCaution = "; an estimate for comparing joints, no proof that it is safe";

// The joint that is worked hardest, and those of the same parts that are worked as hard.
std::vector<std::size_t> hardestJoints(const CheckContext& context, const StrengthReport& report) {
    std::vector<std::size_t> hardest;
    if (report.order.empty() || !report.joints[report.order.front()].working) {
        return hardest;
    }
    const std::size_t first = report.order.front();
    const auto partsOf = [&](std::size_t i) {
        const ResolvedJoint& joint = context.resolved.joints[i];
        return std::pair(std::string_view(context.resolved.parts[joint.tenoned].of),
                         std::string_view(context.resolved.parts[joint.mortised].of));
    };
    const double ratio = report.joints[first].working->ratio.high;
    for (const std::size_t i : report.order) {
        const std::optional<Working>& working = report.joints[i].working;
        if (!working || working->ratio.high < ratio * (1.0 - kAlike)) {
            break;
        }
        if (partsOf(i) == partsOf(first)) {
            hardest.push_back(i);
        }
    }
    return hardest;
}

std::string timesText(double times) {
    return figureText(times, times < 10.0 ? 2 : 0) + " times as strong in bending";
}

// What a longer or thicker tenon, or another glue, would bring.
class Comparison {
  public:
    Comparison(const CheckContext& context, std::size_t joint)
        : context_(context),
          index_(joint),
          joint_(context.resolved.joints[joint]),
          estimator_(context.piece,
                     context.resolved,
                     context.species,
                     context.book,
                     ownTests(context.piece, context.resolved).tests),
          now_(estimator_.strengthOf(joint)) {}

    void addMends(Finding& finding) const {
        longer(finding);
        thicker(finding);
        otherGlue(finding);
    }

  private:
    void add(Finding& finding,
             const std::string& text,
             const JointStrength& then,
             Edit edit) const {
        const double times = then.bending.range.middle() / now_.bending.range.middle();
        if (then.isEstimated() && times > 1.005) {
            const bool isCovered = now_.isCovered && then.isCovered;
            finding.mends.push_back(
                {text + ": " +
                     (isCovered ? timesText(times)
                                : "ranks stronger; no figure, as no test is near these sizes"),
                 std::move(edit)});
        }
    }

    void longer(Finding& finding) const {
        const Length step = Length::inches(1.0 / 8);
        const Length floor = context_.resolved.rules[RuleId::MortiseFloorLeast].length();
        const Length wanted = joint_.tenon.length.value + step;
        if (joint_.isThrough() ||
            Length::mm(floorUnder(context_.resolved, joint_)) - step < floor - kLengthTolerance) {
            return;
        }
        add(finding,
            "make the tenon " + context_.shown(wanted) + " long",
            estimator_.strengthOf(index_, {{}, {}, wanted.mm()}),
            stateSize(context_, index_, SizeName::TenonLength, wanted));
    }

    void thicker(Finding& finding) const {
        const Length now = joint_.tenon.thickness.value;
        const double most = context_.resolved.rules[RuleId::TenonThicknessShare].high.value_or(1.0);
        const Length limit = context_.resolved.parts[joint_.tenoned].thickness.value * most;
        const auto next = std::find_if(
            context_.resolved.rack.begin(), context_.resolved.rack.end(), [&](Length chisel) {
                return chisel > now + kLengthTolerance;
            });
        if (next == context_.resolved.rack.end() || *next > limit + kLengthTolerance ||
            followsShoulders(joint_, SizeName::TenonThickness)) {
            return;
        }
        add(finding,
            "make the tenon " + context_.shown(*next) + " thick",
            estimator_.strengthOf(index_, {next->mm(), {}, {}}),
            stateSize(context_, index_, SizeName::TenonThickness, *next));
    }

    void otherGlue(Finding& finding) const {
        for (const Adhesive& glue : context_.book.adhesives()) {
            if (!glue.momentFactor ||
                *glue.momentFactor <= estimator_.adhesive().momentFactor.value_or(1.0)) {
                continue;
            }
            Piece glued = context_.piece;
            glued.use.adhesive = glue.name;
            const StrengthEstimator other(
                glued, context_.resolved, context_.species, context_.book);
            add(finding,
                "glue it with " + glue.name,
                other.strengthOf(index_),
                SetAdhesive{glue.name});
        }
    }

    const CheckContext& context_;
    std::size_t index_;
    const ResolvedJoint& joint_;
    StrengthEstimator estimator_;
    JointStrength now_;
};

void describe(const StrengthReport& report, std::size_t index, Finding& finding) {
    const JointRating& rating = report.joints[index];
    const Working& working = *rating.working;
    const Load& load = report.loads[working.demand.load];
    const std::string by = "'" + load.name + "'";
    if (!rating.strength.isCovered) {
        finding.message = "{joint} is worked hardest of all, by " + by +
                          "; its sizes lie outside those that were tested, so that joints can be "
                          "ranked but not measured";
        return;
    }
    const Range& ultimate =
        working.isByShear ? rating.strength.shear.range : rating.strength.bending.range;
    const std::string unit = working.isByShear ? "N" : "N\u00a0m";
    const double asked =
        working.isByShear ? working.demand.shearNewtons : working.demand.newtonMetres;
    const Mechanism governs =
        working.isByShear ? rating.strength.shear.governs : rating.strength.bending.governs;
    finding.value = working.ratio.high;
    finding.limit = 1.0;
    finding.unit = "ratio";
    finding.message = "{joint} is worked hardest of all: " + by + " asks " + estimateText(asked) +
                      " of the " + rangeText(ultimate.times(working.allowable), unit) +
                      " that count, " + rangeText(working.ratio, "") + " of it; the " +
                      std::string(wordFor(governs)) + " governs" + kCaution;
}

}  // namespace

void checkStrength(const CheckContext& context, std::vector<Finding>& findings) {
    const StrengthReport report =
        strengthReport(context.piece, context.resolved, context.species, context.book);
    for (const std::string& trouble : report.troubles) {
        Finding finding = context.finding(RuleId::PieceResolves, Severity::LookAt);
        finding.message = trouble;
        findings.push_back(std::move(finding));
    }
    const std::vector<std::size_t> hardest = hardestJoints(context, report);
    if (hardest.empty()) {
        return;
    }
    const JointRating& rating = report.joints[hardest.front()];
    const Working& working = *rating.working;
    const Load& load = report.loads[working.demand.load];
    const double ratio = load.kind == LoadKind::Stated ? working.ratio.high : working.ratio.low;
    const bool isOver = rating.strength.isCovered && ratio > 1.0;
    Finding finding =
        context.finding(RuleId::StrengthWorst, isOver ? Severity::LookAt : Severity::Note);
    finding.source = load.source + "; " + finding.source;
    describe(report, hardest.front(), finding);
    Comparison(context, hardest.front()).addMends(finding);
    // One for each of the joints that are worked alike: gather() tells them once.
    for (const std::size_t index : hardest) {
        finding.joint = index;
        finding.parts = {context.resolved.joints[index].tenoned,
                         context.resolved.joints[index].mortised};
        findings.push_back(finding);
    }
}

}  // namespace shoulderline
