#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// One proportion of a joint, as a gauge shows it and the check judges it: the figure, and the range
// that the rule book allows. A length in millimetres, or a plain ratio.
struct Proportion {
    RuleId rule = RuleId::TenonThicknessShare;
    std::string subject;  // "tenon thickness to stock"
    double value = 0.0;
    std::optional<double> low;
    std::optional<double> high;
    bool isLength = false;

    // Outside the range by more than a micrometre, or a ratio by more than a thousandth.
    [[nodiscard]] bool isLow() const;
    [[nodiscard]] bool isHigh() const;
};

// The proportions of a joint: tenon thickness to stock, width to thickness, length to what it
// enters and to its thickness, the wall beside the mortise, the floor under it, the distance to the
// end, the smallest shoulder. Those that its kind has no rule for are left out (a slat's tenon is
// not measured against the thickness of what it enters); none for a joint that rests.
[[nodiscard]] std::vector<Proportion> proportionsOf(const ResolvedPiece& resolved,
                                                    std::size_t joint);

// Wood beside the mouth of a joint, to the two faces of the mortised part that its long edges lie
// along: the less of both; below zero where the mouth runs off the face. Millimetres.
[[nodiscard]] double wallBeside(const ResolvedPiece& resolved, const ResolvedJoint& joint);

// Wood between the bottom of the mortise and the far face; zero or less where it breaks through.
// Millimetres.
[[nodiscard]] double floorUnder(const ResolvedPiece& resolved, const ResolvedJoint& joint);

}  // namespace shoulderline
