#include "core/drawing/tiles.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace shoulderline {

namespace {

constexpr double kLeastRoom = 20.0;  // beyond the overlap, so that tiles get on

// Along one side of the drawing: what cuts should keep away from.
struct Obstacles {
    const std::vector<double>& places;
    const std::vector<std::pair<double, double>>& lettering;
};

// How well a cut lies: first how much lettering it runs through, then how near it comes to a place.
struct Lie {
    int struck = 0;
    double distance = 0.0;
    [[nodiscard]] bool isBetterThan(const Lie& other) const {
        constexpr double kAlike = 1e-9;
        return struck != other.struck ? struck < other.struck : distance > other.distance + kAlike;
    }
};

Lie lieOf(double cut, const Obstacles& obstacles) {
    constexpr double kFarEnough = 10.0;
    Lie lie{0, kFarEnough};
    for (const double place : obstacles.places) {
        lie.distance = std::min(lie.distance, std::abs(cut - place));
    }
    lie.struck = static_cast<int>(
        std::count_if(obstacles.lettering.begin(), obstacles.lettering.end(), [&](const auto& one) {
            return cut > one.first && cut < one.second;
        }));
    return lie;
}

// How far each cut moves within the overlap, and how they lie then.
struct Moved {
    std::vector<double> shifts;
    Lie worst;
};

Moved movedCuts(const std::vector<double>& cuts, double most, const Obstacles& obstacles) {
    constexpr double kStep = 0.5;
    Moved moved{{}, {0, std::numeric_limits<double>::infinity()}};
    for (const double cut : cuts) {
        double best = 0.0;
        Lie lie = lieOf(cut, obstacles);
        for (double by = kStep; by <= most; by += kStep) {
            for (const double shift : {by, -by}) {
                const Lie there = lieOf(cut + shift, obstacles);
                if (there.isBetterThan(lie)) {
                    lie = there;
                    best = shift;
                }
            }
        }
        moved.shifts.push_back(best);
        moved.worst.struck += lie.struck;
        moved.worst.distance = std::min(moved.worst.distance, lie.distance);
    }
    return moved;
}

// Shifts all cuts alike, at most `slack` either way, and then each within the overlap, so that they
// lie best; the least shift of those that do as well.
std::vector<double> settle(const std::vector<double>& cuts,
                           double slack,
                           double withinOverlap,
                           const Obstacles& obstacles,
                           double& start) {
    constexpr int kTries = 20;
    double best = 0.0;
    Moved moved = movedCuts(cuts, withinOverlap, obstacles);
    for (int i = 1; i <= kTries; ++i) {
        for (const double way : {1.0, -1.0}) {
            const double shift = way * slack * i / kTries;
            std::vector<double> shifted = cuts;
            for (double& cut : shifted) {
                cut += shift;
            }
            Moved there = movedCuts(shifted, withinOverlap, obstacles);
            if (there.worst.isBetterThan(moved.worst)) {
                moved = std::move(there);
                best = shift;
            }
        }
    }
    start += best;
    return moved.shifts;
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
    const double within = std::max(0.0, grid.overlap / 2.0 - kGluedEdge);
    std::vector<double> cuts;
    for (int i = 0; i + 1 < grid.columns; ++i) {
        cuts.push_back(grid.cutAfterColumn(i));
    }
    grid.columnShifts =
        settle(cuts, -grid.start.x, within, {places.x, places.acrossX}, grid.start.x);
    cuts.clear();
    for (int i = 0; i + 1 < grid.rows; ++i) {
        cuts.push_back(grid.cutAfterRow(i));
    }
    grid.rowShifts = settle(cuts, -grid.start.y, within, {places.y, places.acrossY}, grid.start.y);
    return grid;
}

double widestBetweenCuts(const Paper& paper, const TileOptions& options) {
    constexpr double kLeast = 40.0;
    constexpr double kClear = 2.0;  // of a line on either side, to be moved about in
    const double narrow = std::min(paper.size.x, paper.size.y);
    const double wide = std::max(paper.size.x, paper.size.y);
    const Vec2 page = options.held == Held::Lying ? Vec2{wide, narrow} : Vec2{narrow, wide};
    const TileGrid grid = gridOn({1.0, 1.0}, page, options);
    return std::max(kLeast, grid.room().x - 2.0 * (grid.overlap - kGluedEdge + kClear));
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
