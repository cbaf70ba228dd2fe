#include <algorithm>

#include "core/geometry/box_solids.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

namespace {

// Everything a box: exact and quick.
double volumeOfBoxes(const ResolvedPart& part, const std::vector<Box>& cuts) {
    std::vector<Box> wood{part.bodyBox()};
    for (const TenonSolid& tenon : part.tenons) {
        wood.push_back(tenon.box);
    }
    // What the cuts take is their union, as far as it lies in the wood: a mortise may run off the
    // part or into its neighbour.
    std::vector<Box> taken;
    for (const Box& cut : cuts) {
        for (const Box& solid : wood) {
            if (const std::optional<Box> shared = overlap(cut, solid)) {
                taken.push_back(*shared);
            }
        }
    }
    return unionVolume(wood) - unionVolume(taken);
}

}  // namespace

Polyhedron polyhedronOf(const TenonSolid& tenon, const Frame& frame) {
    return tenon.exact ? tenon.exact->toPolyhedron().transformed(frame)
                       : Polyhedron::box(tenon.box, frame);
}

double volumeAsMade(const ResolvedPart& part) {
    std::vector<Box> cuts;
    bool areBoxes = part.body.isBox();
    for (const MortiseSolid& mortise : part.mortises) {
        cuts.push_back(mortise.box);
        areBoxes = areBoxes && !mortise.exact;
    }
    for (const TenonSolid& tenon : part.tenons) {
        areBoxes = areBoxes && !tenon.exact;
    }
    for (const ResolvedCut& cut : part.cuts) {
        cuts.push_back(cut.box);
        areBoxes = areBoxes && cut.kind != CutKind::Bore && !cut.exact;
    }
    if (areBoxes) {
        return volumeOfBoxes(part, cuts);
    }
    std::vector<ConvexSolid> wood = part.body.pieces();
    std::vector<ConvexSolid> tenons;
    for (const TenonSolid& tenon : part.tenons) {
        tenons.push_back(tenon.solid());
    }
    std::vector<ConvexSolid> taken;
    const auto take = [&](const ConvexSolid& cut) {
        for (const std::vector<ConvexSolid>* solids : {&wood, &tenons}) {
            for (const ConvexSolid& solid : *solids) {
                if (std::optional<ConvexSolid> shared = intersection(cut, solid)) {
                    taken.push_back(std::move(*shared));
                }
            }
        }
    };
    for (const MortiseSolid& mortise : part.mortises) {
        take(mortise.solid());
    }
    for (const ResolvedCut& cut : part.cuts) {
        take(cut.solid());
    }
    // A body that could not be made came back as its blank, so its volume is there.
    return part.body.volume().value_or(0.0) + unionVolume(tenons) - unionVolume(taken);
}

}  // namespace shoulderline
