#include "core/resolve/panel_placing.h"

#include <algorithm>

#include "core/resolve/box_placing.h"

namespace shoulderline {

namespace {

// The way between two boxes along an axis on which they stand apart.
Extent openingBetween(const Box& a, const Box& b, int axis) {
    const bool inOrder = a.centre()[axis] < b.centre()[axis];
    return inOrder ? Extent{a.max[axis], b.min[axis]} : Extent{b.max[axis], a.min[axis]};
}

GroovedEdge edgeIn(const Neighbour& around,
                   const Section& section,
                   double panelAcross,
                   bool isAcrossGrain,
                   int into,
                   int through,
                   const SizingGuide& guide,
                   const StatedSizes& stated) {
    GroovedTask task;
    task.panelThickness = section.thickness.value;
    task.panelAcross = Length::mm(panelAcross);
    task.isAcrossGrain = isAcrossGrain;
    task.memberThickness = Length::mm(around.box.size()[through]);
    task.memberDepth = Length::mm(around.box.size()[into]);
    return sizeGrooved(task, guide, stated);
}

}  // namespace

std::optional<PlacedPanel> placeFilling(const Part& part,
                                        const Fills& fills,
                                        const Section& section,
                                        const PanelFrame& frame,
                                        const SizingGuide& guide,
                                        const Place& place,
                                        Evaluation& evaluation) {
    const auto& around = frame.around;
    const std::optional<int> across = facingAxis(around[0].box, around[1].box);
    const std::optional<int> along = facingAxis(around[2].box, around[3].box);
    if (!across || !along || *across == *along) {
        evaluation.trouble(place,
                           "the four parts named do not stand around one opening, two and two "
                           "across from one another",
                           RuleId::FacesSquarely);
        return std::nullopt;
    }
    const int through = 3 - *across - *along;
    const Extent wide = openingBetween(around[0].box, around[1].box, *across);
    const Extent high = openingBetween(around[2].box, around[3].box, *along);
    PlacedPanel panel;
    std::array<GroovedEdge, 4> sized;
    for (std::size_t i = 0; i < 4; ++i) {
        const bool isEdge = i < 2;
        sized[i] = edgeIn(around[i],
                          section,
                          wide.max - wide.min,
                          isEdge,
                          isEdge ? *across : *along,
                          through,
                          guide,
                          frame.stated[i]);
        for (const std::string& trouble : sized[i].troubles) {
            evaluation.trouble(place, trouble);
        }
    }
    PlacedMember& member = panel.member;
    const bool isSet = fills.set.from != Side::Centre;
    member.faceSide = isSet ? fills.set.from : sideOf(through, through != 1);
    member.faceEdge =
        liesOn(part.faceEdge, *across) ? part.faceEdge : sideOf(*across, *across != 1);
    const auto lowFirst = [&](std::size_t first, int axis) {
        return around[first].box.centre()[axis] < around[first + 1].box.centre()[axis];
    };
    const std::size_t low = lowFirst(0, *across) ? 0 : 1;
    const std::size_t below = lowFirst(2, *along) ? 2 : 3;
    const std::size_t high0 = 1 - low;
    const std::size_t above = 5 - below;
    member.box.min[*across] = wide.min - sized[low].tongueLength.value.mm();
    member.box.max[*across] = wide.max + sized[high0].tongueLength.value.mm();
    member.box.min[*along] = high.min - sized[below].tongueLength.value.mm();
    member.box.max[*along] = high.max + sized[above].tongueLength.value.mm();
    // The groove lies where it is set; the panel stands out from it at its face side.
    const double tongue = sized[0].tongueThickness.value.mm();
    if (!putInFrom(member.box, through, fills.set, around[0].box, tongue, place, evaluation)) {
        return std::nullopt;
    }
    const std::optional<AxisWay> face = wayOf(member.faceSide);
    const double proud = section.thickness.value.mm() - tongue;
    if (face) {
        (face->way > 0 ? member.box.max : member.box.min)[through] += face->way * proud;
    }
    member.length = placedSize(Length::mm(member.box.size()[*along]));
    member.width = placedSize(Length::mm(member.box.size()[*across]));
    member.thickness = section.thickness;

    const Frame placed = frameOnBox(member.box, member.faceSide, member.faceEdge);
    const bool edgeIsHigh = placed.y[*across] < 0;  // the face edge lies at the high end
    const bool startIsHigh = placed.x[*along] < 0;
    panel.neighbours = {edgeIsHigh ? high0 : low,
                        edgeIsHigh ? low : high0,
                        startIsHigh ? above : below,
                        startIsHigh ? below : above};
    for (std::size_t i = 0; i < 4; ++i) {
        panel.edges[i] = sized[panel.neighbours[i]];
    }
    return panel;
}

}  // namespace shoulderline
