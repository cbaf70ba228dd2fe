#pragma once

#include <string>
#include <vector>

#include "core/check/finding.h"
#include "core/check/mend_effect.h"

namespace shoulderline {

// The findings as one JSON object, described by resources/schema/findings.schema.json: lengths in
// millimetres, stable order, final newline. `effects`: of the mends, as effectsOf() gives them;
// empty for none.
[[nodiscard]] std::string findingsJson(const std::vector<Finding>& findings,
                                       const ResolvedPiece& resolved,
                                       const std::vector<FindingEffects>& effects = {});

// The findings as text to read, one with its mends to a block; "nothing to mend" where there are
// none.
[[nodiscard]] std::string findingsText(const std::vector<Finding>& findings);

}  // namespace shoulderline
