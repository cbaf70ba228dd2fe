#pragma once

#include <optional>

#include "core/geometry/frame.h"
#include "core/piece/words.h"

namespace shoulderline {

// The axis that a side lies on (0 x, 1 y, 2 z) and its way along it; Centre has none.
struct AxisWay {
    int axis = 0;
    double way = 1.0;  // +1 or -1
};
[[nodiscard]] std::optional<AxisWay> wayOf(Side side);

// The way into the wood through a face of a part, in the part's own frame.
[[nodiscard]] AxisWay inwardOf(Face face);

// The face across from it.
[[nodiscard]] Face oppositeOf(Face face);

// The face of a part that one enters by moving along `axis` of its own frame, in the way of `way`.
[[nodiscard]] Face faceEntered(int axis, double way);

// The axis (0 x, 1 y, 2 z) that a unit vector along one of them lies on.
[[nodiscard]] int mainAxis(Vec3 direction);

// The axis (0 x, 1 y, 2 z) that a direction lies nearest to.
[[nodiscard]] int longestAxis(Vec3 direction);

// Unit vector that looks towards `side`; zero for Centre.
[[nodiscard]] Vec3 directionOf(Side side);

// The side of `axis` at its high (true) or low end.
[[nodiscard]] Side sideOf(int axis, bool high);

// The frame of a part that fills `box`, with its face side and face edge looking towards the sides
// given (on different axes): origin at the corner where they meet the start end, right-handed.
[[nodiscard]] Frame frameOnBox(const Box& box, Side faceSide, Side faceEdge);

// Size of `box` in the frame that frameOnBox() gives.
[[nodiscard]] Vec3 sizeIn(const Frame& frame, const Box& box);

// `inner` restated in `outer`, both given in the same space.
[[nodiscard]] Frame relativeFrame(const Frame& outer, const Frame& inner);

// Directions within this of an axis lie along it: a micrometre's error on a part of one kilometre.
inline constexpr double kSquareTolerance = 1e-9;

// `frame` with each axis snapped to the outer axis it lies along; nullopt when one lies askew.
[[nodiscard]] std::optional<Frame> squared(const Frame& frame);

}  // namespace shoulderline
