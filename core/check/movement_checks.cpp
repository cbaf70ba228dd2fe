#include "core/check/checks.h"
#include "core/check/figure_text.h"
#include "core/check/movement.h"

namespace shoulderline {

namespace {

constexpr double kUsualShank = 4.0;  // of a screw, millimetres

class MovementJudge {
  public:
    MovementJudge(const CheckContext& context, std::vector<Finding>& findings)
        : context_(context),
          findings_(findings),
          report_(movementReport(context.piece, context.resolved, context.species)),
          onPart_(context.resolved.parts.size()) {
        for (std::size_t i = 0; i < context.resolved.joints.size(); ++i) {
            onPart_[context.resolved.joints[i].mortised].push_back(i);
        }
    }

    void judge() {
        for (const std::string& trouble : report_.season.troubles) {
            Finding finding = context_.finding(RuleId::PieceResolves, Severity::LookAt);
            finding.message = trouble;
            findings_.push_back(std::move(finding));
        }
        for (std::size_t i = 0; i < context_.resolved.joints.size(); ++i) {
            judgeTenon(i);
            judgePanel(i);
        }
        for (std::size_t i = 0; i < context_.resolved.parts.size(); ++i) {
            judgeGap(i);
            judgeHeldApart(i);
        }
    }

  private:
    [[nodiscard]] std::string year() const {
        return "over a year from " + figureText(report_.season.dry, 1) + " to " +
               figureText(report_.season.damp, 1) + " % moisture content";
    }
    [[nodiscard]] std::string shownChange(double mm) const {
        return "\u00a0" + figureText(mm, 1) + "\u00a0mm";
    }

    Finding found(RuleId rule, Severity severity, double value, double limit) const {
        Finding finding = context_.finding(rule, severity);
        finding.value = value;
        finding.limit = limit;
        finding.unit = "mm";
        finding.source += "; " + report_.season.source;
        return finding;
    }

    // A wide tenon is held by glue along a mortise that does not move with it.
    void judgeTenon(std::size_t index) {
        const ResolvedJoint& joint = context_.resolved.joints[index];
        const std::optional<double>& coefficient = report_.parts[joint.tenoned].widthCoefficient;
        const Length limit = context_.resolved.rules[RuleId::MovementTenonHeld].length();
        const ResolvedPart& mortised = context_.resolved.parts[joint.mortised];
        // Along the grain of the mortised part its mouth does not move; across it, both do.
        const bool isHeld = std::abs(dot(joint.frame.y, mortised.frame.x)) > 0.5;
        if (!joint.form().isSized() || !isHeld || !coefficient ||
            joint.tenon.width.value <= limit + kLengthTolerance) {
            return;
        }
        const double width = joint.tenon.width.value.mm();
        const double change =
            changeOfSize(width, *coefficient, report_.season.dry, report_.season.damp)
                .value_or(0.0);
        Finding finding = found(RuleId::MovementTenonHeld, Severity::LookAt, width, limit.mm());
        finding.parts = {joint.tenoned, joint.mortised};
        finding.joint = index;
        finding.message = "{joint}: the tenon is " + context_.shown(joint.tenon.width.value) +
                          " wide and would move" + shownChange(change) + " " + year() +
                          ", where the mortise does not; over " + context_.shown(limit) +
                          " the rule book asks for two tenons with a gap";
        if (!followsShoulders(joint, SizeName::TenonWidth)) {
            finding.mends.push_back({"make the tenon narrower, " + context_.shown(limit),
                                     stateSize(context_, index, SizeName::TenonWidth, limit)});
        }
        finding.mends.push_back({"split it into two tenons with a gap between", std::nullopt});
        findings_.push_back(std::move(finding));
    }

