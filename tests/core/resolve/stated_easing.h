#pragma once

#include "core/piece/shape.h"

namespace shoulderline::testing {

// An easing of the whole of an arris, as a maker states it.
inline EasingStatement easing(EasingKind kind, Arris at, const char* size) {
    EasingStatement stated;
    stated.kind = kind;
    stated.at = at;
    stated.size = size;
    return stated;
}

}  // namespace shoulderline::testing
