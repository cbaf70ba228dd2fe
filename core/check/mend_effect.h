#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/check/finding.h"
#include "core/check/strength.h"

namespace shoulderline {

// What a piece is resolved and judged with.
struct Workbench {
    const RuleBook& rules;
    const Workshop& workshop;
    const SpeciesTable& species;
    const StrengthBook& book;
};

// A size of a joint before and after a mend, in words and millimetres.
struct ChangedSize {
    std::string name;
    Length before;
    Length after;
};

// What a mend does to one of the joints that its finding is about.
struct MendedJoint {
    std::string name;
    std::vector<ChangedSize> sizes;
    JointStrength before;
    JointStrength after;

    // How many times as strong in bending; none without estimates. Where either is not covered by a
    // test the figure ranks only.
    [[nodiscard]] std::optional<double> times() const;
    [[nodiscard]] bool isCovered() const { return before.isCovered && after.isCovered; }
};

struct MendEffect {
    std::vector<MendedJoint> joints;
    std::size_t mustMendBefore = 0;
    std::size_t mustMendAfter = 0;
};

// Tries the mend on the piece: none where it has no edit, or the edit cannot be applied. Resolves
// and checks the piece once: for what is looked at, not for every finding.
[[nodiscard]] std::optional<MendEffect> effectOf(const Piece& piece,
                                                 const ResolvedPiece& resolved,
                                                 const Finding& finding,
                                                 const Mend& mend,
                                                 const Workbench& bench);

// The effects of the mends of one finding, in their order; none where it has no edit or was not
// tried.
using FindingEffects = std::vector<std::optional<MendEffect>>;
// Those of all findings that are about joints. Each costs about as much as the piece itself, so
// that of a piece of thousands of parts only the first are tried, or none.
[[nodiscard]] std::vector<FindingEffects> effectsOf(const Piece& piece,
                                                    const ResolvedPiece& resolved,
                                                    const std::vector<Finding>& findings,
                                                    const Workbench& bench);

// One line for each joint, in the piece's style: "front rail into front post: tenon length 1 5/8 to
// 1 1/4; bends at 226 to 401, now 180 to 320 N m".
[[nodiscard]] std::vector<std::string> effectLines(const Piece& piece, const MendEffect& effect);

}  // namespace shoulderline