    // A panel swells into its grooves and shrinks out of them.
    void judgePanel(std::size_t index) {
        const ResolvedJoint& joint = context_.resolved.joints[index];
        const ResolvedPart& panel = context_.resolved.parts[joint.tenoned];
        const std::optional<double>& growth = report_.parts[joint.tenoned].width;
        const bool isAcross =
            std::abs(dot(joint.frame.x, panel.frame.y)) > 0.5;  // at an edge, not an end
        if (!joint.form().isDry() || !isAcross || !growth) {
            return;
        }
        const Size* depth = joint.size(SizeName::GrooveDepth);
        const Size* tongue = joint.size(SizeName::TongueLength);
        const double room = (depth->value - tongue->value).mm();
        // Of two boards each moves by half at the edge that they share.
        const bool isTongued = joint.kind == JointKind::Tongued;
        const double beyond = isTongued ? report_.parts[joint.mortised].width.value_or(0.0) : 0.0;
        const double needed = (*growth + beyond) / 2;
        const std::string moves =
            "{part} moves" + shownChange(*growth) + " across its grain " + year() +
            ", half of it at each edge" +
            (isTongued ? ", as the next board does; in {other} " : "; in {other} ");
        const auto add = [&](RuleId rule, double value, double limit, std::string told) {
            Finding finding = found(rule, Severity::LookAt, value, limit);
            finding.parts = {joint.tenoned, joint.mortised};
            finding.joint = index;
            finding.message = moves + std::move(told);
            findings_.push_back(std::move(finding));
            return &findings_.back();
        };
        const Length step = Length::mm(0.25);
        if (room < needed - kLengthTolerance.mm()) {
            Finding* finding = add(RuleId::MovementPanelRoom,
                                   room,
                                   needed,
                                   "it has " + context_.shownMm(room) + " of room");
            const Length wanted = snapUp(Length::mm(needed), step);
            finding->mends.push_back({"leave " + context_.shown(wanted) + " of room",
                                      stateSize(context_, index, SizeName::Room, wanted)});
        }
        const double least = context_.resolved.rules[RuleId::MovementPanelHeld].value;
        const double left = tongue->value.mm() - needed;
        if (left < least - kLengthTolerance.mm()) {
            Finding* finding = add(RuleId::MovementPanelHeld,
                                   left,
                                   least,
                                   left <= 0.0 ? "its tongue comes out of the groove"
                                               : "its tongue stays " + context_.shownMm(left) +
                                                     " in the groove; the rule book asks " +
                                                     context_.shownMm(least));
            if (isTongued) {
                finding->mends.push_back(
                    {"lap the boards by " +
                         context_.shown(snapUp(tongue->value + Length::mm(least - left), step)),
                     std::nullopt});
                return;
            }
            const Length deeper = snapUp(depth->value + Length::mm(least - left), step);
            finding->mends.push_back({"groove " + context_.shown(deeper) + " deep",
                                      stateSize(context_, index, SizeName::GrooveDepth, deeper)});
        }
    }

    // Members of a set grow towards one another.
    void judgeGap(std::size_t index) {
        const ResolvedPart& part = context_.resolved.parts[index];
        const std::optional<double>& growth = report_.parts[index].width;
        if (part.number != 1 || !growth || part.gap.mm() <= 0.0) {
            return;
        }
        const double least = context_.resolved.rules[RuleId::MovementGapLeast].value;
        const double left = part.gap.mm() - *growth;
        if (left >= least - kLengthTolerance.mm()) {
            return;
        }
        Finding finding = found(RuleId::MovementGapLeast, Severity::LookAt, left, least);
        finding.parts = {index};
        finding.message =
            "{part}: each grows" + shownChange(*growth) + " across its grain " + year() +
            ", and the gaps are " + context_.shown(part.gap) +
            (left <= 0.0 ? ": they close"
                         : "; the rule book asks that " + context_.shownMm(least) + " be left");
        finding.mends.push_back(
            {"leave gaps of " + context_.shownMm(*growth + least) + " or more", std::nullopt});
        findings_.push_back(std::move(finding));
    }

    // A part held at two places apart across its grain.
    void judgeHeldApart(std::size_t index) {
        const std::optional<double>& coefficient = report_.parts[index].widthCoefficient;
        if (onPart_[index].size() < 2 || !coefficient) {
            return;
        }
        const HeldApart apart = heldApart(context_.resolved, index, onPart_[index]);
        const double limit = context_.resolved.rules[RuleId::MovementFixedApart].value;
        const double change =
            changeOfSize(apart.distance, *coefficient, report_.season.dry, report_.season.damp)
                .value_or(0.0);
        if (change <= limit || !graph().areTied(index, apart)) {
            return;
        }
        Finding finding = found(RuleId::MovementFixedApart,
                                apart.isLetIn ? Severity::LookAt : Severity::Note,
                                change,
                                limit);
        finding.parts = {index};
        const double slot = change + kUsualShank;
        finding.message = "{part} is " + std::string(apart.isLetIn ? "let in" : "held") +
                          " at places " + context_.shownMm(apart.distance) +
                          " apart across its grain and moves" + shownChange(change) +
                          " between them " + year() +
                          (apart.isLetIn ? "; its joints hold it fast" : ": fix it so that it can");
        finding.mends.push_back({"fasten one side, and the other in slotted holes " +
                                     figureText(slot, 1) + "\u00a0mm long for a " +
                                     figureText(kUsualShank, 0) + "\u00a0mm screw",
                                 std::nullopt});
        findings_.push_back(std::move(finding));
    }

    const PartGraph& graph() {
        if (!graph_) {
            graph_.emplace(context_.resolved);
        }
        return *graph_;
    }

    const CheckContext& context_;
    std::vector<Finding>& findings_;
    std::optional<PartGraph> graph_;  // made when first asked for
    MovementReport report_;
    std::vector<std::vector<std::size_t>> onPart_;  // joints in each part's wood
};

}  // namespace

void checkMovement(const CheckContext& context, std::vector<Finding>& findings) {
    MovementJudge(context, findings).judge();
}

}  // namespace shoulderline
