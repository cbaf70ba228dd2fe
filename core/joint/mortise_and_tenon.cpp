#include "core/joint/mortise_and_tenon.h"

#include <algorithm>
#include <array>
#include <optional>

#include "core/joint/shoulders.h"
#include "core/joint/size_chain.h"
#include "core/joint/tenon_features.h"
#include "core/joint/tenon_sizes.h"

namespace shoulderline {

namespace {

// The width of each tenon, and the gap between twin or double ones, which is a size of its own.
Size sizeWidthAndGap(const JointTask& task,
                     const SizingGuide& guide,
                     const StatedSizes& stated,
                     const Size& edge,
                     SizedJoint& joint) {
    const TenonedSection& section = task.section;
    Tenon& tenon = joint.tenon;
    const bool isTwin = task.form.has(JointFeature::Twin);
    const bool isDouble = task.form.has(JointFeature::Double);
    Size gap;
    if (isDouble) {
        const Length left = section.width - edge.value * 2;
        tenon.width = shareOf(left, RuleId::TenonDoubleShare, guide);
        toGrid(tenon.width, snapNearest(tenon.width.value, guide.grid), guide.grid);
        state(tenon.width, stated[SizeName::TenonWidth]);
        const Length between = left - tenon.width.value * 2;
        link(gap,
             RuleId::TenonDoubleGap,
             left,
             tenon.width.value * 2,
             std::min(between, guide.rules[RuleId::TenonDoubleGap].length()));
    } else {
        tenon.width = tenonWidth(section, tenon.thickness.value, edge, guide);
        state(tenon.width, stated[SizeName::TenonWidth]);
    }
    if (isTwin) {
        gap = shareOf(tenon.thickness.value, RuleId::TenonTwinGap, guide);
    }
    if (isTwin || isDouble) {
        state(gap, stated[SizeName::TenonGap]);
        joint.further.push_back({SizeName::TenonGap, gap});
    }
    return gap;
}

// Takes the width to what the shoulders leave where they clear grooves.
void leaveEdges(const TenonedSection& section,
                const Size& edge,
                const StatedSizes& stated,
                const std::array<std::optional<Size>, 2>& atEdges,
                Size& width) {
    const auto shoulderAt = [&](std::size_t i, SizeName name) {
        return atEdges[i] || stated[name] ? stated[name]->value : edge.value;
    };
    const Length taken =
        shoulderAt(0, SizeName::ShoulderFaceEdge) + shoulderAt(1, SizeName::ShoulderBackEdge);
    if (section.width - taken < width.value) {
        link(width, RuleId::TenonWidthLeft, section.width, taken, section.width - taken);
    }
}

}  // namespace

SizedJoint sizeMortiseAndTenon(const JointTask& task,
                               const SizingGuide& guide,
                               const StatedSizes& statedByMaker) {
    StatedSizes stated = statedByMaker;
    const TenonedSection& section = task.section;
    SizedJoint joint;
    Tenon& tenon = joint.tenon;
    tenon.thickness = tenonThickness(task, guide);
    state(tenon.thickness, stated[SizeName::TenonThickness]);

    const Size edge = edgeShoulder(section, guide);
    const bool isTwin = task.form.has(JointFeature::Twin);
    const bool isDouble = task.form.has(JointFeature::Double);
    const Size gap = sizeWidthAndGap(task, guide, stated, edge, joint);
    const std::optional<Size> haunch = shoulderForHaunch(task, edge, guide, stated, tenon.width);
    if (haunch) {
        stated.set(haunchedShoulder(task), {SizeState::Stated, haunch->value});
    }

    std::array<std::optional<Size>, 2> atEdges;
    clearEdges(task, edge, stated, atEdges);
    if (!stated[SizeName::TenonWidth] && !isDouble && (atEdges[0] || atEdges[1])) {
        leaveEdges(section, edge, stated, atEdges, tenon.width);
    }

    Shoulders& shoulders = tenon.shoulders;
    Group thick = grouped(tenon.thickness, gap, isTwin);
    Group wide = grouped(tenon.width, gap, isDouble);
    const Length thickBefore = thick.whole.value;
    const Length wideBefore = wide.whole.value;
    shareOut({section.thickness,
              shoulders.faceSide,
              thick.whole,
              shoulders.backSide,
              "tenon thickness and the shoulders at face side and back side"},
             stated[SizeName::ShoulderFaceSide],
             stated[SizeName::ShoulderBackSide],
             task.form.has(JointFeature::BareFaced),
             joint.troubles);
    shareOut({section.width,
              shoulders.faceEdge,
              wide.whole,
              shoulders.backEdge,
              "tenon width and the shoulders at face edge and back edge"},
             stated[SizeName::ShoulderFaceEdge],
             stated[SizeName::ShoulderBackEdge],
             false,
             joint.troubles);
    if (haunch) {
        (task.endsAtFaceEdge() ? shoulders.faceEdge : shoulders.backEdge) = *haunch;
    }
    for (std::size_t i = 0; i < atEdges.size(); ++i) {
        if (atEdges[i]) {
            (i == 0 ? shoulders.faceEdge : shoulders.backEdge) = *atEdges[i];
        }
    }
    divide(thick, thickBefore, tenon.thickness);
    divide(wide, wideBefore, tenon.width);

    if (task.form.isThrough()) {
        sizeThrough(joint, task, guide, stated);
    } else {
        sizeBlindLength(task, guide, stated, joint);
    }
    link(joint.mortiseWidth, RuleId::MortiseAsTenon, {}, {}, tenon.thickness.value);
    state(joint.mortiseWidth, stated[SizeName::MortiseWidth]);
    link(joint.mortiseLength, RuleId::MortiseAsTenon, {}, {}, tenon.width.value);
    state(joint.mortiseLength, stated[SizeName::MortiseLength]);
    sizeHaunch(task, guide, stated, joint);
    sizeTenonEnd(task, guide, stated, joint);
    sizePins(task, guide, stated, joint);
    sizeWedges(task, guide, stated, joint);
    sizeHorn(task, guide, stated, joint);
    return joint;
}

JointCuts cutMortiseAndTenon(const JointTask& task,
                             const SizedJoint& sized,
                             const SizingGuide& guide) {
    const Tenon& tenon = sized.tenon;
    const double length = tenon.length.value.mm();
    const double thickness = tenon.thickness.value.mm();
    const double width = tenon.width.value.mm();
    const double gap = sized.furtherSize(SizeName::TenonGap).mm();
    const double beyondWidth = (sized.mortiseLength.value - tenon.width.value).mm() / 2;
    const double beyondThickness = (sized.mortiseWidth.value - tenon.thickness.value).mm() / 2;
    const Vec3 around{0, beyondWidth, beyondThickness};
    JointCuts cuts;
    const int across = task.form.has(JointFeature::Twin) ? 2 : 1;
    const int along = task.form.has(JointFeature::Double) ? 2 : 1;
    for (int i = 0; i < across; ++i) {
        for (int j = 0; j < along; ++j) {
            Box box;
            box.min = {0,
                       tenon.shoulders.faceEdge.value.mm() + j * (width + gap),
                       tenon.shoulders.faceSide.value.mm() + i * (thickness + gap)};
            box.max = box.min + Vec3{length, width, thickness};
            Box mouth{box.min - around, box.max + around};
            mouth.max.x = sized.mortiseDepth.value.mm() + task.faceBelow().mm();
            cuts.tenons.push_back({box, std::nullopt, false});
            cuts.mortises.push_back({mouth, std::nullopt, false});
        }
    }
    cutTenonEnds(task, sized, guide, cuts);
    cutWedges(task, sized, guide, cuts);
    cutHaunch(task, sized, cuts);
    cutPins(task, sized, guide, cuts);
    if (task.form.kind == JointKind::Loose) {
        makeLoose(cuts);
    }
    return cuts;
}

}  // namespace shoulderline
