#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "core/check/checks.h"
#include "core/check/proportions.h"
#include "core/joint/mortise_and_tenon.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

std::string ratioText(double ratio) {
    std::array<char, 32> digits{};
    const double rounded = std::round(ratio * 100.0) / 100.0;
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), rounded).ptr;
    return {digits.data(), end};
}

// Writes the messages and mends for one joint's proportions.
class JointJudge {
  public:
    JointJudge(const CheckContext& context, std::size_t index)
        : context_(context),
          index_(index),
          joint_(context.resolved.joints[index]),
          tenoned_(context.resolved.parts[joint_.tenoned]),
          mortised_(context.resolved.parts[joint_.mortised]) {}

    void judge(const Proportion& proportion, std::vector<Finding>& findings) const {
        if (!proportion.isLow() && !proportion.isHigh()) {
            return;
        }
        const bool isHigh = proportion.isHigh();
        const double limit = isHigh ? *proportion.high : *proportion.low;
        Finding finding = context_.finding(proportion.rule, severityOf(proportion));
        finding.parts = {joint_.tenoned, joint_.mortised};
        finding.joint = index_;
        finding.value = proportion.value;
        finding.limit = limit;
        finding.unit = proportion.isLength ? "mm" : "ratio";
        describe(proportion.rule, proportion.value, limit, isHigh, finding);
        findings.push_back(std::move(finding));
    }

  private:
    static Severity severityOf(const Proportion& proportion) {
        // No wood left, or none to stand on, is past any opinion.
        const bool isGone = proportion.isLength && proportion.value < kLengthTolerance.mm() &&
                            proportion.rule != RuleId::ThroughProjection;
        const bool isLarger =
            proportion.rule == RuleId::TenonThicknessShare && proportion.value >= 1.0;
        return isGone || isLarger ? Severity::MustMend : Severity::LookAt;
    }

    void mend(Finding& finding, std::string text, SizeName size, Length value) const {
        if (value > kLengthTolerance && !followsShoulders(joint_, size)) {
            finding.mends.push_back({std::move(text) + context_.shown(value),
                                     stateSize(context_, index_, size, value)});
        }
    }

    void backToRule(Finding& finding, SizeName name, const Size& size) const {
        if (size.state != SizeState::ByRule) {
            finding.mends.push_back({"go back to the rule for the " + std::string(wordFor(name)) +
                                         ", " + context_.shown(size.reasons.back().a),
                                     SetJointSize{tenoned_.of, mortised_.of, name, {}}});
        }
    }

    // The chisel on the rack that brings the tenon within its share of the part; zero where none
    // does.
    [[nodiscard]] Length bestChisel(bool isHigh, double limit) const {
        const Length edge = tenoned_.thickness.value * limit;
        Length best;
        for (const Length chisel : context_.resolved.rack) {
            if (isHigh ? chisel <= edge + kLengthTolerance
                       : (best == Length() && chisel >= edge - kLengthTolerance)) {
                best = chisel;
            }
        }
        return best;
    }

    // Moves a spanning part by changing its level or its setting; text alone where another
    // statement places it.
    void moveMend(Finding& finding, bool alongLevel, Length by, const std::string& text) const {
        Mend mend{text + context_.shown(by), std::nullopt};
        const Part& part = context_.stated(joint_.tenoned);
        if (const Spans* spans = std::get_if<Spans>(&part.relation);
            spans != nullptr && !part.spacing) {
            Part moved = part;
            Spans& to = std::get<Spans>(moved.relation);
            if (alongLevel && to.level) {
                // Away from the near end: up where the start is nearer and the part stands.
                const bool nearStart = joint_.mortise.fromStart.value < joint_.mortise.fromFar;
                const bool upwards = mortised_.frame.x.z > 0;
                to.level->at = "(" + to.level->at + ")" + (nearStart == upwards ? " + " : " - ") +
                               CheckContext::statement(by);
                mend.edit = SetPart{part.name, moved};
            } else if (!alongLevel && to.set.from != Side::Centre) {
                to.set.by = (to.set.by.empty() ? std::string() : "(" + to.set.by + ") + ") +
                            CheckContext::statement(by);
                mend.edit = SetPart{part.name, moved};
            }
        }
        finding.mends.push_back(std::move(mend));
    }

