#pragma once

#include <vector>

#include "core/measure/angle.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Whether a lean is one that a maker has to set: over a twentieth of a degree.
[[nodiscard]] bool isOutOfSquare(Angle lean);
// Whether a mortise is bored: it is set out by its centre and its diameter.
[[nodiscard]] bool isBored(const ResolvedPiece& resolved, const MortiseSolid& mortise);
// Whether it is bored out of square to the face that it enters.
[[nodiscard]] bool isLeaningBore(const ResolvedPiece& resolved, const MortiseSolid& mortise);
// Whether the part's sheet tells how deep a mortise goes along itself, as its tool's stop is set,
// and not square to the face.
[[nodiscard]] bool isDepthAlongIt(const ResolvedPiece& resolved,
                                  const ResolvedPart& part,
                                  const MortiseSolid& mortise);
// How deep that is, in a turned part from where the bit touches first; millimetres.
[[nodiscard]] double depthAlong(const ResolvedPiece& resolved,
                                const ResolvedPart& part,
                                const MortiseSolid& mortise);

// Whether two mortises of a part are alike but for their place along it.
[[nodiscard]] bool areAlike(const ResolvedPiece& resolved,
                            const ResolvedPart& part,
                            const MortiseSolid& a,
                            const MortiseSolid& b);
// Mortises that are alike but for their place along the part, in order along it.
struct MortiseRow {
    std::vector<const MortiseSolid*> mortises;
    bool isEven = false;  // three or more at one pitch
};
[[nodiscard]] std::vector<MortiseRow> rowsOn(Face face,
                                             const ResolvedPiece& resolved,
                                             const ResolvedPart& part);

}  // namespace shoulderline
