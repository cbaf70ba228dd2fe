#pragma once

#include <cstddef>
#include <vector>

namespace shoulderline::testing {

// A plane frame by the direct stiffness method, three movements a node, written for the tests
// alone: it shares nothing with core/check/sway_frame. Millimetres, newtons, MPa.
struct PlaneNode {
    double x = 0.0;
    double z = 0.0;
    bool isHeldLevel = false;
    bool isHeldUpright = false;
    double force = 0.0;         // level
    double forceUpright = 0.0;  // up
};
struct PlaneBeam {
    std::size_t a = 0;
    std::size_t b = 0;
    double ea = 0.0;
    double ei = 0.0;
};
struct BeamMoments {
    double a = 0.0;  // N mm, on the beam's ends
    double b = 0.0;
};
[[nodiscard]] std::vector<BeamMoments> solvePlaneFrame(const std::vector<PlaneNode>& nodes,
                                                       const std::vector<PlaneBeam>& beams);

}  // namespace shoulderline::testing
