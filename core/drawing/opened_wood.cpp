#include "core/drawing/opened_wood.h"

#include <vector>

#include "core/geometry/box_solids.h"
#include "core/geometry/carved_box.h"

namespace shoulderline {

bool isOpenAcrossArris(const ResolvedPart& part, const Box& hollow) {
    const Box blank = part.bodyBox();
    const double slack = kLengthTolerance.mm();
    int open = 0;  // axes at whose sides it is
    for (int axis = 0; axis < 3; ++axis) {
        const bool isOpen = hollow.min[axis] < blank.min[axis] + slack ||
                            hollow.max[axis] > blank.max[axis] - slack;
        open += isOpen ? 1 : 0;
    }
    return open > 1 && overlap(blank, hollow);
}

std::optional<Polyhedron> openedWood(const ResolvedPart& part) {
    if (!part.body.isBox()) {
        return std::nullopt;
    }
    std::vector<Box> hollows;
    for (const MortiseSolid& mortise : part.mortises) {
        if (isOpenAcrossArris(part, mortise.box)) {
            if (mortise.exact) {
                return std::nullopt;
            }
            hollows.push_back(mortise.box);
        }
    }
    for (const ResolvedCut& cut : part.cuts) {
        const bool isBox = cut.kind != CutKind::Bore && !cut.exact;
        if (isBox && isOpenAcrossArris(part, cut.box)) {
            hollows.push_back(cut.box);
        }
    }
    return hollows.empty() ? std::nullopt : carvedBox(part.bodyBox(), hollows);
}

}  // namespace shoulderline
