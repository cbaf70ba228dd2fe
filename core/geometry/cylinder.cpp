#include "core/geometry/cylinder.h"

#include <algorithm>
#include <cmath>

namespace shoulderline {

int circleFacets(double radius) {
    constexpr int kFewest = 8;
    const double half = std::acos(std::max(0.0, 1.0 - kArcSagitta / radius));
    return std::max(kFewest, static_cast<int>(std::ceil(M_PI / half)));
}

ConvexSolid cylinderIn(const Box& box, int axis) {
    const int u = (axis + 1) % 3;
    const int v = (axis + 2) % 3;
    const double radius = (box.max[u] - box.min[u]) / 2;
    Outline circle;
    circle.vertices = {{{radius, 0}, 1.0}, {{-radius, 0}, 1.0}};
    const auto unit = [](int i) {
        Vec3 direction;
        direction[i] = 1.0;
        return direction;
    };
    Frame frame{box.centre(), unit(u), unit(v), unit(axis)};
    frame.origin[axis] = box.min[axis];
    const FlatOutline flat = circle.flatten();
    const std::vector<int> oneSurface(flat.points.size(), 0);
    return ConvexSolid::prism(flat.points, 0.0, box.max[axis] - box.min[axis], frame, oneSurface);
}

}  // namespace shoulderline
