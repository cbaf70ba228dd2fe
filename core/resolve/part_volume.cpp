#include "core/geometry/box_solids.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

double volumeAsMade(const ResolvedPart& part) {
    std::vector<Box> wood{part.bodyBox()};
    for (const TenonSolid& tenon : part.tenons) {
        wood.push_back(tenon.box);
    }
    // What the mortises take is their union, as far as it lies in the wood: a mortise may run off
    // the part or into its neighbour.
    std::vector<Box> taken;
    for (const MortiseSolid& mortise : part.mortises) {
        for (const Box& solid : wood) {
            if (const std::optional<Box> shared = overlap(mortise.box, solid)) {
                taken.push_back(*shared);
            }
        }
    }
    return unionVolume(wood) - unionVolume(taken);
}

}  // namespace shoulderline