    // Moves the tenon within its part, away from the near end of the mortised part, where a
    // shoulder is left on the other side.
    void shiftTenon(Finding& finding, Length by) const {
        const Length least = context_.resolved.rules[RuleId::ShoulderLeast].length();
        const Shoulders& s = joint_.tenon.shoulders;
        const bool nearStart = joint_.mortise.fromStart.value < joint_.mortise.fromFar;
        const double along = dot(tenoned_.frame.y, mortised_.frame.x);
        const bool faceEdgeIsNear = (along > 0) == nearStart;
        if (s.faceEdge.state != SizeState::ByRule && s.backEdge.state != SizeState::ByRule) {
            return;
        }
        const bool byBackEdge = s.backEdge.state != SizeState::ByRule;
        const Length other = faceEdgeIsNear ? s.backEdge.value : s.faceEdge.value;
        if (std::abs(along) > 0.5 && other - by >= least - kLengthTolerance) {
            const Length faceEdge = faceEdgeIsNear ? s.faceEdge.value + by : s.faceEdge.value - by;
            const Length backEdge = faceEdgeIsNear ? s.backEdge.value - by : s.backEdge.value + by;
            mend(finding,
                 std::string("move the tenon within its part: shoulder at ") +
                     (byBackEdge ? "back edge " : "face edge "),
                 byBackEdge ? SizeName::ShoulderBackEdge : SizeName::ShoulderFaceEdge,
                 byBackEdge ? backEdge : faceEdge);
        }
    }

    void describeRatio(
        RuleId rule, double value, double limit, bool isHigh, Finding& finding) const;
    void describeLength(RuleId rule, double value, double limit, Finding& finding) const;
    void describe(RuleId rule, double value, double limit, bool isHigh, Finding& finding) const {
        if (finding.unit == "ratio") {
            describeRatio(rule, value, limit, isHigh, finding);
        } else {
            describeLength(rule, value, limit, finding);
        }
    }

    const CheckContext& context_;
    std::size_t index_;
    const ResolvedJoint& joint_;
    const ResolvedPart& tenoned_;
    const ResolvedPart& mortised_;
};

void JointJudge::describeRatio(
    RuleId rule, double value, double limit, bool isHigh, Finding& finding) const {
    const Tenon& tenon = joint_.tenon;
    const std::string most = isHigh ? "at most " : "at least ";
    if (rule == RuleId::TenonThicknessShare) {
        finding.message = "{joint}: the tenon is " + context_.shown(tenon.thickness.value) +
                          " thick, " + ratioText(value) + " of the " +
                          context_.shown(tenoned_.thickness.value) + " part; the rule book asks " +
                          most + ratioText(limit);
        mend(finding, "make the tenon ", SizeName::TenonThickness, bestChisel(isHigh, limit));
        backToRule(finding, SizeName::TenonThickness, tenon.thickness);
        if (followsShoulders(joint_, SizeName::TenonThickness)) {
            backToRule(finding, SizeName::ShoulderFaceSide, tenon.shoulders.faceSide);
            backToRule(finding, SizeName::ShoulderBackSide, tenon.shoulders.backSide);
        }
    } else if (rule == RuleId::TenonWidthRatio) {
        finding.message = "{joint}: the tenon is " + context_.shown(tenon.width.value) + " wide, " +
                          ratioText(value) + " times its thickness; the rule book asks " + most +
                          ratioText(limit);
        const Length allowed = snapDown(tenon.thickness.value * limit, Length::inches(1.0 / 32));
        mend(finding,
             isHigh ? "make the tenon narrower, " : "make the tenon wider, ",
             SizeName::TenonWidth,
             isHigh ? allowed : snapUp(tenon.thickness.value * limit, Length::inches(1.0 / 32)));
        backToRule(finding, SizeName::TenonWidth, tenon.width);
        if (followsShoulders(joint_, SizeName::TenonWidth)) {
            backToRule(finding, SizeName::ShoulderFaceEdge, tenon.shoulders.faceEdge);
            backToRule(finding, SizeName::ShoulderBackEdge, tenon.shoulders.backEdge);
        }
    } else if (rule == RuleId::TenonLengthShare) {
        const double there = tenon.length.value.mm() / value;
        finding.message = "{joint}: the tenon is " + context_.shown(tenon.length.value) +
                          " long, " + ratioText(value) + " of the " + context_.shownMm(there) +
                          " it enters; the rule book asks " + most + ratioText(limit);
        const Length allowed = Length::mm(there * limit);
        mend(finding,
             isHigh ? "shorten the tenon to " : "lengthen the tenon to ",
             SizeName::TenonLength,
             isHigh ? snapDown(allowed, Length::inches(1.0 / 32))
                    : snapUp(allowed, Length::inches(1.0 / 32)));
        backToRule(finding, SizeName::TenonLength, tenon.length);
    } else {
        finding.message = "{joint}: the tenon is " + context_.shown(tenon.length.value) +
                          " long, " + ratioText(value) +
                          " times its thickness; the rule book asks " + most + ratioText(limit);
        mend(finding,
             "lengthen the tenon to ",
             SizeName::TenonLength,
             snapUp(tenon.thickness.value * limit, Length::inches(1.0 / 32)));
    }
}

