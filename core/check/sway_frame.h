#pragma once

#include <cstddef>
#include <vector>

namespace shoulderline {

// A frame of upright posts and level members, pushed sideways in its own plane: rigid joints,
// members that bend but do not stretch, feet that turn freely. Millimetres, newtons, MPa.
// Solved by slope and deflection. For any such frame the moments that the level members' ends give
// to the posts add up to force times height (virtual work, feet at the floor held).
struct SwayFrame {
    struct Post {
        double stiffness = 0.0;  // E I in the plane, N mm2, above zero
        bool footRolls = false;  // free to move level; else held
    };
    struct Member {
        std::size_t from = 0;  // posts
        std::size_t to = 0;
        double level = 0.0;   // of its middle line above the feet, above zero
        double length = 0.0;  // between the posts' middle lines
        double stiffness = 0.0;
    };
    struct Force {
        std::size_t post = 0;
        double level = 0.0;  // zero: at the foot, which must then roll
        double newtons = 0.0;
    };
    std::vector<Post> posts;
    std::vector<Member> members;
    std::vector<Force> forces;
};

// The moments, in newton metres, at the two ends of each member; empty where the frame can move
// freely (nothing joins a rolling post, say) or has more than kMostUnknowns.
struct EndMoments {
    double from = 0.0;
    double to = 0.0;
};
inline constexpr std::size_t kMostUnknowns = 120;
[[nodiscard]] std::vector<EndMoments> solveSway(const SwayFrame& frame);

// A side frame of two posts and one rail, the back foot held and the front one free to roll: seat
// force F1 at `fromBack` from the back foot, back force F2 at `backHeight` above the rail. Newtons,
// millimetres; moments in newton metres.
// Source: Smardzewski, Furniture Design (2015), eq. (6.1) to (6.11), cleaned by statics.
struct SideFrame {
    double seatNewtons = 0.0;
    double backNewtons = 0.0;
    double railHeight = 0.0;
    double backHeight = 0.0;
    double footSpacing = 0.0;
    double fromBack = 0.0;
};
struct SideFrameForces {
    double frontFoot = 0.0;  // above zero: must be held down
    double backFoot = 0.0;
    double backFootLevel = 0.0;
    double railAtSeat = 0.0;
    double railAtBack = 0.0;
    double postAbove = 0.0;
    double postBelow = 0.0;
};
[[nodiscard]] SideFrameForces sideFrameForces(const SideFrame& frame);

// The greatest back force that does not tip the frame: seat force times its distance from the back
// foot, over the height of the back force.
[[nodiscard]] double tippingForce(const SideFrame& frame);

}  // namespace shoulderline
