#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/geometry/box.h"
#include "core/geometry/frame.h"
#include "core/measure/angle.h"
#include "core/measure/length.h"

namespace shoulderline {

// What swings at one of its stations.
struct SwingPosition {
    std::string name;
    Angle lean;      // from upright, backwards
    Length behind;   // the bar's front behind the pivot
    Length contact;  // from the pivot up the back to where the bar meets it
    friend bool operator==(const SwingPosition&, const SwingPosition&) = default;
};

// A hole that was bored for what swings: for a pivot pin, or for a peg behind the bar.
struct SwingHole {
    std::size_t part = 0;  // index in ResolvedPiece::parts
    Box box;               // around it in the piece's space, as drawn
    Length diameter;
    std::optional<std::size_t> station = std::nullopt;  // the peg's, in `positions`; none: a pin's
    friend bool operator==(const SwingHole&, const SwingHole&) = default;
};

// A back that swings, and the bar that it leans on; in the piece's space. The parts stand as at
// position `at`.
struct ResolvedSwing {
    std::size_t assembly = 0;  // index in Piece::assemblies
    Vec3 pivot;
    Length back;                           // rear face of what leans behind the pivot, upright
    Length above;                          // the bar's top above the pivot
    std::vector<SwingPosition> positions;  // those in reach, at least one
    std::size_t at = 0;                    // index in `positions`
    std::vector<std::size_t> moving;       // indices in ResolvedPiece::parts, without the bar
    std::vector<std::size_t> leaning;      // those of them that meet the bar
    std::size_t bar = 0;
    Length spacer;                 // zero for none
    std::vector<SwingHole> holes;  // pins first, then pegs, part by part
    friend bool operator==(const ResolvedSwing&, const ResolvedSwing&) = default;

    // The frame of a part that swings, or of the bar, at another position or at any lean.
    [[nodiscard]] Frame swungTo(const Frame& frame, Angle lean) const;
    [[nodiscard]] Frame barAt(const Frame& frame, const SwingPosition& position) const;
};

}  // namespace shoulderline
