#include <algorithm>

#include "core/joint/size_chain.h"
#include "core/joint/tenon_features.h"

namespace shoulderline {

namespace {

bool isPinned(const JointTask& task) {
    return task.form.has(JointFeature::Pinned) || task.form.has(JointFeature::Drawbored);
}

}  // namespace

void sizePins(const JointTask& task,
              const SizingGuide& guide,
              const StatedSizes& stated,
              SizedJoint& joint) {
    if (!isPinned(task)) {
        return;
    }
    Size diameter = shareOf(task.section.thickness, RuleId::PinShare, guide);
    link(diameter, RuleId::PinSize, diameter.value, {}, nearestOn(guide.bits, diameter.value));
    state(diameter, stated[SizeName::PinDiameter]);
    Size place;
    link(place,
         RuleId::PinPlace,
         diameter.value,
         {},
         diameter.value + onGrid(RuleId::PinPlace, guide));
    state(place, stated[SizeName::PinPlace]);
    if (place.value + diameter.value > joint.tenon.length.value) {
        joint.troubles.push_back("the tenon is too short for a pin of this diameter");
    }
    joint.further.push_back({SizeName::PinDiameter, std::move(diameter)});
    joint.further.push_back({SizeName::PinPlace, std::move(place)});
    if (task.form.has(JointFeature::Drawbored)) {
        Size offset = fixedSize(RuleId::DrawboreOffset, guide);
        state(offset, stated[SizeName::DrawboreOffset]);
        joint.further.push_back({SizeName::DrawboreOffset, std::move(offset)});
    }
}

void cutPins(const JointTask& task,
             const SizedJoint& sized,
             const SizingGuide& guide,
             JointCuts& cuts) {
    if (!isPinned(task) || cuts.tenons.empty()) {
        return;
    }
    const double diameter = sized.furtherSize(SizeName::PinDiameter).mm();
    const double place = sized.furtherSize(SizeName::PinPlace).mm();
    const double offset = sized.furtherSize(SizeName::DrawboreOffset).mm();
    const double tenonLow = sized.tenon.shoulders.faceSide.value.mm();
    const double tenonHigh =
        task.section.thickness.mm() - sized.tenon.shoulders.backSide.value.mm();
    // From the nearer face, so that the thin wall keeps hold of the pin, and half into the far one.
    const double wallLow = tenonLow - task.post.min.z;
    const double wallHigh = task.post.max.z - tenonHigh;
    const bool fromLow = wallLow <= wallHigh;
    const double depth =
        std::min(wallLow, wallHigh) + (tenonHigh - tenonLow) + std::max(wallLow, wallHigh) / 2;
    const double mouth = fromLow ? task.post.min.z : task.post.max.z;
    const double way = fromLow ? 1.0 : -1.0;
    const double width = sized.tenon.width.value.mm();
    const double first = cuts.tenons.front().box.min.y;
    const bool two = sized.tenon.width.value >= guide.rules[RuleId::PinTwoFrom].length();
    for (const double share : two ? std::vector<double>{0.25, 0.75} : std::vector<double>{0.5}) {
        const double y = first + width * share;
        cuts.bores.push_back({{place, y, mouth}, 2, way, diameter, depth});
        cuts.ownBores.push_back({{place - offset, y, fromLow ? tenonLow : tenonHigh},
                                 2,
                                 way,
                                 diameter,
                                 tenonHigh - tenonLow});
    }
}

void sizeHorn(const JointTask& task,
              const SizingGuide& guide,
              const StatedSizes& stated,
              SizedJoint& joint) {
    if (task.form.has(JointFeature::Horn)) {
        Size horn = fixedSize(RuleId::HornLength, guide);
        state(horn, stated[SizeName::Horn]);
        joint.further.push_back({SizeName::Horn, std::move(horn)});
    }
}

}  // namespace shoulderline
