#include "core/geometry/frame.h"

namespace shoulderline {

Box Frame::outerBounds(const Box& local) const {
    const Vec3 centre = toOuter(local.centre());
    const Vec3 half = local.size() * 0.5;
    Vec3 reach;
    for (int i = 0; i < 3; ++i) {
        reach[i] = std::abs(x[i]) * half.x + std::abs(y[i]) * half.y + std::abs(z[i]) * half.z;
    }
    return {centre - reach, centre + reach};
}

Frame Frame::turned(Vec3 origin, Angle aboutX, Angle aboutY, Angle aboutZ) {
    const auto turn = [&](Vec3 v) {
        v = {v.x, v.y * aboutX.cos() - v.z * aboutX.sin(), v.y * aboutX.sin() + v.z * aboutX.cos()};
        v = {
            v.x * aboutY.cos() + v.z * aboutY.sin(), v.y, -v.x * aboutY.sin() + v.z * aboutY.cos()};
        return Vec3{
            v.x * aboutZ.cos() - v.y * aboutZ.sin(), v.x * aboutZ.sin() + v.y * aboutZ.cos(), v.z};
    };
    return {origin, turn({1, 0, 0}), turn({0, 1, 0}), turn({0, 0, 1})};
}

}  // namespace shoulderline
