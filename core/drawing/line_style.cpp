#include "core/drawing/line_style.h"

namespace shoulderline {

LineStyle lineStyle(LineRole role, LineGroup group) {
    const double wide = group == LineGroup::Bold ? 0.5 : (group == LineGroup::Medium ? 0.35 : 0.25);
    const double narrow = group == LineGroup::Bold ? 0.25 : 0.18;
    switch (role) {
        case LineRole::Visible:
            return {wide, LineType::Continuous};
        case LineRole::Narrow:
            return {narrow, LineType::Continuous};
        case LineRole::Hidden:
            return {narrow, LineType::Dashed};
        case LineRole::Centre:
            return {narrow, LineType::LongDashedDotted};
        case LineRole::Dimension:
            return {narrow, LineType::Continuous};
        case LineRole::CutPlane:
            return {narrow, LineType::LongDashedDotted};
        case LineRole::Construction:
            return {0.18, LineType::Continuous};
        case LineRole::Neighbour:
            return {narrow, LineType::LongDashedDoubleDotted};
        case LineRole::Border:
            return {0.7, LineType::Continuous};
    }
    return {};
}

}  // namespace shoulderline
