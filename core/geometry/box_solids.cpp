#include "core/geometry/box_solids.h"

#include "core/geometry/convex_solid.h"

namespace shoulderline {

std::optional<Box> overlap(const Box& a, const Box& b) {
    Box shared;
    for (int i = 0; i < 3; ++i) {
        shared.min[i] = std::max(a.min[i], b.min[i]);
        shared.max[i] = std::min(a.max[i], b.max[i]);
        if (shared.max[i] - shared.min[i] <= kPlaneTolerance) {
            return std::nullopt;
        }
    }
    return shared;
}

double distance(const Box& a, const Box& b) {
    Vec3 gap;
    for (int i = 0; i < 3; ++i) {
        gap[i] = std::max({0.0, a.min[i] - b.max[i], b.min[i] - a.max[i]});
    }
    return norm(gap);
}

std::vector<Box> subtract(const Box& a, const Box& b) {
    const std::optional<Box> shared = overlap(a, b);
    if (!shared) {
        return {a};
    }
    std::vector<Box> pieces;
    Box rest = a;
    for (int i = 0; i < 3; ++i) {
        if (shared->min[i] > rest.min[i]) {
            Box below = rest;
            below.max[i] = shared->min[i];
            pieces.push_back(below);
        }
        if (shared->max[i] < rest.max[i]) {
            Box above = rest;
            above.min[i] = shared->max[i];
            pieces.push_back(above);
        }
        rest.min[i] = shared->min[i];
        rest.max[i] = shared->max[i];
    }
    return pieces;
}

double unionVolume(std::span<const Box> boxes) {
    double volume = 0.0;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        std::vector<Box> fresh{boxes[i]};
        for (std::size_t j = 0; j < i; ++j) {
            std::vector<Box> rest;
            for (const Box& piece : fresh) {
                const std::vector<Box> left = subtract(piece, boxes[j]);
                rest.insert(rest.end(), left.begin(), left.end());
            }
            fresh = std::move(rest);
        }
        for (const Box& piece : fresh) {
            volume += piece.volume();
        }
    }
    return volume;
}

}  // namespace shoulderline