void JointJudge::describeLength(RuleId rule, double value, double limit, Finding& finding) const {
    const Tenon& tenon = joint_.tenon;
    const Length missing = Length::mm(limit - value);
    const std::string asks = "; the rule book asks " + context_.shownMm(limit);
    if (rule == RuleId::MortiseFloorLeast) {
        finding.message =
            value > kLengthTolerance.mm()
                ? "{joint}: the mortise leaves a floor of " + context_.shownMm(value) + asks
                : "{joint}: the mortise breaks through the far face of {other} by " +
                      context_.shownMm(-value) + asks + " of floor";
        mend(finding,
             "shorten the tenon to ",
             SizeName::TenonLength,
             snapDown(tenon.length.value - missing, Length::inches(1.0 / 32)));
    } else if (rule == RuleId::MortiseWallLeast) {
        finding.message =
            value > kLengthTolerance.mm()
                ? "{joint}: " + context_.shownMm(value) + " of wood beside the mortise" + asks
                : "{joint}: no wood is left beside the mortise" + asks;
        moveMend(finding, false, missing, "move {part} in from the face by ");
        const Size& faceSide = tenon.shoulders.faceSide;
        const Length most = tenon.thickness.value - missing * 2;
        const Length chisel = chiselWithin(context_.resolved.rack, most);
        const Size& backSide = tenon.shoulders.backSide;
        backToRule(finding, SizeName::MortiseWidth, joint_.mortise.width);
        if (faceSide.state != SizeState::ByRule || backSide.state != SizeState::ByRule) {
            backToRule(finding, SizeName::ShoulderFaceSide, faceSide);
            backToRule(finding, SizeName::ShoulderBackSide, backSide);
        } else if (chisel <= most + kLengthTolerance) {
            mend(finding, "make the tenon thinner, ", SizeName::TenonThickness, chisel);
        }
    } else if (rule == RuleId::MortiseEndLeast) {
        finding.message = "{joint}: " + context_.shownMm(value) +
                          " of wood between the mortise and the end of {other}" + asks;
        shiftTenon(finding, missing);
        backToRule(finding, SizeName::MortiseLength, joint_.mortise.length);
        moveMend(finding, true, missing, "move {part} away from the end by ");
    } else if (rule == RuleId::ShoulderLeast) {
        finding.message = "{joint}: the smallest shoulder is " + context_.shownMm(value) + asks;
        const Shoulders& s = tenon.shoulders;
        const bool atCheek = std::min(s.faceSide.value, s.backSide.value) <=
                             std::min(s.faceEdge.value, s.backEdge.value);
        const Length sum = atCheek ? tenoned_.thickness.value : tenoned_.width.value;
        const auto [first, second] =
            atCheek ? std::pair{&s.faceSide, &s.backSide} : std::pair{&s.faceEdge, &s.backEdge};
        if (first->state == SizeState::ByRule && second->state == SizeState::ByRule) {
            mend(finding,
                 atCheek ? "make the tenon thinner, " : "make the tenon narrower, ",
                 atCheek ? SizeName::TenonThickness : SizeName::TenonWidth,
                 sum - Length::mm(limit) * 2);
        }
        backToRule(
            finding, atCheek ? SizeName::ShoulderFaceSide : SizeName::ShoulderFaceEdge, *first);
        backToRule(
            finding, atCheek ? SizeName::ShoulderBackSide : SizeName::ShoulderBackEdge, *second);
    } else {
        finding.message = "{joint}: the tenon stands " + context_.shownMm(value) + " proud" +
                          "; the rule book asks at most " + context_.shownMm(limit);
        mend(finding, "let it stand proud by ", SizeName::Projection, Length::mm(limit));
    }
}

}  // namespace

void checkProportions(const CheckContext& context, std::vector<Finding>& findings) {
    for (std::size_t i = 0; i < context.resolved.joints.size(); ++i) {
        const JointJudge judge(context, i);
        for (const Proportion& proportion : proportionsOf(context.resolved, i)) {
            judge.judge(proportion, findings);
        }
    }
}

}  // namespace shoulderline
