#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/piece/piece.h"
#include "core/resolve/resolved_piece.h"
#include "core/timber/movement.h"
#include "core/timber/species.h"

namespace shoulderline {

// The driest and the dampest moisture content of a year, in percent, and where they come from.
struct Season {
    double dry = 0.0;
    double damp = 0.0;
    std::string source;
    std::vector<std::string> troubles;  // stated air that cannot be worked out, one sentence each
};

// What the piece's maker stated of its air, worked out; for an air of which nothing is stated, 30 %
// (dry) and 60 % (damp) of relative humidity at 21 degrees Celsius: heated rooms over a year,
// common practice.
[[nodiscard]] Season seasonOf(const Piece& piece);

// How the growth rings lie to the width and to the thickness of a part cut so.
[[nodiscard]] RingDirection ringsAcrossWidth(Cut cut);
[[nodiscard]] RingDirection ringsAcrossThickness(Cut cut);

// By how much one part grows across the grain from the driest to the dampest, in millimetres; none
// where its species has no published figure.
struct PartMovement {
    std::optional<double> width;
    std::optional<double> thickness;
    std::optional<double> widthCoefficient;  // per 1 % of moisture content
};

struct MovementReport {
    Season season;
    std::vector<PartMovement> parts;  // by part
};

[[nodiscard]] MovementReport movementReport(const Piece& piece,
                                            const ResolvedPiece& resolved,
                                            const SpeciesTable& species);

// How far apart, across the grain of `part`, lie the outermost places where other parts hold it:
// from middle to middle of the mouths in it, or of what it rests on. Where the maker states holes for
// the screws that fix it down, those that are not slotted count instead of what it rests on. Zero
// where fewer than two hold it.
struct HeldApart {
    double distance = 0.0;            // millimetres
    std::vector<std::size_t> joints;  // the two outermost
    bool isLetIn = false;             // wood joints; else it rests on them
};
[[nodiscard]] HeldApart heldApart(const ResolvedPiece& resolved,
                                  std::size_t part,
                                  const std::vector<std::size_t>& jointsOnPart);

// Which parts are joined to which, a panel in its grooves left out. The piece must outlive it.
class PartGraph {
  public:
    explicit PartGraph(const ResolvedPiece& resolved);

    // Whether the two that hold `part` apart are tied to one another by parts that do not give that
    // way: only then do they keep it from moving. What gives is as wide across its own grain, along
    // the held part's width, as half the distance between them.
    [[nodiscard]] bool areTied(std::size_t part, const HeldApart& apart) const;

  private:
    const ResolvedPiece& resolved_;
    std::vector<std::vector<std::size_t>> next_;
};

}  // namespace shoulderline
