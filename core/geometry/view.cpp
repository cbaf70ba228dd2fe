#include "core/geometry/view.h"

namespace shoulderline {

View View::axonometric(Angle turn, Angle tilt) {
    const Vec3 right{turn.cos(), turn.sin(), 0.0};
    const Vec3 towardsViewer{turn.sin() * tilt.cos(), -turn.cos() * tilt.cos(), tilt.sin()};
    return {right, cross(towardsViewer, right), towardsViewer};
}

}  // namespace shoulderline
