#include "core/resolve/pegs.h"

#include <algorithm>
#include <tuple>

#include "core/geometry/box_solids.h"
#include "core/resolve/frames.h"
#include "core/resolve/holes.h"

namespace shoulderline {

std::optional<ResolvedCut> workOutPegMortise(const CutStatement& cut,
                                             const Vec3& size,
                                             const Place& place,
                                             Evaluation& evaluation) {
    const CutAxes axes = axesOn(cut.face);
    const std::string name(wordFor(cut.kind));
    const double whole = size[axes.into];
    const std::optional<Length> along =
        evaluation.length(cut.along, place, name + ": place along", Length());
    const std::optional<Length> across =
        evaluation.length(cut.across, place, name + ": place across", Length());
    const std::optional<Length> side = evaluation.size(cut.width, place, name + ": side");
    const std::optional<Length> depth =
        evaluation.size(cut.depth, place, name + ": depth", Length::mm(whole));
    const std::optional<Length> proud =
        evaluation.length(cut.proud, place, name + ": how far its peg stands proud", Length());
    const bool isKnown = along && across && side && depth && proud;
    if (!isKnown) {
        return std::nullopt;
    }
    if (proud->mm() < 0.0) {
        evaluation.trouble(place, name + ": its peg would end below the face");
        return std::nullopt;
    }
    ResolvedCut made;
    made.kind = cut.kind;
    made.face = cut.face;
    made.note = cut.note;
    made.isThrough = depth->mm() >= whole - kLengthTolerance.mm();
    const double deep = made.isThrough ? whole : depth->mm();
    Box& box = made.box;
    for (const auto& [axis, from, at] : {std::tuple{axes.along, cut.alongFrom, *along},
                                         std::tuple{axes.across, cut.acrossFrom, *across}}) {
        box.min[axis] = lowOnAxis(from, at.mm(), side->mm(), size[axis], true);
        box.max[axis] = box.min[axis] + side->mm();
        if (box.min[axis] >= size[axis] || box.max[axis] <= 0.0) {
            const bool isAlong = axis == axes.along;
            evaluation.trouble(
                place,
                "a " + name + " of it lies outside the wood: its middle is " +
                    evaluation.shown(Length::mm((box.min[axis] + box.max[axis]) / 2)) +
                    (isAlong ? " along" : " across") + " the face, which is " +
                    evaluation.shown(Length::mm(size[axis])) + (isAlong ? " long" : " wide"));
            return std::nullopt;
        }
    }
    box.min[axes.into] = axes.fromHigh ? whole - deep : 0.0;
    box.max[axes.into] = box.min[axes.into] + deep;
    made.peg = ResolvedPeg{0, *side, Length::mm(deep), *proud};
    return made;
}

Box pegIn(const ResolvedCut& cut) {
    Box peg = cut.box;
    const auto [axis, way] = inwardOf(cut.face);
    const double proud = cut.peg ? cut.peg->proud.mm() : 0.0;
    (way > 0.0 ? peg.min : peg.max)[axis] -= way * proud;
    return peg;
}

bool pinsTenon(const ResolvedCut& cut, const MortiseSolid& mortise) {
    const int into = inwardOf(mortise.face).axis;
    const double slack = kLengthTolerance.mm();
    return cut.peg && inwardOf(cut.face).axis != into && overlap(cut.box, mortise.tenon) &&
           cut.box.min[into] >= mortise.tenon.min[into] - slack &&
           cut.box.max[into] <= mortise.tenon.max[into] + slack;
}

std::vector<std::size_t> pinnedBy(const ResolvedPart& part, const ResolvedCut& cut) {
    std::vector<std::size_t> joints;
    for (const MortiseSolid& mortise : part.mortises) {
        const bool isKnown = std::find(joints.begin(), joints.end(), mortise.joint) != joints.end();
        if (!isKnown && pinsTenon(cut, mortise)) {
            joints.push_back(mortise.joint);
        }
    }
    return joints;
}

}  // namespace shoulderline
