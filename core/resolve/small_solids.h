#pragma once

#include <vector>

#include "core/resolve/small_parts.h"

namespace shoulderline {

// A small part of a joint driven home, in the joint's frame, and the way (unit) that it comes out
// again. It is driven once the joint is together, or stands in its tenon before (a wedge in a kerf
// of a blind tenon).
struct SmallSolid {
    SmallPartKind kind = SmallPartKind::Pin;
    ConvexSolid solid;
    Vec3 outward;
    bool isDrivenLast = true;
};

// The pins, plugs and wedges of a joint. A wedge in a kerf has a face on the kerf's inner side and
// fills kerf and flare at the end of its tenon; one outside lies between the edge of its tenon and
// the flared end of the mortise. Loose tenons and dowels, which nobody sees, are left out.
[[nodiscard]] std::vector<SmallSolid> smallSolidsOf(const ResolvedPiece& resolved,
                                                    std::size_t joint);

// Whether a cut of the joint's tenoned part is a kerf for a wedge.
[[nodiscard]] bool isWedgedKerf(const ResolvedPiece& resolved,
                                std::size_t joint,
                                const ResolvedCut& cut);

// The tenons of a joint once the wedges in their kerfs are driven, in the joint's frame: what lies
// outside a kerf is bent outwards, straight from the kerf's root to the flare at its end. In convex
// pieces that share no volume; none where no wedge is in a kerf, or where a tenon is no plain box.
[[nodiscard]] std::vector<ConvexSolid> spreadTenonsOf(const ResolvedPiece& resolved,
                                                      std::size_t joint);

}  // namespace shoulderline
