#pragma once

#include <string>
#include <vector>

#include "core/check/strength_report.h"

namespace shoulderline {

// What `shoulderline strength --json` prints, described by resources/schema/strength.schema.json:
// joints in the order of the report, figures only where the joint is covered by tests. Final
// newline.
[[nodiscard]] std::string strengthJson(const ResolvedPiece& resolved,
                                       const StrengthReport& report,
                                       const StrengthBook& book);

// The same as text to read.
[[nodiscard]] std::string strengthText(const ResolvedPiece& resolved,
                                       const StrengthReport& report,
                                       const StrengthBook& book);

// One clause on what a joint bears: "212 to 344 N m, glue face governs"; "rank 3 of 12" where it is
// ranked only; why there is no estimate.
[[nodiscard]] std::string strengthClause(const StrengthReport& report, std::size_t joint);

// One clause on how hard it is worked: "0.14 to 0.22 by 'leaning back, once'"; empty where no load
// reaches it or it is ranked only.
[[nodiscard]] std::string workingClause(const StrengthReport& report, std::size_t joint);

// The assumptions of an estimate, in the order of the book, and their sources, each once.
[[nodiscard]] std::vector<const AssumptionText*> assumptionTexts(const Assumptions& taken,
                                                                 const StrengthBook& book);

}  // namespace shoulderline
