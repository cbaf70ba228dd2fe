#pragma once

#include <string>

#include <nlohmann/json_fwd.hpp>

#include "core/resolve/joint_angles.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Figures as the sizes of a piece give them, to six places and never -0; lengths in millimetres.
[[nodiscard]] double rounded(double value);
[[nodiscard]] double number(Length length);

// Puts an angle into `object`, in degrees and by how far it rises over a run of one.
void addAngle(nlohmann::ordered_json& object, const std::string& name, Angle angle);

// What shapes a part beyond its blank: an end that is cut to an angle, its bow with the work that
// it takes, an eased arris, a hole or a peg mortise as stated.
[[nodiscard]] nlohmann::ordered_json endJson(const EndAngles& angles);
[[nodiscard]] nlohmann::ordered_json bendJson(const ResolvedPart& part, const RuleBook& rules);
[[nodiscard]] nlohmann::ordered_json easingJson(const ResolvedEasing& easing);
[[nodiscard]] nlohmann::ordered_json holeJson(const ResolvedCut& cut);
[[nodiscard]] nlohmann::ordered_json pegJson(const ResolvedCut& cut);

}  // namespace shoulderline
