#include "core/drawing/trade_marks.h"

#include <algorithm>
#include <numbers>

#include "core/drawing/dimension_parts.h"

namespace shoulderline {

std::vector<Op> inGroup(const char* name, const Subject& subject, std::vector<Op> mark) {
    mark.insert(mark.begin(), BeginGroup{subject, name});
    mark.push_back(EndGroup{});
    return mark;
}

Stroke faceSideMark(Vec2 at, double height) {
    Stroke mark;
    mark.role = LineRole::Dimension;
    constexpr int kSteps = 28;
    // A round loop in the lower part; both tails leave it upwards and cross, one as far as the
    // edge.
    const Vec2 centre = at + Vec2{0.0, 0.74 * height};
    const double radius = 0.24 * height;
    mark.points.push_back(at + Vec2{0.34 * height, 0.0});
    for (int i = 0; i <= kSteps; ++i) {
        const double angle = std::numbers::pi * (1.25 - 1.5 * i / kSteps);
        mark.points.push_back(centre + Vec2{std::cos(angle) * radius, std::sin(angle) * radius});
    }
    mark.points.push_back(at + Vec2{-0.2 * height, 0.3 * height});
    return mark;
}

Stroke faceEdgeMark(Vec2 at, double height, bool upwards) {
    const double up = upwards ? -height : height;
    return {{at + Vec2{-0.4 * height, up}, at, at + Vec2{0.4 * height, up}}, LineRole::Dimension};
}

Fill leaderDot(Vec2 centre) {
    constexpr double kRadius = 0.5;
    Fill dot;
    for (int i = 0; i < 12; ++i) {
        const Angle angle = Angle::degrees(30.0 * i);
        dot.points.push_back(centre + Vec2{angle.cos(), angle.sin()} * kRadius);
    }
    return dot;
}

std::vector<Op> grainArrow(Vec2 at, double length) {
    const double head = std::min(2.5, length / 4.0);
    const Vec2 half{length / 2.0, 0.0};
    return {Stroke{{at - half, at + half}, LineRole::Dimension},
            arrowhead(at - half, at, head),
            arrowhead(at + half, at, head)};
}

std::vector<Op> mouthDiagonals(Vec2 min, Vec2 max, bool isThrough) {
    std::vector<Op> ops{Stroke{{{min.x, max.y}, {max.x, min.y}}, LineRole::Construction}};
    if (isThrough) {
        ops.push_back(Stroke{{min, max}, LineRole::Construction});
    }
    return ops;
}

std::vector<Op> projectionSymbol(Vec2 at, double height, bool isThirdAngle) {
    const double h = height;
    const Angle full = Angle::degrees(360.0);
    const double cone = isThirdAngle ? 4.0 * h : 0.5 * h;  // left end of the cone, from `at`
    const double rings = isThirdAngle ? 1.5 * h : 5.5 * h;
    const Vec2 left = at + Vec2{cone, 0.0};
    const Vec2 centre = at + Vec2{rings, 0.0};
    return {
        Stroke{{left + Vec2{0, -0.5 * h},
                left + Vec2{2 * h, -h},
                left + Vec2{2 * h, h},
                left + Vec2{0, 0.5 * h},
                left + Vec2{0, -0.5 * h}},
               LineRole::Dimension},
        Stroke{{left + Vec2{-0.5 * h, 0}, left + Vec2{2.5 * h, 0}}, LineRole::Construction},
        ArcOp{centre, 0.5 * h, {}, full, LineRole::Dimension},
        ArcOp{centre, h, {}, full, LineRole::Dimension},
        Stroke{{centre + Vec2{-1.4 * h, 0}, centre + Vec2{1.4 * h, 0}}, LineRole::Construction},
        Stroke{{centre + Vec2{0, -1.4 * h}, centre + Vec2{0, 1.4 * h}}, LineRole::Construction},
    };
}

}  // namespace shoulderline
