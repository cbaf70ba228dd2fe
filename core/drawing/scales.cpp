#include "core/drawing/scales.h"

#include <algorithm>
#include <functional>

#include "core/measure/number_text.h"

namespace shoulderline {

std::vector<double> standardScales(Unit unit) {
    if (unit == Unit::Inch) {
        return {1.0,
                1.0 / 2,
                1.0 / 4,
                1.0 / 5,
                1.0 / 8,
                1.0 / 10,
                1.0 / 16,
                1.0 / 20,
                1.0 / 32,
                1.0 / 50};
    }
    return {1.0, 1.0 / 2, 1.0 / 5, 1.0 / 10, 1.0 / 20, 1.0 / 50};
}

std::vector<double> viewScales(Unit unit) {
    std::vector<double> scales = standardScales(unit);
    const std::vector<double> between =
        unit == Unit::Inch
            ? std::vector<double>{1.0 / 12, 1.0 / 24, 1.0 / 40}
            : std::vector<double>{1.0 / 2.5, 1.0 / 8, 1.0 / 12, 1.0 / 15, 1.0 / 25, 1.0 / 40};
    scales.insert(scales.end(), between.begin(), between.end());
    std::sort(scales.begin(), scales.end(), std::greater<>());
    return scales;
}

double scaleThatFits(double longest, double room, Unit unit) {
    for (const double scale : standardScales(unit)) {
        if (longest * scale <= room) {
            return scale;
        }
    }
    return room / longest;
}

std::string scaleText(double scale) {
    return scale > 1.0 ? showDecimal(scale, 2) + " : 1" : "1 : " + showDecimal(1.0 / scale, 2);
}

}  // namespace shoulderline
