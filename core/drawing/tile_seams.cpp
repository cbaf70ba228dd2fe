#include "core/drawing/tile_seams.h"

#include <algorithm>
#include <optional>

#include "core/drawing/dimension_parts.h"

namespace shoulderline {

namespace {

// A cross in a circle; neighbouring tiles print it in the same place of the drawing.
std::vector<Op> matchMark(Vec2 at) {
    constexpr double kArm = 4.0;
    return {Stroke{{at - Vec2{kArm, 0}, at + Vec2{kArm, 0}}, LineRole::Construction},
            Stroke{{at - Vec2{0, kArm}, at + Vec2{0, kArm}}, LineRole::Construction},
            ArcOp{at, 2.5, {}, Angle::degrees(360.0), LineRole::Construction}};
}

// One line of a seam, in the drawing's coordinates: upright at x = `at` or level at y = `at`, from
// `from` to `to` along it.
struct Seam {
    bool isUpright = true;
    double at = 0.0;
    double from = 0.0;
    double to = 0.0;
    bool isCut = true;  // on this tile; else the neighbour is glued to it here
    std::string neighbour;

    [[nodiscard]] Vec2 point(double along, double off = 0.0) const {
        return isUpright ? Vec2{at + off, along} : Vec2{along, at + off};
    }
};

// Two places along the seam, near its ends but clear of lettering and lines where there are such
// places.
std::vector<double> markPlaces(const Seam& seam, const FreeSpace& space) {
    constexpr Vec2 kHalf{4.5, 4.5};
    constexpr double kInset = 18.0;
    std::vector<double> places;
    for (const bool atStart : {true, false}) {
        const double wanted = atStart ? seam.from + kInset : seam.to - kInset;
        double found = wanted;
        for (double off = 0.0; off < (seam.to - seam.from) / 2.0 - kInset - kHalf.x; off += 3.0) {
            const double along = atStart ? wanted + off : wanted - off;
            const Vec2 centre = seam.point(along);
            if (space.isFree({centre - kHalf, centre + kHalf})) {
                found = along;
                break;
            }
        }
        places.push_back(found);
    }
    return places;
}

// Where along the seam words `width` wide lie on nothing of the drawing, near its middle; none
// where there is no such place. `beside` is how far from the line they stand.
std::optional<double> wordsPlace(const Seam& seam,
                                 double beside,
                                 double width,
                                 const FreeSpace& space) {
    constexpr double kHalfHeight = 2.0;
    const double middle = (seam.from + seam.to) / 2.0;
    const double reach = (seam.to - seam.from) / 2.0 - width / 2.0 - 30.0;
    const Vec2 half = seam.isUpright ? Vec2{kHalfHeight, width / 2.0 + 1.0}
                                     : Vec2{width / 2.0 + 1.0, kHalfHeight};
    for (double off = 0.0; off < reach; off += 4.0) {
        for (const double along : {middle - off, middle + off}) {
            const Vec2 centre = seam.point(along, beside);
            if (space.isFree({centre - half, centre + half})) {
                return along;
            }
        }
    }
    return std::nullopt;
}

void addSeam(const Seam& seam,
             const Page& page,
             const FreeSpace& space,
             const TextMetrics& metrics,
             std::vector<Op>& ops) {
    constexpr double kHeight = 2.5;
    const double off = seam.isCut ? 1.0 : 2.0;  // within kGluedEdge of what is cut away
    const auto onPage = [&](Vec2 inDrawing) {
        return inDrawing - page.origin + page.printable.min;
    };
    ops.push_back(Stroke{{onPage(seam.point(seam.from)), onPage(seam.point(seam.to))},
                         seam.isCut ? LineRole::CutPlane : LineRole::Construction});
    for (const double along : markPlaces(seam, space)) {
        append(ops, matchMark(onPage(seam.point(along))));
    }
    // On what the cut takes away, or the neighbour covers.
    const std::string text = seam.isCut ? "cut here, and glue on " + seam.neighbour
                                        : "glue " + seam.neighbour + " up to here";
    const double beside = (off + kHeight / 2.0) * (seam.isCut ? 1.0 : -1.0);
    const std::optional<double> along =
        wordsPlace(seam, beside, metrics.width(text, kHeight, false), space);
    if (!along) {
        return;
    }
    const double baseline = seam.isCut ? off + kHeight : -off;
    TextOp words{onPage(seam.point(*along, baseline)), text, kHeight, Align::Centre, false, false};
    words.isTurned = seam.isUpright;
    ops.push_back(std::move(words));
}

}  // namespace

std::vector<Op> seamsOf(const TileGrid& grid,
                        int row,
                        int column,
                        const Page& page,
                        const FreeSpace& space,
                        const TextMetrics& metrics) {
    const Vec2 from = page.origin;
    const Vec2 to = page.origin + grid.room();
    std::vector<Op> ops;
    if (column > 0) {
        addSeam(
            {true, grid.cutAfterColumn(column - 1), from.y, to.y, false, tileName(row, column - 1)},
            page,
            space,
            metrics,
            ops);
    }
    if (column + 1 < grid.columns) {
        addSeam({true, grid.cutAfterColumn(column), from.y, to.y, true, tileName(row, column + 1)},
                page,
                space,
                metrics,
                ops);
    }
    if (row > 0) {
        addSeam({false, grid.cutAfterRow(row - 1), from.x, to.x, false, tileName(row - 1, column)},
                page,
                space,
                metrics,
                ops);
    }
    if (row + 1 < grid.rows) {
        addSeam({false, grid.cutAfterRow(row), from.x, to.x, true, tileName(row + 1, column)},
                page,
                space,
                metrics,
                ops);
    }
    return ops;
}

}  // namespace shoulderline
