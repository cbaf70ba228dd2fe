#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/check/strength_book.h"
#include "core/piece/edit.h"
#include "core/resolve/resolved_piece.h"
#include "core/timber/species.h"

namespace shoulderline {

enum class Severity { MustMend, LookAt, Note };

// "must mend", "look at", "note".
[[nodiscard]] std::string_view wordFor(Severity);

// A way to mend a finding, in numbers ("shorten the tenon to 1 3/16"); with the edit that does it
// where one edit does.
struct Mend {
    std::string text;
    std::optional<Edit> edit;
};

// One result of a check. `value` and `limit` are in `unit` ("mm", "ratio" or "deg"; empty when the
// finding has no figure).
struct Finding {
    RuleId rule = RuleId::PieceResolves;
    Severity severity = Severity::Note;
    std::vector<std::size_t> parts;         // indices in ResolvedPiece::parts; may be empty
    std::optional<std::size_t> joint;       // index in ResolvedPiece::joints
    std::optional<std::size_t> otherJoint;  // second joint, where two are in one another's way
    std::string measure;                    // the measure it is about, or empty
    std::string message;  // one sentence: which part, what, how much, what the rule asks
    double value = 0.0;
    double limit = 0.0;
    std::string unit;
    std::string source;
    std::vector<Mend> mends;
};

// Puts the findings that are alike for several of a pair or set into one, and replaces {part},
// {other} and {joint} in each message by the names of what it is about: the stated name where
// several are meant. {part} is parts[0], {other} parts[1]; each one further stands for another like
// it.
[[nodiscard]] std::vector<Finding> gather(std::vector<Finding> findings,
                                          const ResolvedPiece& resolved);

// All findings on a resolved piece, must mend first, then look at, then notes; within these in the
// order of joints and parts. Lengths in messages are shown in the piece's style.
[[nodiscard]] std::vector<Finding> check(const Piece& piece,
                                         const ResolvedPiece& resolved,
                                         const SpeciesTable& species,
                                         const StrengthBook& book);

}  // namespace shoulderline
