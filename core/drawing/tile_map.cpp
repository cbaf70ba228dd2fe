#include "core/drawing/tile_map.h"

#include <algorithm>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/free_space.h"
#include "core/drawing/left_out.h"

namespace shoulderline {

namespace {

// The tile's name in that of its corners where it lies on nothing, first the upper left one; of one
// that is full over it.
TextOp nameIn(const Rect& tile,
              const std::string& name,
              const FreeSpace& space,
              const TextMetrics& metrics) {
    constexpr double kInset = 1.5;
    constexpr double kClear = 0.5;
    for (const double height : {5.0, 2.5}) {
        const double width = metrics.width(name, height, true);
        for (const bool isLow : {false, true}) {
            for (const bool isRight : {false, true}) {
                const Vec2 at{isRight ? tile.max.x - kInset - width : tile.min.x + kInset,
                              isLow ? tile.max.y - kInset : tile.min.y + kInset + height};
                const Rect area{at - Vec2{kClear, height + kClear},
                                at + Vec2{width + kClear, kClear}};
                const bool goesIn = area.min.y > tile.min.y && area.max.y < tile.max.y &&
                                    area.min.x > tile.min.x && area.max.x < tile.max.x;
                if (goesIn && space.isFree(area)) {
                    return {at, name, height, Align::Left, false, true};
                }
            }
        }
    }
    constexpr double kSmall = 2.5;
    return {tile.min + Vec2{kInset, -kInset}, name, kSmall, Align::Left, false, true};
}

}  // namespace

std::vector<Op> tileMap(const TileGrid& grid,
                        const Sheet& drawing,
                        const Rect& room,
                        const TextMetrics& metrics) {
    const Vec2 covered = grid.origin(grid.rows - 1, grid.columns - 1) + grid.room() - grid.start;
    const double scale = std::min({room.size().x / covered.x, room.size().y / covered.y, 0.5});
    const Vec2 corner = (room.min + room.max - covered * scale) * 0.5;
    const auto place = [&](Vec2 p) { return corner + (p - grid.start) * scale; };
    std::vector<Op> ops;
    bool isInBreak = false;
    for (const Op& op : drawing.ops) {
        if (const auto* group = std::get_if<BeginGroup>(&op)) {
            isInBreak = group->name == kBreakGroup;
        } else if (std::holds_alternative<EndGroup>(op)) {
            isInBreak = false;
        } else if (const auto* stroke = std::get_if<Stroke>(&op);
                   stroke != nullptr && (stroke->role == LineRole::Visible || isInBreak)) {
            Stroke small{{}, LineRole::Construction};
            for (const Vec2& p : stroke->points) {
                small.points.push_back(place(p));
            }
            ops.push_back(std::move(small));
        } else if (const auto* arc = std::get_if<ArcOp>(&op);
                   arc != nullptr && arc->role == LineRole::Visible) {
            ops.push_back(ArcOp{place(arc->centre),
                                arc->radius * scale,
                                arc->start,
                                arc->sweep,
                                LineRole::Construction});
        }
    }
    const FreeSpace space(ops, metrics);
    std::vector<Op> names;
    for (int row = 0; row < grid.rows; ++row) {
        for (int column = 0; column < grid.columns; ++column) {
            const Vec2 min{column == 0 ? grid.start.x : grid.cutAfterColumn(column - 1),
                           row == 0 ? grid.start.y : grid.cutAfterRow(row - 1)};
            const Vec2 max{
                column + 1 == grid.columns ? grid.start.x + covered.x : grid.cutAfterColumn(column),
                row + 1 == grid.rows ? grid.start.y + covered.y : grid.cutAfterRow(row)};
            const Vec2 a = place(min);
            const Vec2 b = place(max);
            ops.push_back(Stroke{{a, {b.x, a.y}, b, {a.x, b.y}, a}, LineRole::Dimension});
            names.push_back(nameIn({a, b}, tileName(row, column), space, metrics));
        }
    }
    append(ops, std::move(names));
    return ops;
}

}  // namespace shoulderline
