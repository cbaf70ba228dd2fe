#include "core/timber/bending.h"

#include <cmath>

namespace shoulderline {

double springbackShare(int plies) {
    return 1.0 / (static_cast<double>(plies) * plies);
}

double springbackShare(std::span<const double> thicknesses) {
    double whole = 0.0;
    double cubes = 0.0;
    for (const double thickness : thicknesses) {
        whole += thickness;
        cubes += std::pow(thickness, 3);
    }
    return cubes / std::pow(whole, 3);
}

double ruptureRadiusShare(double elasticityMpa, double ruptureMpa) {
    return elasticityMpa / (2.0 * ruptureMpa);
}

double boardForPlies(int plies, double ply, double planing, double kerf) {
    return plies * (ply + 2 * planing) + (plies - 1) * kerf;
}

}  // namespace shoulderline
