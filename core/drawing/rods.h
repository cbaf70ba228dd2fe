#pragma once

#include <string>
#include <vector>

#include "core/piece/edit.h"
#include "core/piece/piece.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

enum class RodKind { Heights, Widths, Depths };

// The axis of space that a rod lies along: 0 for x.
[[nodiscard]] int axisOf(RodKind kind);

// One line of a rod: a level, face or shoulder of the piece at `at` (millimetres along z, x or y).
struct RodLine {
    double at = 0.0;
    std::string name;  // the most telling of those that lie here: "side rail, upper, top"
    std::vector<std::string> others;  // the rest
    std::vector<std::size_t> parts;   // all parts that hang on it, indices in ResolvedPiece::parts
    bool isShoulder = false;          // a shoulder line between two parts
};

struct Rod {
    RodKind kind = RodKind::Heights;
    double from = 0.0;  // ends of the rod, millimetres
    double to = 0.0;
    std::vector<RodLine> lines;  // ascending, each place once
};

// The rod of the piece for one direction: every level, face and shoulder of parts that stand square
// to it; on that of heights also how low and how high parts come that lean.
[[nodiscard]] Rod rodOf(const Piece& piece, const ResolvedPiece& resolved, RodKind kind);

// What stating the line's place anew would change: the edit that puts it at `value` as typed ("16
// 3/4", or an expression), and the name of what it sets ("seat height"). Where the place is a
// measure alone, that measure is set; else the statement of the part itself. No `edit` where the
// line follows from others: `follows` then says from which.
struct RodHandle {
    std::string drives;  // the measure, or "front rail, top"
    std::optional<Edit> edit;
    std::string follows;
};
[[nodiscard]] RodHandle handleOf(const Piece& piece,
                                 const ResolvedPiece& resolved,
                                 const Rod& rod,
                                 std::size_t line,
                                 const Statement& value);

// The handle of a line moved `by` from where it is, as when it is dragged: a plain length is stated
// anew, an expression gets an offset.
[[nodiscard]] RodHandle handleMovedBy(
    const Piece& piece, const ResolvedPiece& resolved, const Rod& rod, std::size_t line, Length by);

// Whether each line of the rod has a handle with an edit.
[[nodiscard]] std::vector<bool> takingValues(const Piece& piece,
                                             const ResolvedPiece& resolved,
                                             const Rod& rod);

}  // namespace shoulderline
