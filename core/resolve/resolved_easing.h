#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/geometry/body.h"
#include "core/measure/length.h"
#include "core/piece/words.h"

namespace shoulderline {

// An easing as it is made: what is stated of it, worked out. Stops are the places along the part
// where it has come to nothing, from the start of the body; none where it runs through.
struct ResolvedEasing {
    EasingKind kind = EasingKind::Chamfer;
    Arris at = Arris::FaceSideFaceEdge;
    Length size;
    Length second;
    std::optional<Length> from = std::nullopt;
    std::optional<Length> to = std::nullopt;
    Length runOut;
    std::string note = {};
    friend bool operator==(const ResolvedEasing&, const ResolvedEasing&) = default;
};

// What it takes off a body: four easings for all along, else one.
[[nodiscard]] std::vector<Easing> easingsOf(const ResolvedEasing&);

// Whether it lies along the part, and may be stopped.
[[nodiscard]] bool isAlong(Arris);

}  // namespace shoulderline
