#include "core/joint/joint_sizing.h"

#include <algorithm>
#include <initializer_list>

#include "core/joint/bridle.h"
#include "core/joint/dowels.h"
#include "core/joint/let_in.h"
#include "core/joint/mortise_and_tenon.h"
#include "core/joint/round_tenon.h"

namespace shoulderline {

namespace {

// Leaves `one` out where the joint has any of `others`, which it does not go with.
void leaveOut(JointForm& form,
              JointFeature one,
              std::initializer_list<JointFeature> others,
              std::vector<std::string>& troubles) {
    for (const JointFeature other : others) {
        if (form.has(one) && form.has(other)) {
            form.features.erase(one);
            troubles.push_back("a joint is " + std::string(wordFor(one)) + " or " +
                               std::string(wordFor(other)) + ", not both; the second is taken");
        }
    }
}

JointTask withoutWhatCannotBe(JointTask task, std::vector<std::string>& troubles) {
    std::erase_if(task.form.features, [&](JointFeature feature) {
        const bool isOut = !mayHave(task.form.kind, feature);
        if (isOut) {
            troubles.push_back("a joint that is " + std::string(wordFor(task.form.kind)) +
                               " cannot be " + std::string(wordFor(feature)));
        }
        return isOut;
    });
    if (task.form.has(JointFeature::Twin) && task.form.has(JointFeature::Double)) {
        task.form.features.erase(JointFeature::Double);
        troubles.push_back("tenons are twin or double, not both; twin is taken");
    }
    leaveOut(task.form,
             JointFeature::RoundEnds,
             {JointFeature::Haunch,
              JointFeature::SlopingHaunch,
              JointFeature::WedgedOutside,
              JointFeature::WedgedInKerfs,
              JointFeature::ChamferedEnd,
              JointFeature::RoundedEnd,
              JointFeature::Tusked},
             troubles);
    leaveOut(task.form,
             JointFeature::Tusked,
             {JointFeature::Double,
              JointFeature::Twin,
              JointFeature::WedgedOutside,
              JointFeature::WedgedInKerfs},
             troubles);
    leaveOut(task.form, JointFeature::RoundedEnd, {JointFeature::ChamferedEnd}, troubles);
    leaveOut(task.form, JointFeature::Shortened, {JointFeature::Mitred}, troubles);
    if (task.form.kind == JointKind::Stub && !task.groove) {
        troubles.push_back("a stub tenon goes into a groove, and the face has none there");
    }
    return task;
}

}  // namespace

bool mayHave(JointKind kind, JointFeature feature) {
    const auto isOne = [&](std::initializer_list<JointFeature> of) {
        return std::find(of.begin(), of.end(), feature) != of.end();
    };
    using enum JointFeature;
    switch (kind) {
        case JointKind::Blind:
            return !isOne({WedgedOutside, Stopped, Tusked, ChamferedEnd, RoundedEnd, Plugged});
        case JointKind::Through:
            return !isOne({Mitred, Stopped, Shortened, Plugged});
        case JointKind::Stub:
            return isOne({BareFaced, Pinned, SquareToPost});
        case JointKind::Loose:
            return isOne(
                {BareFaced, Twin, Double, Mitred, Horn, Shortened, RoundEnds, SquareToPost});
        case JointKind::Housed:
            return isOne({Stopped});
        case JointKind::Bridle:
        case JointKind::Lap:
            return isOne({Horn});
        case JointKind::Round:
            return isOne({Shortened, SquareToPost});
        case JointKind::Screwed:
            return isOne({Plugged});
        case JointKind::LetIn:
        case JointKind::Grooved:
        case JointKind::Tongued:
        case JointKind::CrossLap:
        case JointKind::Dowelled:
        case JointKind::Rests:
            break;
    }
    return false;
}

bool JointTask::endsAtFaceEdge() const {
    return -post.min.y <= post.max.y - section.width.mm();
}

Length SizedJoint::furtherSize(SizeName name) const {
    const auto it = std::find_if(
        further.begin(), further.end(), [name](const FurtherSize& f) { return f.name == name; });
    return it == further.end() ? Length() : it->size.value;
}

Box JointBore::box() const {
    const double r = diameter / 2;
    Box box{mouth - Vec3{r, r, r}, mouth + Vec3{r, r, r}};
    box.min[axis] = std::min(mouth[axis], mouth[axis] + way * depth);
    box.max[axis] = std::max(mouth[axis], mouth[axis] + way * depth);
    return box;
}

SizedJoint sizeJoint(const JointTask& asked, const SizingGuide& guide, const StatedSizes& stated) {
    std::vector<std::string> troubles;
    const JointTask task = withoutWhatCannotBe(asked, troubles);
    SizedJoint sized;
    switch (task.form.kind) {
        case JointKind::Blind:
        case JointKind::Through:
        case JointKind::Stub:
        case JointKind::Loose:
            sized = sizeMortiseAndTenon(task, guide, stated);
            break;
        case JointKind::Round:
            sized = sizeRoundTenon(task, guide, stated);
            break;
        case JointKind::LetIn:
        case JointKind::Housed:
            sized = sizeLetIn(task, guide, stated);
            break;
        case JointKind::Bridle:
            sized = sizeBridle(task, guide, stated);
            break;
        case JointKind::Lap:
            sized = sizeLap(task, guide, stated);
            break;
        case JointKind::Dowelled:
            sized = sizeDowels(task, guide, stated);
            break;
        case JointKind::Grooved:
        case JointKind::Tongued:
        case JointKind::CrossLap:
        case JointKind::Screwed:
        case JointKind::Rests:
            break;
    }
    sized.troubles.insert(sized.troubles.begin(), troubles.begin(), troubles.end());
    return sized;
}

JointCuts cutJoint(const JointTask& asked, const SizedJoint& sized, const SizingGuide& guide) {
    std::vector<std::string> told;
    const JointTask task = withoutWhatCannotBe(asked, told);
    switch (task.form.kind) {
        case JointKind::Blind:
        case JointKind::Through:
        case JointKind::Stub:
        case JointKind::Loose:
            return cutMortiseAndTenon(task, sized, guide);
        case JointKind::Round:
            return cutRoundTenon(task, sized);
        case JointKind::LetIn:
        case JointKind::Housed:
            return cutLetIn(task, sized);
        case JointKind::Bridle:
            return cutBridle(task, sized);
        case JointKind::Lap:
            return cutLap(task, sized);
        case JointKind::Dowelled:
            return cutDowels(task, sized);
        case JointKind::Grooved:
        case JointKind::Tongued:
        case JointKind::CrossLap:
        case JointKind::Screwed:
        case JointKind::Rests:
            break;
    }
    return {};
}

}  // namespace shoulderline
