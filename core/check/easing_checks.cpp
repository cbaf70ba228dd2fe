#include <algorithm>
#include <array>

#include "core/check/checks.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

constexpr double kSliver = 0.2;       // mm of wood looked at under a shoulder
constexpr double kLeastTaken = 1e-4;  // of the sliver

double shareIn(const Box& box, const std::vector<ConvexSolid>& wood) {
    const ConvexSolid solid = ConvexSolid::box(box);
    double covered = 0.0;
    for (const ConvexSolid& piece : wood) {
        if (const std::optional<ConvexSolid> shared = intersection(solid, piece)) {
            covered += shared->volume();
        }
    }
    return covered / box.volume();
}

// What the shoulders of a joint cover on the face that it enters, as a sliver of the wood there.
Box coveredBy(const ResolvedPart& part, const ResolvedPart& tenoned, const ResolvedJoint& joint) {
    const Frame inPart = relativeFrame(part.frame, joint.frame);
    const AxisWay into{longestAxis(inPart.x), inPart.x[longestAxis(inPart.x)] > 0 ? 1.0 : -1.0};
    Box end = tenoned.bodyBox();
    (joint.end == End::Start ? end.max : end.min).x =
        joint.end == End::Start ? kSliver : end.max.x - kSliver;
    Box covered = relativeFrame(part.frame, tenoned.frame).outerBounds(end);
    const double face = inPart.origin[into.axis];
    covered.min[into.axis] = std::min(face, face + into.way * kSliver);
    covered.max[into.axis] = std::max(face, face + into.way * kSliver);
    return covered;
}

// The easing in two, before and after what is covered; a stretch too short to show is left out.
Part stoppedBeside(const CheckContext& context,
                   std::size_t part,
                   std::size_t which,
                   Extent covered) {
    const ResolvedPart& resolved = context.resolved.parts[part];
    const ResolvedEasing& easing = resolved.easings[which];
    const double length = resolved.shoulderLength.value.mm();
    const double least = 4.0 * easing.runOut.mm();
    const double from = easing.from ? easing.from->mm() : 0.0;
    const double to = easing.to ? easing.to->mm() : length;
    Part changed = context.stated(part);
    const auto stated =
        std::find_if(changed.easings.begin(), changed.easings.end(), [&](const EasingStatement& e) {
            return e.kind == easing.kind && e.at == easing.at;
        });
    if (stated == changed.easings.end()) {
        return changed;
    }
    const EasingStatement whole = *stated;
    auto place = changed.easings.erase(stated);
    if (covered.min - from > least) {
        EasingStatement before = whole;
        before.fromFar = CheckContext::statement(Length::mm(length - covered.min));
        place = changed.easings.insert(place, before) + 1;
    }
    if (to - covered.max > least) {
        EasingStatement after = whole;
        after.fromStart = CheckContext::statement(Length::mm(covered.max));
        changed.easings.insert(place, after);
    }
    return changed;
}

// The share of what is covered that `easing` alone takes away.
bool takesFrom(const ResolvedPart& part, const ResolvedEasing& easing, const Box& covered) {
    Body whole = part.body;
    whole.easings.clear();
    Body eased = whole;
    eased.easings = easingsOf(easing);
    return shareIn(covered, whole.pieces()) - shareIn(covered, eased.pieces()) > kLeastTaken;
}

void checkJoint(const CheckContext& context, std::size_t index, std::vector<Finding>& findings) {
    const ResolvedJoint& joint = context.resolved.joints[index];
    const ResolvedPart& part = context.resolved.parts[joint.mortised];
    const ResolvedPart& tenoned = context.resolved.parts[joint.tenoned];
    const Box covered = coveredBy(part, tenoned, joint);
    if (shareIn(covered, part.wood().pieces()) > 1.0 - kLeastTaken) {
        return;  // the usual case, told without working the easings out anew
    }
    for (std::size_t i = 0; i < part.easings.size(); ++i) {
        const ResolvedEasing& easing = part.easings[i];
        if (!takesFrom(part, easing, covered)) {
            continue;
        }
        Finding finding = context.finding(RuleId::EasingStops, Severity::LookAt);
        finding.parts = {joint.tenoned, joint.mortised};
        finding.joint = index;
        finding.value = covered.max.x - covered.min.x;
        finding.unit = "mm";
        const std::string what =
            std::string(wordFor(easing.kind)) + " (" + std::string(wordFor(easing.at)) + ")";
        finding.message = "{joint}: the " + what + " of {other} runs under the shoulder, from " +
                          context.shownMm(covered.min.x) + " to " + context.shownMm(covered.max.x) +
                          " from its start";
        if (isAlong(easing.at)) {
            Part changed =
                stoppedBeside(context, joint.mortised, i, {covered.min.x, covered.max.x});
            finding.mends.push_back({"stop the " + std::string(wordFor(easing.kind)) +
                                         " beside it, at " + context.shownMm(covered.min.x) +
                                         " and " + context.shownMm(covered.max.x),
                                     SetPart{changed.name, changed}});
        } else {
            finding.mends.push_back({"make it smaller, or move {part} clear of it", std::nullopt});
        }
        findings.push_back(std::move(finding));
    }
}

}  // namespace

void checkEasings(const CheckContext& context, std::vector<Finding>& findings) {
    for (std::size_t i = 0; i < context.resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = context.resolved.joints[i];
        if (!context.resolved.parts[joint.mortised].easings.empty()) {
            checkJoint(context, i, findings);
        }
    }
}

}  // namespace shoulderline
