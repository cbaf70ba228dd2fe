#pragma once

#include "core/geometry/body.h"

namespace shoulderline::testing {

// What the easings take off a body.
inline double taken(const Body& body) {
    Body whole = body;
    whole.easings.clear();
    return whole.volume().value() - body.volume().value();
}

inline double volumeOfPieces(const Body& body) {
    double volume = 0.0;
    for (const ConvexSolid& piece : body.pieces()) {
        volume += piece.volume();
    }
    return volume;
}

}  // namespace shoulderline::testing
