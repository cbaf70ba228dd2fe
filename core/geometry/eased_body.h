#pragma once

#include <span>
#include <vector>

#include "core/geometry/body.h"

namespace shoulderline {

// Where `easings` take arrises off the body, whatever easings it has itself; nothing where they
// cannot be made.
[[nodiscard]] std::vector<EasedStretch> stretchesOf(const Body& body,
                                                    std::span<const Easing> easings);

// Whether a point lies in what the stretches took away, by more than a thousandth of a millimetre.
[[nodiscard]] bool isEasedAway(std::span<const EasedStretch> stretches, Vec3 p);

// Whether it is a straight blank worked to planes, a leg turned round or a rail with ends cut to an
// angle: before its arrises are eased its whole solid is its one piece.
[[nodiscard]] bool isTurned(const Body& body);

// The convex pieces of a body as it is looked at over and over: those of a shaped one keep the wood
// of its eased arrises, for they are many and take long to ease; of others as Body::pieces() has
// them.
[[nodiscard]] std::vector<ConvexSolid> quickPieces(const Body& body);

// The pieces of a body, eased, that lie across x.
[[nodiscard]] std::vector<ConvexSolid> piecesAcross(const Body& body, double x);

}  // namespace shoulderline
