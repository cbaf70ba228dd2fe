#pragma once

#include <optional>

#include "core/joint/joint_sizing.h"

namespace shoulderline {

// Adds a link to the chain; its value becomes the size.
void link(Size& size, RuleId rule, Length a, Length b, Length value);

// Takes a size by rule to the grid, saying so where that changes it.
void toGrid(Size& size, Length value, Length grid);

// Puts the maker's own size, if any, over what the rule gave.
void state(Size& size, const std::optional<StatedSize>& stated);

// A share of `whole`, by the rule's figure.
[[nodiscard]] Size shareOf(Length whole, RuleId rule, const SizingGuide& guide);

// A fixed length, the rule's figure, on the maker's grid: figures of the trade are in inches. A
// house rule's is as the maker states it.
[[nodiscard]] Length onGrid(RuleId rule, const SizingGuide& guide);
[[nodiscard]] Size fixedSize(RuleId rule, const SizingGuide& guide);

// The chisel or bit nearest to `size`; of two equally near ones the narrower. `rack` ascending, not
// empty.
[[nodiscard]] Length nearestOn(std::span<const Length> rack, Length size);

}  // namespace shoulderline
