#pragma once

#include <functional>
#include <optional>
#include <string>

#include "core/check/checks.h"

namespace shoulderline {

// The edit that changes one stated cut of a part, by its index in Part::cuts; none where there is
// no such cut.
[[nodiscard]] std::optional<Edit> withCut(const CheckContext& context,
                                          std::size_t part,
                                          std::size_t cut,
                                          const std::function<void(CutStatement&)>& change);

// "bore", "screw hole (for the top)": what findings call a hole as stated.
[[nodiscard]] std::string nameOfHole(const ResolvedCut& cut);

// A finding on a hole of a part: its figure and its limit in millimetres, no message yet.
[[nodiscard]] Finding holeFinding(const CheckContext& context,
                                  RuleId rule,
                                  Severity severity,
                                  std::size_t part,
                                  double value,
                                  double limit);

// What places and sizes that mend a hole are rounded to: 1/32 in, or half a millimetre.
[[nodiscard]] Length holeStep(const CheckContext& context);

}  // namespace shoulderline
