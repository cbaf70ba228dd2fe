#include "core/drawing/part_layout.h"

#include <algorithm>

#include "core/drawing/dimension_parts.h"

namespace shoulderline {

namespace {

constexpr double kBetweenViews = 6.0;
constexpr double kBesideViews = 9.0;

// In columns at the right of the drawing, no longer than it is high; or in rows under it, no longer
// than it is wide.
void placeFurther(std::vector<PartBlock> blocks,
                  bool isBelow,
                  const TextMetrics& metrics,
                  std::vector<Op>& ops) {
    const Rect all = boundsOf(ops, metrics);
    Vec2 at = isBelow ? Vec2{all.min.x, all.max.y + kBetweenViews}
                      : Vec2{all.max.x + kBesideViews, all.min.y};
    const Vec2 start = at;
    double across = 0.0;  // of the row or column that is being filled
    for (PartBlock& block : blocks) {
        const Vec2 size = block.bounds.size();
        if (isBelow && at.x > start.x && at.x + size.x > all.max.x) {
            at = {start.x, at.y + across + kBetweenViews};
            across = 0.0;
        }
        if (!isBelow && at.y > start.y && at.y + size.y > all.max.y) {
            at = {at.x + across + kBesideViews, start.y};
            across = 0.0;
        }
        move(block.ops, at - block.bounds.min);
        append(ops, std::move(block.ops));
        across = std::max(across, isBelow ? size.y : size.x);
        (isBelow ? at.x : at.y) += isBelow ? size.x + kBesideViews : size.y + kBetweenViews;
    }
}

}  // namespace

std::vector<Op> inProjection(PartDrawingBlocks blocks,
                             SectionPlace place,
                             bool isThirdAngle,
                             const TextMetrics& metrics) {
    std::vector<Op> ops;
    double y = 0.0;
    double middle = 0.0;
    for (PartBlock& block : blocks.sides) {
        const double down = y - block.bounds.min.y;
        if (block.face == Face::FaceSide) {
            middle = down + block.bodyHeight / 2.0;
        }
        move(block.ops, {0.0, down});
        y = down + block.bounds.max.y + kBetweenViews;
        append(ops, std::move(block.ops));
    }
    const Rect stack = boundsOf(ops, metrics);
    for (PartBlock& block : blocks.ends) {
        if (place == SectionPlace::WithEnds && !blocks.further.empty()) {
            blocks.further.push_back(std::move(block));
            continue;
        }
        // Seen from the left: at the left in third angle projection, at the right in first angle.
        const bool atRight = (block.face == Face::FarEnd) == isThirdAngle;
        const double x = atRight ? stack.max.x + kBesideViews - block.bounds.min.x
                                 : stack.min.x - kBesideViews - block.bounds.max.x;
        move(block.ops, {x, middle - block.bodyHeight / 2.0});
        append(ops, std::move(block.ops));
    }
    placeFurther(std::move(blocks.further), place == SectionPlace::Below, metrics, ops);
    return ops;
}

}  // namespace shoulderline
