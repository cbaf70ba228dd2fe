#pragma once

namespace shoulderline {

// The exact one-sided factor k of a normal distribution: mean - k s of a sample of `count` lies
// with `confidence` below the value that a share `proportion` of all exceeds. k = t'(count - 1;
// confidence; z sqrt(count)) / sqrt(count), t' the noncentral t quantile, z the normal quantile of
// `proportion`. `count` at least 2, both shares between 0 and 1 (exclusive); outside, NaN.
// Source: the method of Eckelman, Uysal and Haviarova (2016), BioResources 11(3) 7162-7171.
[[nodiscard]] double toleranceFactor(int count, double confidence, double proportion);

}  // namespace shoulderline
