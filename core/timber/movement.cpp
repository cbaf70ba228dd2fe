#include "core/timber/movement.h"

#include <algorithm>
#include <cmath>

namespace shoulderline {

namespace {

constexpr double kFibreSaturation = 30.0;
constexpr double kLeastLinear = 6.0;
constexpr double kMostLinear = 14.0;

bool isMoisture(double percent) {
    return percent >= 0.0 && percent <= kFibreSaturation;
}

bool isLinear(double percent) {
    return percent >= kLeastLinear && percent <= kMostLinear;
}

}  // namespace

std::optional<double> changeCoefficient(const Species& species, RingDirection rings) {
    switch (rings) {
        case RingDirection::Tangential:
            return species.tangentialChange;
        case RingDirection::Radial:
            return species.radialChange;
        case RingDirection::Between:
            break;
    }
    if (!species.tangentialChange || !species.radialChange) {
        return std::nullopt;
    }
    return (*species.tangentialChange + *species.radialChange) / 2.0;
}

double shrinkageFor(double coefficient) {
    return 3000.0 * coefficient / (1.0 + 20.0 * coefficient);
}

double coefficientFor(double shrinkage) {
    return 1.0 / (3000.0 / shrinkage - 20.0);
}

Result<double> changeOfSize(double size,
                            double coefficient,
                            double fromMoisture,
                            double toMoisture) {
    if (!isMoisture(fromMoisture) || !isMoisture(toMoisture)) {
        return fail(ErrorCode::OutOfRange, "A moisture content from 0 to 30 percent is expected.");
    }
    const double points = toMoisture - fromMoisture;
    if ((isLinear(fromMoisture) && isLinear(toMoisture)) || coefficient <= 0.0) {
        return size * coefficient * points;
    }
    return size * points /
           (kFibreSaturation * 100.0 / shrinkageFor(coefficient) - kFibreSaturation + fromMoisture);
}

Result<double> panelRoomPerSide(double width, double coefficient, double madeAt, double dampest) {
    return changeOfSize(width, coefficient, madeAt, dampest).map([](double growth) {
        return std::max(0.0, growth) / 2.0;
    });
}

Result<double> slottedHoleLength(
    double distance, double coefficient, double driest, double dampest, double shank) {
    return changeOfSize(distance, coefficient, driest, dampest).map([shank](double change) {
        return shank + std::abs(change);
    });
}

}  // namespace shoulderline
