#include "core/joint/mortise_and_tenon.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/joint/size_chain.h"
#include "core/joint/tenon_features.h"

namespace shoulderline {

namespace {

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

Size blindLength(const TenonedSection& section, Length depthThere, const SizingGuide& guide) {
    Size size;
    if (isLetIn(section.role)) {
        const Length usual = guide.rules[RuleId::SlatTenonLength].length();
        link(size, RuleId::SlatTenonLength, depthThere, {}, usual);
    } else {
        const Length share = depthThere * guide.rules[RuleId::TenonLengthShare].value;
        link(size, RuleId::TenonLengthShare, depthThere, {}, share);
    }
    const Length most = depthThere - guide.rules[RuleId::MortiseFloorLeast].length() -
                        guide.rules[RuleId::MortiseDepthExtra].length();
    if (most < size.value) {
        link(size, RuleId::MortiseFloorLeast, depthThere, {}, most);
    }
    toGrid(size, snapDown(size.value, guide.grid), guide.grid);
    return size;
}

// What one direction of the section holds: shoulder, tenon, shoulder.
struct Across {
    Length whole;
    Size& first;
    Size& tenon;
    Size& second;
    const char* words;  // of the three, for a trouble
};

void leave(Size& shoulder, const Across& across, Length other) {
    shoulder = {};
    const Length taken = across.tenon.value + other;
    link(shoulder, RuleId::ShoulderLeft, across.whole, taken, across.whole - taken);
}

// The tenon from two stated shoulders; false where they leave none.
bool fitBetween(const Across& across, std::vector<std::string>& troubles) {
    const Length shoulders = across.first.value + across.second.value;
    const Length left = across.whole - shoulders;
    if (left <= kLengthTolerance) {
        troubles.push_back(std::string(across.words) + ": the stated shoulders leave no tenon");
        return false;
    }
    if (across.tenon.state != SizeState::ByRule && !nearlyEqual(across.tenon.value, left)) {
        troubles.push_back(std::string(across.words) +
                           " are all stated and do not make up the part; the shoulders decide");
    }
    across.tenon.state = SizeState::ByRule;
    link(across.tenon, RuleId::TenonBetweenShoulders, across.whole, shoulders, left);
    return true;
}

// Centres the tenon (bare-faced: sets it flush with the second side), or places it by the shoulders
// that are stated.
void shareOut(const Across& across,
              const std::optional<StatedSize>& statedFirst,
              const std::optional<StatedSize>& statedSecond,
              bool isBareFaced,
              std::vector<std::string>& troubles) {
    const Length left = across.whole - across.tenon.value;
    if (isBareFaced) {
        link(across.first, RuleId::ShoulderLeft, across.whole, across.tenon.value, left);
        link(across.second, RuleId::BareFaced, across.whole, {}, {});
    } else {
        link(across.first, RuleId::TenonCentred, across.whole, {}, left / 2);
        link(across.second, RuleId::TenonCentred, across.whole, {}, left / 2);
    }
    state(across.first, statedFirst);
    state(across.second, statedSecond);
    if (statedFirst && statedSecond && fitBetween(across, troubles)) {
        return;
    }
    if (statedFirst) {
        leave(across.second, across, across.first.value);
    } else if (statedSecond) {
        leave(across.first, across, across.second.value);
    }
}

// Twin or double tenons as the group that the shoulders are shared out about.
struct Group {
    Size whole;
    Length gap;
    bool isPair = false;
};

Group grouped(const Size& one, const Size& gap, bool isPair) {
    Group group{one, isPair ? gap.value : Length(), isPair};
    if (isPair) {
        group.whole.value = one.value * 2 + gap.value;
    }
    return group;
}

// Each of a pair, where two stated shoulders decided about the group.
void divide(const Group& group, Length before, Size& one) {
    if (!group.isPair) {
        one = group.whole;
    } else if (!nearlyEqual(before, group.whole.value)) {
        link(one,
             RuleId::TenonBetweenShoulders,
             group.whole.value,
             group.gap,
             (group.whole.value - group.gap) / 2);
    }
}

// A length into the wood from where the face is to one from the shoulder.
void fromFaceAsItIs(const JointTask& task, Size& length) {
    if (task.faceBelow() > kLengthTolerance) {
        link(length, RuleId::FaceAsItIs, task.faceBelow(), {}, length.value + task.faceBelow());
    }
}

void sizeThrough(SizedJoint& joint,
                 const JointTask& task,
                 const SizingGuide& guide,
                 const StatedSizes& stated) {
    Size& projection = joint.tenon.projection;
    const Length depthThere = task.depthThere();
    projection = task.form.has(JointFeature::Tusked) ? tuskProjection(guide, stated, joint)
                                                     : fixedSize(RuleId::ThroughProjection, guide);
    state(projection, stated[SizeName::Projection]);
    link(joint.tenon.length,
         RuleId::ThroughLength,
         depthThere,
         projection.value,
         depthThere + projection.value);
    fromFaceAsItIs(task, joint.tenon.length);
    link(joint.mortiseDepth, RuleId::MortiseThrough, depthThere, {}, depthThere);
}

// Ends the tenon so that its mortise leaves wood before what it would run into.
void shorten(const JointTask& task, const SizingGuide& guide, Size& length) {
    if (!task.form.has(JointFeature::Shortened) || task.neighbourBefore <= kLengthTolerance) {
        return;
    }
    const Length gap = guide.rules[RuleId::MortiseGapLeast].length();
    const Length most =
        task.neighbourBefore - gap - guide.rules[RuleId::MortiseDepthExtra].length();
    const Length shorter = guide.grid > Length() ? snapDown(most, guide.grid / 2) : most;
    if (shorter < length.value && shorter > kLengthTolerance) {
        link(length, RuleId::ShortOfNeighbour, gap, {}, shorter);
    }
}

}  // namespace

void sizeBlindLength(const JointTask& task,
                     const SizingGuide& guide,
                     const StatedSizes& stated,
                     SizedJoint& joint) {
    const Length extra = guide.rules[RuleId::MortiseDepthExtra].length();
    Size& length = joint.tenon.length;
    if (task.form.kind == JointKind::Stub && task.groove) {
        link(length, RuleId::StubLength, task.groove->depth, extra, task.groove->depth - extra);
    } else if (task.form.has(JointFeature::Mitred) && task.neighbourBeyond > kLengthTolerance) {
        link(length, RuleId::MitreLength, {}, {}, task.neighbourBeyond);
    } else {
        length = blindLength(task.section, task.depthThere(), guide);
    }
    fromFaceAsItIs(task, length);
    shorten(task, guide, length);
    state(length, stated[SizeName::TenonLength]);
    const Length inWood = length.value - task.faceBelow();
    link(joint.mortiseDepth, RuleId::MortiseDepthExtra, inWood, extra, inWood + extra);
    state(joint.mortiseDepth, stated[SizeName::MortiseDepth]);
}

namespace {

// Shoulders at edges that are grooved: at least the groove's depth, where the maker states none.
// The shoulders themselves are filled in, and stated for the sharing out.
void clearGrooves(const JointTask& task,
                  const Size& edge,
                  StatedSizes& stated,
                  std::array<std::optional<Size>, 2>& shoulders) {
    const std::array<std::pair<SizeName, Length>, 2> sides{
        {{SizeName::ShoulderFaceEdge, task.grooveAtFaceEdge},
         {SizeName::ShoulderBackEdge, task.grooveAtBackEdge}}};
    for (std::size_t i = 0; i < sides.size(); ++i) {
        const auto& [name, groove] = sides[i];
        if (groove > edge.value + kLengthTolerance && !stated[name]) {
            Size shoulder;
            link(shoulder, RuleId::ClearsGroove, groove, {}, groove);
            stated.set(name, {SizeState::Stated, shoulder.value});
            shoulders[i] = std::move(shoulder);
        }
    }
}

SizeName haunchedShoulder(const JointTask& task) {
    return task.endsAtFaceEdge() ? SizeName::ShoulderFaceEdge : SizeName::ShoulderBackEdge;
}

// The shoulder at the edge where a haunch is, which the haunch takes up; none where the maker
// states that shoulder. The tenon leaves it room.
std::optional<Size> shoulderForHaunch(const JointTask& task,
                                      const Size& edge,
                                      const SizingGuide& guide,
                                      const StatedSizes& stated,
                                      Size& tenonWidth) {
    const bool isHaunched =
        task.form.has(JointFeature::Haunch) || task.form.has(JointFeature::SlopingHaunch);
    if (!isHaunched || stated[haunchedShoulder(task)]) {
        return std::nullopt;
    }
    Size haunch = shareOf(task.section.width, RuleId::HaunchWidthShare, guide);
    toGrid(haunch, snapNearest(haunch.value, guide.grid), guide.grid);
    const Length left = task.section.width - haunch.value - edge.value;
    if (!stated[SizeName::TenonWidth] && left < tenonWidth.value) {
        link(tenonWidth,
             RuleId::TenonWidthLeft,
             task.section.width,
             haunch.value + edge.value,
             left);
    }
    return haunch;
}

}  // namespace

Length chiselWithin(std::span<const Length> rack, Length size) {
    Length best = rack.front();
    for (const Length chisel : rack) {
        if (chisel <= size + kLengthTolerance) {
            best = chisel;
        }
    }
    return best;
}

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
    const std::optional<Size> haunch = shoulderForHaunch(task, edge, guide, stated, tenon.width);
    if (haunch) {
        stated.set(haunchedShoulder(task), {SizeState::Stated, haunch->value});
    }

    std::array<std::optional<Size>, 2> atGrooves;
    clearGrooves(task, edge, stated, atGrooves);
    if (!stated[SizeName::TenonWidth] && !isDouble && (atGrooves[0] || atGrooves[1])) {
        const auto shoulderAt = [&](std::size_t i, SizeName name) {
            return atGrooves[i] || stated[name] ? stated[name]->value : edge.value;
        };
        const Length taken =
            shoulderAt(0, SizeName::ShoulderFaceEdge) + shoulderAt(1, SizeName::ShoulderBackEdge);
        if (section.width - taken < tenon.width.value) {
            link(tenon.width, RuleId::TenonWidthLeft, section.width, taken, section.width - taken);
        }
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
    for (std::size_t i = 0; i < atGrooves.size(); ++i) {
        if (atGrooves[i]) {
            (i == 0 ? shoulders.faceEdge : shoulders.backEdge) = *atGrooves[i];
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
