#pragma once

#include <string>
#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// One setting of a tool for what is cut in a part by itself, for no joint: its grooves, rabbets and
// notches, its bores, screw holes and peg mortises, its eased arrises.
struct PartSetUp {
    RuleId tool = RuleId::SetUpBit;
    std::string work;     // "bore", "slot", "chamfer, face side and face edge"
    std::string cutter;   // "3/8"; empty where none is told
    std::string setting;  // "centre 1 from the face edge, through, at 3 and 9 from the left end"
    friend bool operator==(const PartSetUp&, const PartSetUp&) = default;
};

// In the order stated, cuts before easings; holes alike but for their place along the part as one.
// A bore that tilts both ways is set by one tilt of the table, with the part turned on it (common
// practice; the angle of both as for any compound angle, see ResolvedHole). An arris is taken off
// by router where one bit does it: even, and larger than a few shavings; else by plane to gauged
// lines (common practice).
[[nodiscard]] std::vector<PartSetUp> partSetUpsOf(const ResolvedPart& part,
                                                  const LengthStyle& style);

// "bore: bit 3/8, in the drill press or brace; centre 1 from the face edge, through, at 3 from the
// left end".
[[nodiscard]] std::string partSetUpText(const PartSetUp& setUp, const RuleBook& rules);

// The cautions of their tools, each once, with the tool's name.
[[nodiscard]] std::vector<std::string> cautionsFor(const std::vector<PartSetUp>& setUps,
                                                   const RuleBook& rules);

}  // namespace shoulderline
