#include "core/joint/grooved.h"

#include <algorithm>

#include "core/joint/size_chain.h"

namespace shoulderline {

namespace {

Size grooveWidth(const GroovedTask& task, const SizingGuide& guide) {
    Size width = shareOf(task.memberThickness, RuleId::GrooveWidth, guide);
    link(width, RuleId::ChiselNearest, width.value, {}, nearestOn(guide.rack, width.value));
    if (task.panelThickness < width.value - kLengthTolerance) {
        link(width, RuleId::TongueFills, task.panelThickness, {}, task.panelThickness);
    }
    return width;
}

Size roomFor(const GroovedTask& task, const SizingGuide& guide) {
    if (!task.isAcrossGrain) {
        return fixedSize(RuleId::PanelEndRoom, guide);
    }
    Size room = shareOf(task.panelAcross, RuleId::PanelRoom, guide);
    const Length step = guide.grid / 2;
    if (step > Length()) {
        toGrid(room, snapUp(room.value, step), step);
    }
    return room;
}

void sizeThicknesses(const GroovedTask& task,
                     const SizingGuide& guide,
                     const StatedSizes& stated,
                     GroovedEdge& edge) {
    edge.grooveWidth = grooveWidth(task, guide);
    state(edge.grooveWidth, stated[SizeName::GrooveWidth]);
    link(edge.tongueThickness,
         RuleId::TongueFills,
         task.panelThickness,
         {},
         std::min(edge.grooveWidth.value, task.panelThickness));
    state(edge.tongueThickness, stated[SizeName::TongueThickness]);
}

void tellOfTongue(Length boardThickness, GroovedEdge& edge) {
    if (edge.tongueThickness.value > boardThickness + kLengthTolerance) {
        edge.troubles.push_back("the tongue is thicker than its board");
    }
    if (edge.tongueThickness.value > edge.grooveWidth.value + kLengthTolerance) {
        edge.troubles.push_back("the tongue is thicker than its groove is wide");
    }
}

}  // namespace

std::vector<FurtherSize> GroovedEdge::further() const {
    return {{SizeName::TongueThickness, tongueThickness},
            {SizeName::TongueLength, tongueLength},
            {SizeName::GrooveWidth, grooveWidth},
            {SizeName::GrooveDepth, grooveDepth},
            {SizeName::Room, room}};
}

GroovedEdge sizeGrooved(const GroovedTask& task,
                        const SizingGuide& guide,
                        const StatedSizes& stated) {
    GroovedEdge edge;
    sizeThicknesses(task, guide, stated, edge);
    edge.room = roomFor(task, guide);
    state(edge.room, stated[SizeName::Room]);
    edge.grooveDepth = shareOf(edge.grooveWidth.value, RuleId::GrooveDepth, guide);
    const Length holds = edge.room.value * 2;
    if (edge.grooveDepth.value < holds) {
        link(edge.grooveDepth, RuleId::GrooveHolds, edge.room.value, {}, holds);
    }
    const Length most = task.memberDepth - guide.rules[RuleId::MortiseFloorLeast].length();
    if (most < edge.grooveDepth.value) {
        link(edge.grooveDepth, RuleId::MortiseFloorLeast, task.memberDepth, {}, most);
    }
    toGrid(edge.grooveDepth, snapDown(edge.grooveDepth.value, guide.grid), guide.grid);
    state(edge.grooveDepth, stated[SizeName::GrooveDepth]);

    link(edge.tongueLength,
         RuleId::StubLength,
         edge.grooveDepth.value,
         edge.room.value,
         edge.grooveDepth.value - edge.room.value);
    state(edge.tongueLength, stated[SizeName::TongueLength]);

    tellOfTongue(task.panelThickness, edge);
    if (edge.tongueLength.value <= kLengthTolerance) {
        edge.troubles.push_back("the room leaves no tongue in the groove");
    }
    return edge;
}

GroovedEdge sizeTongued(const TonguedTask& task,
                        const SizingGuide& guide,
                        const StatedSizes& stated) {
    const GroovedTask asPanel{
        task.thickness, task.width, true, task.groovedThickness, task.groovedWidth};
    GroovedEdge edge;
    sizeThicknesses(asPanel, guide, stated, edge);
    edge.room = roomFor(asPanel, guide);
    state(edge.room, stated[SizeName::Room]);
    link(edge.tongueLength, RuleId::TongueLaps, {}, {}, task.laps);
    link(edge.grooveDepth,
         RuleId::TongueRoom,
         task.laps,
         edge.room.value,
         task.laps + edge.room.value);
    state(edge.grooveDepth, stated[SizeName::GrooveDepth]);
    tellOfTongue(task.thickness, edge);
    if (stated[SizeName::TongueLength]) {
        edge.troubles.push_back(
            "the tongue is as long as the boards lap; the pitch of the boards says how far");
    }
    if (edge.grooveDepth.value >= task.groovedWidth) {
        edge.troubles.push_back("the groove is deeper than its board is wide");
    }
    return edge;
}

}  // namespace shoulderline
