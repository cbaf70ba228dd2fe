#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/check/strength_book.h"
#include "core/resolve/resolved_piece.h"
#include "core/timber/species.h"

namespace shoulderline {

// A load as the piece is judged by it: one of the book's where it has the thing that is loaded (a
// seat, a back that rises over it, arms, legs), or the maker's own.
struct Load {
    std::string name;
    LoadKind kind = LoadKind::Stated;
    Side towards = Side::Back;  // of a stated one; else as its kind says
    double newtons = 0.0;       // level; down for what presses down
    double seatNewtons = 0.0;   // down on the seat
    double level = 0.0;         // above the floor, where it acts level; millimetres
    std::size_t part = 0;       // of a stated one: what it acts on
    bool isRepeated = false;
    bool isTipping = false;  // the force that just tips the piece, less than its source asks
    std::string source;
};

// What one load asks of one joint.
struct Demand {
    std::size_t load = 0;
    double newtonMetres = 0.0;
    double shearNewtons = 0.0;
};

// The loads, and what they ask of each joint, by its index. A load that reaches no joint is left
// out, but for the maker's own, which is then told in `troubles`, one sentence each.
struct CarriedLoads {
    std::vector<Load> loads;
    std::vector<std::vector<Demand>> demands;
    std::vector<std::string> troubles;
};

// Carries the loads to the joints by statics. A level force at a height is shared equally by the
// frames of its body that stand in its way, and bends their joints as solveSway() has it; the
// front foot rolls under a load on the back, all feet are held under others. A seat's load is
// shared by the rails at its level, of either way by itself, each with its ends held fast: P L / 8
// and P / 2. So is a load that presses down on a part with a tenon at each end.
[[nodiscard]] CarriedLoads carryLoads(const Piece& piece,
                                      const ResolvedPiece& resolved,
                                      const SpeciesTable& species,
                                      const StrengthBook& book);

}  // namespace shoulderline
