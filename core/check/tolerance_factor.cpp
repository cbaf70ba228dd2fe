#include "core/check/tolerance_factor.h"

#include <cmath>
#include <limits>

#include <boost/math/distributions/non_central_t.hpp>
#include <boost/math/distributions/normal.hpp>

namespace shoulderline {

double toleranceFactor(int count, double confidence, double proportion) {
    const auto isShare = [](double share) { return share > 0.0 && share < 1.0; };
    if (count < 2 || !isShare(confidence) || !isShare(proportion)) {
        return std::numeric_limits<double>::quiet_NaN();
    }
    const double root = std::sqrt(static_cast<double>(count));
    const double z = boost::math::quantile(boost::math::normal(), proportion);
    const boost::math::non_central_t distribution(count - 1, z * root);
    return boost::math::quantile(distribution, confidence) / root;
}

}  // namespace shoulderline
