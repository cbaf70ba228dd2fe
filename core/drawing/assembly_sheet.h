#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheets.h"

namespace shoulderline {

// Parts that are glued up together: those of an assembly and of what is nested in it. Where they
// are two frames that are mirror twins (the sides of a chair), one of them.
struct GlueUp {
    std::size_t assembly = 0;         // index in Piece::assemblies
    std::vector<std::size_t> parts;   // indices in ResolvedPiece::parts, ascending
    std::vector<std::size_t> joints;  // glued in it; indices in ResolvedPiece::joints
    std::vector<std::size_t> later;   // joints that tie it to the rest, glued after it
    bool hasMirrorTwin = false;       // and so is made twice
};

// The assemblies of a piece, in the order stated; those of fewer than two parts are left out.
[[nodiscard]] std::vector<GlueUp> glueUpsOf(const Piece& piece, const ResolvedPiece& resolved);

// How many of its joints are glued: of those in which a part does but rest on another the ones that
// the maker says are glued.
[[nodiscard]] std::size_t gluedIn(const Piece& piece,
                                  const ResolvedPiece& resolved,
                                  const GlueUp& glueUp);

// What is glued into what, what is left for later, and what the clamps must span; a line each.
[[nodiscard]] std::vector<std::string> glueUpNotes(const Piece& piece,
                                                   const ResolvedPiece& resolved,
                                                   const GlueUp& glueUp);

// What its sheet is called.
[[nodiscard]] std::string titleOf(const Piece& piece, const GlueUp& glueUp);

// The assembly alone on paper: front and side elevation and plan in projection with its sizes over
// all, its parts by the numbers of the piece's own list, and the note on its glue-up. One that
// swings stands upright.
[[nodiscard]] Sheet assemblySheet(const Piece& piece,
                                  const ResolvedPiece& resolved,
                                  const GlueUp& glueUp,
                                  const SheetFrame& frame,
                                  const TextMetrics& metrics);

}  // namespace shoulderline
