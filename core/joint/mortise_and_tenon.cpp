#include "core/joint/mortise_and_tenon.h"

#include <algorithm>
#include <cmath>

namespace shoulderline {

namespace {

bool isLetIn(Role role) {
    return role == Role::Slat || role == Role::Spindle;
}

// Adds a link to the chain; its value becomes the size.
void link(Size& size, RuleId rule, Length a, Length b, Length value) {
    size.reasons.push_back({rule, a, b, value});
    size.value = value;
}

// Takes a size by rule to the grid, saying so where that changes it.
void toGrid(Size& size, Length value, Length grid) {
    if (!nearlyEqual(value, size.value)) {
        link(size, RuleId::SizeOnGrid, grid, {}, value);
    }
}

// Puts the maker's own size, if any, over what the rule gave.
void state(Size& size, const std::optional<StatedSize>& stated) {
    if (!stated) {
        return;
    }
    size.state = stated->state;
    const Length ruled = size.value;
    switch (stated->state) {
        case SizeState::RulePlusOffset:
            link(size, RuleId::StatedOffset, ruled, stated->value, ruled + stated->value);
            break;
        case SizeState::AsFound:
            link(size, RuleId::AsFound, ruled, {}, stated->value);
            break;
        case SizeState::ByRule:
        case SizeState::Stated:
            link(size, RuleId::StatedOver, ruled, {}, stated->value);
            break;
    }
}

Size tenonThickness(const TenonedSection& section, const SizingGuide& guide) {
    Size size;
    if (isLetIn(section.role)) {
        const Length shoulder = guide.rules[RuleId::SlatTenonShoulder].length();
        const Length left = section.thickness - shoulder * 2;
        link(size, RuleId::SlatTenonShoulder, section.thickness, shoulder, left);
        link(size, RuleId::ChiselNearest, left, {}, chiselWithin(guide.rack, left));
    } else {
        const Length share = section.thickness * guide.rules[RuleId::TenonThicknessShare].value;
        link(size, RuleId::TenonThicknessShare, section.thickness, {}, share);
        link(size, RuleId::ChiselNearest, share, {}, nearestChisel(guide.rack, share));
    }
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

void sizeThrough(SizedJoint& joint,
                 Length depthThere,
                 const SizingGuide& guide,
                 const StatedSizes& stated) {
    Size& projection = joint.tenon.projection;
    link(projection,
         RuleId::ThroughProjection,
         {},
         {},
         guide.rules[RuleId::ThroughProjection].length());
    state(projection, stated[SizeName::Projection]);
    link(joint.tenon.length,
         RuleId::ThroughLength,
         depthThere,
         projection.value,
         depthThere + projection.value);
    link(joint.mortiseDepth, RuleId::MortiseThrough, depthThere, {}, depthThere);
}

void sizeBlind(SizedJoint& joint,
               const TenonedSection& section,
               Length depthThere,
               const SizingGuide& guide,
               const StatedSizes& stated) {
    joint.tenon.length = blindLength(section, depthThere, guide);
    state(joint.tenon.length, stated[SizeName::TenonLength]);
    const Length extra = guide.rules[RuleId::MortiseDepthExtra].length();
    const Length length = joint.tenon.length.value;
    link(joint.mortiseDepth, RuleId::MortiseDepthExtra, length, extra, length + extra);
    state(joint.mortiseDepth, stated[SizeName::MortiseDepth]);
}

}  // namespace

Length nearestChisel(std::span<const Length> rack, Length size) {
    return *std::min_element(rack.begin(), rack.end(), [size](Length a, Length b) {
        return std::abs((a - size).mm()) < std::abs((b - size).mm()) - 1e-9;
    });
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

SizedJoint sizeMortiseAndTenon(JointKind kind,
                               const TenonedSection& section,
                               Length depthThere,
                               const SizingGuide& guide,
                               const StatedSizes& stated) {
    SizedJoint joint;
    Tenon& tenon = joint.tenon;
    tenon.thickness = tenonThickness(section, guide);
    state(tenon.thickness, stated[SizeName::TenonThickness]);

    const Size edge = edgeShoulder(section, guide);
    tenon.width = tenonWidth(section, tenon.thickness.value, edge, guide);
    state(tenon.width, stated[SizeName::TenonWidth]);

    Shoulders& shoulders = tenon.shoulders;
    shareOut({section.thickness,
              shoulders.faceSide,
              tenon.thickness,
              shoulders.backSide,
              "tenon thickness and the shoulders at face side and back side"},
             stated[SizeName::ShoulderFaceSide],
             stated[SizeName::ShoulderBackSide],
             kind == JointKind::BareFaced,
             joint.troubles);
    shareOut({section.width,
              shoulders.faceEdge,
              tenon.width,
              shoulders.backEdge,
              "tenon width and the shoulders at face edge and back edge"},
             stated[SizeName::ShoulderFaceEdge],
             stated[SizeName::ShoulderBackEdge],
             false,
             joint.troubles);

    if (kind == JointKind::Through) {
        sizeThrough(joint, depthThere, guide, stated);
    } else {
        sizeBlind(joint, section, depthThere, guide, stated);
    }
    link(joint.mortiseWidth, RuleId::MortiseAsTenon, {}, {}, tenon.thickness.value);
    state(joint.mortiseWidth, stated[SizeName::MortiseWidth]);
    link(joint.mortiseLength, RuleId::MortiseAsTenon, {}, {}, tenon.width.value);
    state(joint.mortiseLength, stated[SizeName::MortiseLength]);
    return joint;
}

}  // namespace shoulderline
