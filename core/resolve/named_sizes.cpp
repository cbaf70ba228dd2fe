#include "core/resolve/named_sizes.h"

namespace shoulderline {

std::vector<NamedSize> namedSizes(const ResolvedJoint& joint) {
    const Tenon& tenon = joint.tenon;
    const Mortise& mortise = joint.mortise;
    std::vector<NamedSize> sizes{{"tenon thickness", &tenon.thickness},
                                 {"tenon width", &tenon.width},
                                 {"tenon length", &tenon.length},
                                 {"projection", &tenon.projection},
                                 {"shoulder at face side", &tenon.shoulders.faceSide},
                                 {"shoulder at back side", &tenon.shoulders.backSide},
                                 {"shoulder at face edge", &tenon.shoulders.faceEdge},
                                 {"shoulder at back edge", &tenon.shoulders.backEdge},
                                 {"mortise width", &mortise.width},
                                 {"mortise length", &mortise.length},
                                 {"mortise depth", &mortise.depth},
                                 {"mortise from face", &mortise.fromFace},
                                 {"mortise from end", &mortise.fromStart}};
    for (const FurtherSize& further : joint.further) {
        sizes.emplace_back(wordFor(further.name).data(), &further.size);
    }
    std::erase_if(sizes, [](const NamedSize& size) { return size.second->reasons.empty(); });
    return sizes;
}

}  // namespace shoulderline
