#pragma once

namespace shoulderline {

// How a number came to be: worked out by rule, by rule with an offset of the maker's, stated, or
// found at the bench.
enum class SizeState { ByRule, RulePlusOffset, Stated, AsFound };

}  // namespace shoulderline
