#pragma once

#include <string>

#include "core/check/finding.h"
#include "core/check/strength_book.h"
#include "core/piece/piece.h"
#include "core/resolve/resolve.h"
#include "core/timber/species.h"

namespace shoulderline::testing {

inline constexpr double kInch = Length::kMmPerInch;

// The rule book, workshop, species and strength book that ship with the program. Abort the test
// program where they cannot be read.
[[nodiscard]] const RuleBook& ruleBook();
[[nodiscard]] const Workshop& workshop();
[[nodiscard]] const SpeciesTable& speciesTable();
[[nodiscard]] const StrengthBook& strengthBook();

// The whole text of a file, its path given from the top of the repository.
[[nodiscard]] std::string textOf(const std::string& path);

// The piece in PATH.shoulder, the path given from the top of the repository.
[[nodiscard]] Piece pieceAt(const std::string& path);

// samples/NAME.shoulder, read.
[[nodiscard]] Piece sample(const std::string& name);
inline constexpr const char* kSamples[] = {"armchair",
                                           "side_chair",
                                           "bench",
                                           "table",
                                           "luggage_stand",
                                           "chart_cabinet",
                                           "raked_chair",
                                           "pilot_stool",
                                           "bed_frame"};

// Two 2 in square posts, 20 in apart from face to face in width, and a rail 7/8 x 3 between them,
// flush in front. Stated in inches.
[[nodiscard]] Piece twoPostsAndARail();

[[nodiscard]] ResolvedPiece resolved(const Piece& piece);
[[nodiscard]] std::vector<Finding> findings(const Piece& piece);

// The part, joint or stated part of a name; fails the test where there is none.
[[nodiscard]] const ResolvedPart& partNamed(const ResolvedPiece& piece, const std::string& name);
[[nodiscard]] const ResolvedJoint& jointNamed(const ResolvedPiece& piece, const std::string& name);
[[nodiscard]] Part& statedPart(Piece& piece, const std::string& name);
[[nodiscard]] Measure& statedMeasure(Piece& piece, const std::string& name);

// The findings of one rule.
[[nodiscard]] std::vector<Finding> ofRule(const std::vector<Finding>& findings, RuleId rule);

}  // namespace shoulderline::testing
