#include "core/drawing/tile_map.h"

#include <algorithm>

namespace shoulderline {

namespace {

TextOp words(Vec2 at,
             const std::string& text,
             double height,
             Align align = Align::Left,
             bool isBold = false) {
    return {at, text, height, align, false, isBold};
}

}  // namespace

std::vector<Op> tileMap(const TileGrid& grid, const Sheet& drawing, const Rect& room) {
    const Vec2 covered = grid.origin(grid.rows - 1, grid.columns - 1) + grid.room() - grid.start;
    const double scale = std::min({room.size().x / covered.x, room.size().y / covered.y, 0.5});
    const Vec2 corner = (room.min + room.max - covered * scale) * 0.5;
    const auto place = [&](Vec2 p) { return corner + (p - grid.start) * scale; };
    std::vector<Op> ops;
    for (const Op& op : drawing.ops) {
        if (const auto* stroke = std::get_if<Stroke>(&op);
            stroke != nullptr && stroke->role == LineRole::Visible) {
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
            const double height = (b.y - a.y) > 9.0 ? 5.0 : 2.5;
            ops.push_back(words(
                a + Vec2{1.5, 1.5 + height}, tileName(row, column), height, Align::Left, true));
        }
    }
    return ops;
}

}  // namespace shoulderline
