#include <algorithm>

#include "core/check/checks.h"
#include "core/geometry/eased_body.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

constexpr double kLookedAtUnder = 0.2;  // mm of wood looked at under a shoulder

// What the shoulders of a joint cover on the face that it enters, as a sliver of the wood there.
Box coveredBy(const ResolvedPart& part, const ResolvedPart& tenoned, const ResolvedJoint& joint) {
    const Frame inPart = relativeFrame(part.frame, joint.frame);
    const AxisWay into{longestAxis(inPart.x), inPart.x[longestAxis(inPart.x)] > 0 ? 1.0 : -1.0};
    Box end = tenoned.bodyBox();
    (joint.end == End::Start ? end.max : end.min).x =
        joint.end == End::Start ? kLookedAtUnder : end.max.x - kLookedAtUnder;
    Box covered = relativeFrame(part.frame, tenoned.frame).outerBounds(end);
    const double face = inPart.origin[into.axis];
    covered.min[into.axis] = std::min(face, face + into.way * kLookedAtUnder);
    covered.max[into.axis] = std::max(face, face + into.way * kLookedAtUnder);
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

// Whether an easing takes any of what is covered, by a grid of points a hair under the face and
// within its edges.
bool takesFrom(const std::vector<EasedStretch>& all, const Box& covered, int into) {
    constexpr int kPoints = 8;
    constexpr double kHair = 0.05;  // mm
    std::vector<EasedStretch> stretches;
    for (const EasedStretch& stretch : all) {
        const bool isSpot = stretch.along.max - stretch.along.min < kHair;
        if (isSpot || (stretch.along.max >= covered.min.x && stretch.along.min <= covered.max.x)) {
            stretches.push_back(stretch);
        }
    }
    const int u = (into + 1) % 3;
    const int v = (into + 2) % 3;
    const auto place = [&](int axis, int i) {
        const double low = covered.min[axis] + kHair;
        return low + (covered.max[axis] - kHair - low) * i / (kPoints - 1);
    };
    Vec3 p = covered.centre();
    for (int i = 0; i < kPoints && !stretches.empty(); ++i) {
        for (int k = 0; k < kPoints; ++k) {
            p[u] = place(u, i);
            p[v] = place(v, k);
            if (isEasedAway(stretches, p)) {
                return true;
            }
        }
    }
    return false;
}

// Whether an easing of a square blank may come near what is covered: it takes wood no further than
// it reaches from its faces. Of other bodies it always may.
bool mayReach(const ResolvedPart& part, const ResolvedEasing& easing, const Box& covered) {
    if (part.body.edge || !part.body.planes.empty()) {
        return true;
    }
    const Vec3 size = part.bodyBox().max;
    const std::vector<Easing> all = easingsOf(easing);
    return std::any_of(all.begin(), all.end(), [&](const Easing& one) {
        switch (one.on) {
            case BodyFace::FaceSide:
                return covered.min.z <= one.otherReach;
            case BodyFace::BackSide:
                return covered.max.z >= size.z - one.otherReach;
            case BodyFace::StartEnd:
                return covered.min.x <= one.otherReach;
            case BodyFace::FarEnd:
                return covered.max.x >= size.x - one.otherReach;
            case BodyFace::FaceEdge:
            case BodyFace::BackEdge:
                break;
        }
        return true;
    });
}

// Where each easing of a part takes wood away, worked out when first asked for and once for parts
// of one body.
class EasedParts {
  public:
    const std::vector<EasedStretch>& of(const ResolvedPart& part, std::size_t easing) {
        auto known = std::find_if(known_.begin(), known_.end(), [&](const Known& one) {
            return one.stated == part.stated && one.easing == easing && *one.body == part.body;
        });
        if (known == known_.end()) {
            known_.push_back({part.stated,
                              easing,
                              &part.body,
                              stretchesOf(part.body, easingsOf(part.easings[easing]))});
            known = known_.end() - 1;
        }
        return known->stretches;
    }

  private:
    struct Known {
        std::size_t stated = 0;
        std::size_t easing = 0;
        const Body* body = nullptr;
        std::vector<EasedStretch> stretches;
    };
    std::vector<Known> known_;
};

void checkJoint(const CheckContext& context,
                std::size_t index,
                EasedParts& eased,
                std::vector<Finding>& findings) {
    const ResolvedJoint& joint = context.resolved.joints[index];
    const ResolvedPart& part = context.resolved.parts[joint.mortised];
    const ResolvedPart& tenoned = context.resolved.parts[joint.tenoned];
    const Box covered = coveredBy(part, tenoned, joint);
    const int into = longestAxis(relativeFrame(part.frame, joint.frame).x);
    for (std::size_t i = 0; i < part.easings.size(); ++i) {
        const ResolvedEasing& easing = part.easings[i];
        if (!mayReach(part, easing, covered) || !takesFrom(eased.of(part, i), covered, into)) {
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
    EasedParts eased;
    for (std::size_t i = 0; i < context.resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = context.resolved.joints[i];
        if (!context.resolved.parts[joint.mortised].easings.empty()) {
            checkJoint(context, i, eased, findings);
        }
    }
}

}  // namespace shoulderline
