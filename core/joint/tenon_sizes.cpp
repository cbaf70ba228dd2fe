#include "core/joint/tenon_sizes.h"

#include <algorithm>

#include "core/joint/mortise_and_tenon.h"
#include "core/joint/size_chain.h"

namespace shoulderline {

bool isLetIn(Role role) {
    return role == Role::Slat || role == Role::Spindle;
}

Size tenonThickness(const JointTask& task, const SizingGuide& guide) {
    const TenonedSection& section = task.section;
    Size size;
    if (task.form.kind == JointKind::Stub && task.groove) {
        link(size, RuleId::GrooveTakesStub, {}, {}, task.groove->width);
        return size;
    }
    if (isLetIn(section.role)) {
        const Length shoulder = guide.rules[RuleId::SlatTenonShoulder].length();
        const Length left = section.thickness - shoulder * 2;
        link(size, RuleId::SlatTenonShoulder, section.thickness, shoulder, left);
        link(size, RuleId::ChiselNearest, left, {}, chiselWithin(guide.rack, left));
        return size;
    }
    const RuleId rule =
        task.form.has(JointFeature::Twin) ? RuleId::TenonTwinShare : RuleId::TenonThicknessShare;
    size = shareOf(section.thickness, rule, guide);
    link(size, RuleId::ChiselNearest, size.value, {}, nearestOn(guide.rack, size.value));
    return size;
}

Size edgeShoulder(const TenonedSection& section, const SizingGuide& guide) {
    Size size;
    const Length usual = guide.rules[RuleId::EdgeShoulder].length();
    const Length most = section.width * guide.rules[RuleId::EdgeShoulderShare].value;
    link(size, RuleId::EdgeShoulder, section.width, {}, usual);
    toGrid(size, onGrid(RuleId::EdgeShoulder, guide), guide.grid);
    if (most < usual) {
        link(size, RuleId::EdgeShoulderShare, section.width, {}, most);
        toGrid(size, snapDown(most, guide.grid), guide.grid);
    }
    return size;
}

Size tenonWidth(const TenonedSection& section,
                Length thickness,
                const Size& edgeShoulder,
                const SizingGuide& guide) {
    Size size;
    const Length left = section.width - edgeShoulder.value * 2;
    const Length byRatio = thickness * guide.rules[RuleId::TenonWidthRatio].value;
    const Length least = section.width * guide.rules[RuleId::TenonWidthShareLeast].value;
    link(size, RuleId::TenonWidthLeft, section.width, edgeShoulder.value * 2, left);
    if (byRatio < left) {
        link(size, RuleId::TenonWidthRatio, thickness, {}, byRatio);
        if (byRatio < least) {
            link(size, RuleId::TenonWidthShareLeast, section.width, {}, std::min(least, left));
        }
        toGrid(size, snapNearest(size.value, guide.grid), guide.grid);
    }
    return size;
}

Length chiselWithin(std::span<const Length> rack, Length size) {
    Length best = rack.front();
    for (const Length chisel : rack) {
        if (chisel <= size + kLengthTolerance) {
            best = chisel;
        }
    }
    return best;
}

}  // namespace shoulderline
