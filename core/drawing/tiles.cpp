#include "core/drawing/tiles.h"

#include <algorithm>
#include <cmath>

namespace shoulderline {

namespace {

constexpr double kLeastRoom = 20.0;  // beyond the overlap, so that tiles get on

// How far to shift cuts, at most `most` either way, so that the nearest of `places` is far; the
// least shift of those that do as well.
double bestShift(const std::vector<double>& cuts, double most, const std::vector<double>& places) {
    constexpr double kFarEnough = 10.0;
    constexpr int kTries = 20;
    double best = 0.0;
    double bestDistance = -1.0;
    for (int i = 0; i <= kTries; ++i) {
        for (const double way : {1.0, -1.0}) {
            const double shift = way * most * i / kTries;
            double distance = kFarEnough;
            for (const double cut : cuts) {
                for (const double place : places) {
                    distance = std::min(distance, std::abs(cut + shift - place));
                }
            }
            if (distance > bestDistance + 1e-9) {
                bestDistance = distance;
                best = shift;
            }
        }
    }
    return best;
}

int tilesAlong(double length, double room, double overlap) {
    if (length <= room + 1e-9) {
        return 1;
    }
    return static_cast<int>(std::ceil((length - overlap) / (room - overlap) - 1e-9));
}

TileGrid gridOn(Vec2 drawing, Vec2 page, const TileOptions& options) {
    TileGrid grid;
    grid.page = page;
    const double margin = std::clamp(options.margin, 5.0, std::min(page.x, page.y) / 8.0 + 5.0);
    grid.printable = {{margin, margin},
                      {page.x - margin - kBarStrip, page.y - margin - kCaptionStrip}};
    const Vec2 room = grid.room();
    grid.overlap = std::max(
        0.0,
        std::min(std::clamp(options.overlap, 10.0, 40.0), std::min(room.x, room.y) - kLeastRoom));
    grid.columns = tilesAlong(drawing.x, room.x, grid.overlap);
    grid.rows = tilesAlong(drawing.y, room.y, grid.overlap);
    const Vec2 covered{room.x + (room.x - grid.overlap) * (grid.columns - 1),
                       room.y + (room.y - grid.overlap) * (grid.rows - 1)};
    grid.start = (drawing - covered) * 0.5;
    return grid;
}

}  // namespace

TileGrid tileGrid(Vec2 drawing,
                  const Paper& paper,
                  const TileOptions& options,
                  const PlacesToKeepWhole& places) {
    const double narrow = std::min(paper.size.x, paper.size.y);
    const double wide = std::max(paper.size.x, paper.size.y);
    const TileGrid lying = gridOn(drawing, {wide, narrow}, options);
    const TileGrid upright = gridOn(drawing, {narrow, wide}, options);
    const bool isUpright = options.held == Held::Upright ||
                           (options.held == Held::Either && upright.count() < lying.count());
    TileGrid grid = isUpright ? upright : lying;
    std::vector<double> cuts;
    for (int i = 0; i + 1 < grid.columns; ++i) {
        cuts.push_back(grid.cutAfterColumn(i));
    }
    grid.start.x += bestShift(cuts, -grid.start.x, places.x);
    cuts.clear();
    for (int i = 0; i + 1 < grid.rows; ++i) {
        cuts.push_back(grid.cutAfterRow(i));
    }
    grid.start.y += bestShift(cuts, -grid.start.y, places.y);
    return grid;
}

std::optional<Diagonal> diagonalOn(Vec2 drawing, const Paper& paper, const TileOptions& options) {
    const double narrow = std::min(paper.size.x, paper.size.y);
    const double wide = std::max(paper.size.x, paper.size.y);
    const Vec2 page = options.held == Held::Upright ? Vec2{narrow, wide} : Vec2{wide, narrow};
    const TileGrid grid = gridOn({1.0, 1.0}, page, options);
    const Vec2 room = grid.room();
    constexpr int kSteps = 180;
    for (int i = 1; i < kSteps; ++i) {
        const Angle turn = Angle::degrees(90.0 * i / kSteps);
        const Vec2 needed{drawing.x * turn.cos() + drawing.y * turn.sin(),
                          drawing.x * turn.sin() + drawing.y * turn.cos()};
        if (needed.x <= room.x && needed.y <= room.y) {
            // Its top left corner swings away from the left edge; the rest of the room lies evenly
            // round it.
            const Vec2 corner = Vec2{drawing.y * turn.sin(), 0.0} + (room - needed) * 0.5;
            const Vec2 origin{-(corner.x * turn.cos() + corner.y * turn.sin()),
                              corner.x * turn.sin() - corner.y * turn.cos()};
            return Diagonal{page, grid.printable, origin, turn};
        }
    }
    return std::nullopt;
}

std::string tileName(int row, int column) {
    std::string letters;
    for (int r = row; r >= 0; r = r / 26 - 1) {
        letters.insert(letters.begin(), static_cast<char>('A' + r % 26));
    }
    return letters + std::to_string(column + 1);
}

}  // namespace shoulderline
