#include "core/resolve/frames.h"

#include <array>
#include <cmath>

namespace shoulderline {

std::optional<AxisWay> wayOf(Side side) {
    switch (side) {
        case Side::Left:
            return AxisWay{0, -1.0};
        case Side::Right:
            return AxisWay{0, 1.0};
        case Side::Front:
            return AxisWay{1, -1.0};
        case Side::Back:
            return AxisWay{1, 1.0};
        case Side::Bottom:
            return AxisWay{2, -1.0};
        case Side::Top:
            return AxisWay{2, 1.0};
        case Side::Centre:
            break;
    }
    return std::nullopt;
}

AxisWay inwardOf(Face face) {
    switch (face) {
        case Face::StartEnd:
            return {0, 1.0};
        case Face::FarEnd:
            return {0, -1.0};
        case Face::FaceEdge:
            return {1, 1.0};
        case Face::BackEdge:
            return {1, -1.0};
        case Face::FaceSide:
            return {2, 1.0};
        case Face::BackSide:
            break;
    }
    return {2, -1.0};
}

Face oppositeOf(Face face) {
    switch (face) {
        case Face::FaceSide:
            return Face::BackSide;
        case Face::BackSide:
            return Face::FaceSide;
        case Face::FaceEdge:
            return Face::BackEdge;
        case Face::BackEdge:
            return Face::FaceEdge;
        case Face::StartEnd:
            return Face::FarEnd;
        case Face::FarEnd:
            return Face::StartEnd;
    }
    return face;
}

Face faceEntered(int axis, double way) {
    constexpr Face kFaces[3][2] = {{Face::StartEnd, Face::FarEnd},
                                   {Face::FaceEdge, Face::BackEdge},
                                   {Face::FaceSide, Face::BackSide}};
    return kFaces[axis][way > 0 ? 0 : 1];
}

int mainAxis(Vec3 direction) {
    return std::abs(direction.x) > 0.5 ? 0 : (std::abs(direction.y) > 0.5 ? 1 : 2);
}

int longestAxis(Vec3 direction) {
    const Vec3 a{std::abs(direction.x), std::abs(direction.y), std::abs(direction.z)};
    return a.x >= a.y && a.x >= a.z ? 0 : (a.y >= a.z ? 1 : 2);
}

Vec3 directionOf(Side side) {
    Vec3 direction;
    if (const std::optional<AxisWay> way = wayOf(side)) {
        direction[way->axis] = way->way;
    }
    return direction;
}

Side sideOf(int axis, bool high) {
    constexpr std::array<std::array<Side, 2>, 3> kSides{
        {{Side::Left, Side::Right}, {Side::Front, Side::Back}, {Side::Bottom, Side::Top}}};
    return kSides[static_cast<std::size_t>(axis)][high ? 1 : 0];
}

Frame frameOnBox(const Box& box, Side faceSide, Side faceEdge) {
    Frame frame;
    frame.z = -directionOf(faceSide);
    frame.y = -directionOf(faceEdge);
    frame.x = cross(frame.y, frame.z);
    for (int i = 0; i < 3; ++i) {
        const double sum = frame.x[i] + frame.y[i] + frame.z[i];
        frame.origin[i] = sum > 0 ? box.min[i] : box.max[i];
    }
    return frame;
}

Vec3 sizeIn(const Frame& frame, const Box& box) {
    const Vec3 size = frame.directionToLocal(box.size());
    return {std::abs(size.x), std::abs(size.y), std::abs(size.z)};
}

Frame relativeFrame(const Frame& outer, const Frame& inner) {
    return {outer.toLocal(inner.origin),
            outer.directionToLocal(inner.x),
            outer.directionToLocal(inner.y),
            outer.directionToLocal(inner.z)};
}

std::optional<Frame> squared(const Frame& frame) {
    const auto snap = [](Vec3 v) -> std::optional<Vec3> {
        for (int i = 0; i < 3; ++i) {
            if (std::abs(std::abs(v[i]) - 1.0) < kSquareTolerance) {
                Vec3 along;
                along[i] = v[i] > 0 ? 1.0 : -1.0;
                return norm(v - along) < kSquareTolerance * 10 ? std::optional(along)
                                                               : std::nullopt;
            }
        }
        return std::nullopt;
    };
    const std::optional<Vec3> x = snap(frame.x);
    const std::optional<Vec3> y = snap(frame.y);
    const std::optional<Vec3> z = snap(frame.z);
    if (!x || !y || !z) {
        return std::nullopt;
    }
    return Frame{frame.origin, *x, *y, *z};
}

}  // namespace shoulderline
