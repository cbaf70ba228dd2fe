#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/joint/screws.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Screws that are alike: through the same stated part into the same other, of one size.
struct NeededScrews {
    std::string through;  // stated names
    std::string into;
    Length diameter;  // of the hole that they slip through
    SoldScrew screw;
    int quantity = 0;
    std::vector<std::size_t> joints;  // indices in ResolvedPiece::joints, each once; none for holes
                                      // that a part has by itself
    std::vector<std::size_t> parts;   // with the holes; likewise in ResolvedPiece::parts
    std::vector<std::size_t> held;    // that they go into

    friend bool operator==(const NeededScrews&, const NeededScrews&) = default;
};

// Of joints that are screwed, in their order, then through holes that parts have by themselves. A
// screw goes from under its head to the foot of its pilot hole (soldScrew() has the lengths that
// there are to buy); behind a hole of a part's own, as deep as the rule for screws has it, within
// what leaves a floor. Holes that nothing lies behind take none.
[[nodiscard]] std::vector<NeededScrews> screwsNeeded(const ResolvedPiece& resolved, bool inInches);

// That of one joint; none for one that is not screwed.
[[nodiscard]] std::optional<SoldScrew> screwOf(const ResolvedPiece& resolved,
                                               std::size_t joint,
                                               bool inInches);

// Whether it is told by its gauge number rather than by its diameter: in inches, where it has one.
[[nodiscard]] bool hasGauge(const SoldScrew& screw, const LengthStyle& style);

// "screw No. 8" where it is told by its gauge, else "screw".
[[nodiscard]] std::string screwName(const SoldScrew& screw, const LengthStyle& style);

// As one asks for it in a shop: "No. 8 × 1 1/4", "4.5 × 35".
[[nodiscard]] std::string screwText(const SoldScrew& screw,
                                    Length diameter,
                                    const LengthStyle& style);

}  // namespace shoulderline
