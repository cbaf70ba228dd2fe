#pragma once

#include <cmath>
#include <random>
#include <vector>

#include "core/geometry/box.h"
#include "core/geometry/frame.h"

namespace shoulderline::test {

// A stick: a box in its own frame.
struct Stick {
    Box box;
    Frame frame;
};

// `count` square sticks, each in a layer of its own from front to back, turned any way in the layer
// and leaning out of it by up to `lean` degrees two ways: none touch, all cross in the front view.
inline std::vector<Stick> layeredSticks(unsigned seed, int count, double lean = 1.0) {
    std::mt19937 random(seed);
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    // A stick is under 420 mm from corner to corner and 30 thick.
    const double layer = 35.0 + 2.0 * 420.0 * std::sin(Angle::degrees(lean).radians());
    std::vector<Stick> sticks;
    for (int i = 0; i < count; ++i) {
        const double length = between(150, 400);
        const double thickness = between(10, 30);
        const Frame frame = Frame::turned({between(-60, 60), layer * i, between(-60, 60)},
                                          Angle::degrees(between(-lean, lean)),
                                          Angle::degrees(between(0, 180)),
                                          Angle::degrees(between(-lean, lean)));
        sticks.push_back({{{-length / 2, -thickness / 2, -between(10, 30)},
                           {length / 2, thickness / 2, between(10, 30)}},
                          frame});
    }
    return sticks;
}

// A frame of posts with rails between them, all square to space, faces often flush, the rails'
// tenons as boxes inside the posts. Sizes are whole millimetres, so that faces coincide.
inline std::vector<Stick> framedSticks(unsigned seed, int bays, int rails) {
    std::mt19937 random(seed);
    const auto whole = [&](int low, int high) {
        return static_cast<double>(std::uniform_int_distribution<int>(low, high)(random));
    };
    std::vector<Stick> sticks;
    double left = 0;
    double post = whole(30, 50);
    sticks.push_back({{{left, 0, 0}, {left + post, post, whole(400, 900)}}, {}});
    for (int b = 0; b < bays; ++b) {
        const double from = left + post;
        const double to = from + whole(200, 500);
        const double depth = whole(30, 50);
        sticks.push_back({{{to, 0, 0}, {to + depth, depth, whole(400, 900)}}, {}});
        for (int r = 0; r < rails; ++r) {
            const double front = whole(0, 1) * whole(0, 10);
            const double thick = whole(10, 20);
            const double low = whole(20, 300);
            const double high = low + whole(20, 80);
            sticks.push_back({{{from, front, low}, {to, front + thick, high}}, {}});
            const Vec3 tenon{whole(10, 30), 3, 5};
            sticks.push_back(
                {{{from - tenon.x, front + 3, low + 5}, {from, front + thick - 3, high - 5}}, {}});
            sticks.push_back(
                {{{to, front + 3, low + 5}, {to + tenon.x, front + thick - 3, high - 5}}, {}});
        }
        left = to;
        post = depth;
    }
    return sticks;
}

}  // namespace shoulderline::test
