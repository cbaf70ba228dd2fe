#include "core/drawing/part_drawing.h"

#include <algorithm>

#include "core/drawing/part_blocks.h"

namespace shoulderline {

namespace {

constexpr double kBetweenViews = 6.0;
constexpr double kBesideViews = 9.0;
constexpr double kMargin = 2.0;  // round the whole drawing

void append(std::vector<Op>& ops, std::vector<Op> more) {
    ops.insert(
        ops.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

// In columns at the right of the drawing, no longer than it is high; or in rows under it, no longer
// than it is wide.
void placeSections(std::vector<PartBlock> sections,
                   bool isBelow,
                   const TextMetrics& metrics,
                   std::vector<Op>& ops) {
    const Rect all = boundsOf(ops, metrics);
    Vec2 at = isBelow ? Vec2{all.min.x, all.max.y + kBetweenViews}
                      : Vec2{all.max.x + kBesideViews, all.min.y};
    const Vec2 start = at;
    double across = 0.0;  // of the row or column that is being filled
    for (PartBlock& section : sections) {
        const Vec2 size = section.bounds.size();
        if (isBelow && at.x > start.x && at.x + size.x > all.max.x) {
            at = {start.x, at.y + across + kBetweenViews};
            across = 0.0;
        }
        if (!isBelow && at.y > start.y && at.y + size.y > all.max.y) {
            at = {at.x + across + kBesideViews, start.y};
            across = 0.0;
        }
        move(section.ops, at - section.bounds.min);
        append(ops, std::move(section.ops));
        across = std::max(across, isBelow ? size.y : size.x);
        (isBelow ? at.x : at.y) += isBelow ? size.x + kBesideViews : size.y + kBetweenViews;
    }
}

}  // namespace

Sheet drawPart(const Piece& piece,
               const ResolvedPiece& resolved,
               const PartKind& kind,
               const PartStyle& style,
               const TextMetrics& metrics) {
    const std::size_t index = kind.parts.front();
    const ResolvedPart& part = resolved.parts[index];
    const PartBlocks blocks(piece, resolved, index, style, metrics);
    const bool isThirdAngle = piece.unit == Unit::Inch;

    Sheet sheet;
    sheet.title = kind.name;
    sheet.lines = style.lines;
    double y = 0.0;
    double middle = 0.0;
    for (const Face face : facesToShow(part, isThirdAngle)) {
        PartBlock block = blocks.sideView(face);
        const double down = y - block.bounds.min.y;
        if (face == Face::FaceSide) {
            middle = down + block.bodyHeight / 2.0;
        }
        move(block.ops, {0.0, down});
        y = down + block.bounds.max.y + kBetweenViews;
        append(sheet.ops, std::move(block.ops));
    }
    const Rect stack = boundsOf(sheet.ops, metrics);
    std::vector<PartBlock> sections = blocks.sections();
    for (const EndToShow& end : endsToShow(part)) {
        PartBlock block = blocks.endView(end);
        if (style.sectionPlace == SectionPlace::WithEnds && !sections.empty()) {
            sections.push_back(std::move(block));
            continue;
        }
        // Seen from the left: at the left in third angle projection, at the right in first angle.
        const bool atRight = (end.face == Face::FarEnd) == isThirdAngle;
        const double x = atRight ? stack.max.x + kBesideViews - block.bounds.min.x
                                 : stack.min.x - kBesideViews - block.bounds.max.x;
        move(block.ops, {x, middle - block.bodyHeight / 2.0});
        append(sheet.ops, std::move(block.ops));
    }
    placeSections(
        std::move(sections), style.sectionPlace == SectionPlace::Below, metrics, sheet.ops);
    const Rect all = boundsOf(sheet.ops, metrics);
    move(sheet.ops, Vec2{kMargin, kMargin} - all.min);
    sheet.size = all.size() + Vec2{2.0 * kMargin, 2.0 * kMargin};
    return sheet;
}

Sheet partDrawing(const Piece& piece,
                  const ResolvedPiece& resolved,
                  const PartKind& kind,
                  double scale,
                  bool isFullSize,
                  const TextMetrics& metrics) {
    PartStyle style;
    style.scale = scale;
    style.lines = isFullSize ? LineGroup::Fine : LineGroup::Bold;
    return drawPart(piece, resolved, kind, style, metrics);
}

}  // namespace shoulderline
