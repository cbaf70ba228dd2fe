#include "core/joint/dowels.h"

#include <algorithm>
#include <cmath>

#include "core/joint/size_chain.h"

namespace shoulderline {

SizedJoint sizeDowels(const JointTask& task, const SizingGuide& guide, const StatedSizes& stated) {
    SizedJoint joint;
    Size diameter = shareOf(task.section.thickness, RuleId::DowelShare, guide);
    link(diameter, RuleId::PinSize, diameter.value, {}, nearestOn(guide.bits, diameter.value));
    state(diameter, stated[SizeName::Diameter]);
    Size depth;
    const double times = guide.rules[RuleId::DowelDepth].value;
    link(depth, RuleId::DowelDepth, diameter.value, {}, diameter.value * times);
    const Length most = task.depthThere() - guide.rules[RuleId::MortiseFloorLeast].length();
    if (most < depth.value) {
        link(depth, RuleId::MortiseFloorLeast, task.depthThere(), {}, most);
    }
    toGrid(depth, snapDown(depth.value, guide.grid), guide.grid);
    state(depth, stated[SizeName::BoreDepth]);
    joint.further.push_back({SizeName::Diameter, std::move(diameter)});
    joint.further.push_back({SizeName::BoreDepth, std::move(depth)});
    return joint;
}

JointCuts cutDowels(const JointTask& task, const SizedJoint& sized) {
    const double diameter = sized.furtherSize(SizeName::Diameter).mm();
    const double depth = sized.furtherSize(SizeName::BoreDepth).mm();
    const double width = task.section.width.mm();
    const double middle = task.section.thickness.mm() / 2;
    JointCuts cuts;
    if (diameter <= 0 || depth <= 0) {
        return cuts;
    }
    const int count =
        width < 6 * diameter ? 1 : std::max(2, static_cast<int>(std::lround(width / diameter / 4)));
    for (int i = 0; i < count; ++i) {
        const Vec3 mouth{0, (i + 0.5) * width / count, middle};
        cuts.bores.push_back({mouth, 0, 1.0, diameter, depth});
        cuts.ownBores.push_back({mouth, 0, -1.0, diameter, depth});
    }
    return cuts;
}

}  // namespace shoulderline
