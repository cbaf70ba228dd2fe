#include <algorithm>
#include <numeric>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/free_space.h"
#include "core/drawing/paper.h"
#include "core/drawing/part_sizes.h"
#include "core/drawing/scale_checks.h"
#include "core/drawing/strips.h"
#include "core/drawing/tiles.h"
#include "core/drawing/title_block.h"

namespace shoulderline {

namespace {

void append(std::vector<Op>& ops, std::vector<Op> more) {
    ops.insert(
        ops.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

TextOp words(Vec2 at,
             const std::string& text,
             double height,
             Align align = Align::Left,
             bool isBold = false) {
    return {at, text, height, align, false, isBold};
}

// A cross in a circle; neighbouring tiles print it in the same place of the drawing.
std::vector<Op> matchMark(Vec2 at) {
    constexpr double kArm = 4.0;
    return {Stroke{{at - Vec2{kArm, 0}, at + Vec2{kArm, 0}}, LineRole::Construction},
            Stroke{{at - Vec2{0, kArm}, at + Vec2{0, kArm}}, LineRole::Construction},
            ArcOp{at, 2.5, {}, Angle::degrees(360.0), LineRole::Construction}};
}

// Where the drawing's dimensions end: what a seam should not run through.
PlacesToKeepWhole placesIn(const Sheet& drawing) {
    PlacesToKeepWhole places;
    for (const Op& op : drawing.ops) {
        if (const auto* dimension = std::get_if<DimensionOp>(&op)) {
            std::vector<double>& along = dimension->isTurned ? places.y : places.x;
            along.push_back(dimension->isTurned ? dimension->from.y : dimension->from.x);
            along.push_back(dimension->isTurned ? dimension->to.y : dimension->to.x);
        }
    }
    return places;
}

// Makes the pages of one drawing.
class Tiler {
  public:
    Tiler(const Piece& piece,
          const FullSizeDrawing& about,
          const Sheet& drawing,
          const Paper& paper,
          const TileOptions& options,
          const std::string& date,
          const TextMetrics& metrics)
        : piece_(piece),
          about_(about),
          drawing_(drawing),
          date_(date),
          metrics_(metrics),
          space_(drawing.ops, metrics),
          grid_(tileGrid(drawing.size, paper, options, placesIn(drawing))),
          inInches_(piece.unit == Unit::Inch) {}

    [[nodiscard]] bool needsMap() const { return grid_.count() > 1; }
    [[nodiscard]] Page map(std::size_t emptyContent) const;
    [[nodiscard]] std::vector<Page> tiles(std::size_t content) const;

  private:
    [[nodiscard]] Page blank() const {
        Page page;
        page.size = grid_.page;
        page.printable = grid_.printable;
        page.furniture.size = grid_.page;
        page.furniture.lines = LineGroup::Fine;
        return page;
    }
    [[nodiscard]] Page tile(int row, int column, std::size_t content) const;
    void addCaption(const std::string& name, const std::string& where, std::vector<Op>& ops) const;
    void addSeams(int row, int column, const Page& page, std::vector<Op>& ops) const;
    void addSeam(bool isUpright,
                 double cut,
                 double from,
                 double to,
                 const std::string& here,
                 const std::string& next,
                 const Page& page,
                 std::vector<Op>& ops) const;
    [[nodiscard]] std::vector<double> markPlaces(bool isUpright,
                                                 double cut,
                                                 double from,
                                                 double to) const;
    [[nodiscard]] double namePlace(
        bool isUpright, double beside, double from, double to, double width) const;
    [[nodiscard]] std::vector<Op> thumbnail(const Rect& room) const;

    const Piece& piece_;
    const FullSizeDrawing& about_;
    const Sheet& drawing_;
    const std::string& date_;
    const TextMetrics& metrics_;
    FreeSpace space_;  // in the drawing
    TileGrid grid_;
    bool inInches_;
};

// Under the drawing: the bar, and beside it what the page is.
void Tiler::addCaption(const std::string& name,
                       const std::string& where,
                       std::vector<Op>& ops) const {
    const double top = grid_.printable.max.y;
    const double left = grid_.printable.min.x;
    append(ops, checkBar({left + 0.5, top + 8.0}, inInches_));
    append(ops, uprightCheckBar({grid_.printable.max.x + 1.2, grid_.printable.max.y}));
    const double x = left + (inInches_ ? kCheckInches * Length::kMmPerInch : kCheckLength) + 5.0;
    const double width = grid_.page.x - grid_.printable.min.x - x;
    const std::string part = about_.name + (name.empty() ? std::string() : ", " + name);
    const std::string lines[4] = {
        part,
        about_.about,
        piece_.name + (where.empty() ? "" : "; " + where) + (date_.empty() ? "" : "; " + date_),
        "full size: print at 100 %, actual size; the middle of a line is the size"};
    double y = top + 4.0;
    for (const std::string& text : lines) {
        const bool isFirst = &text == &lines[0];
        const FittedText fitted = fitText(text, isFirst ? 3.5 : 2.5, width, metrics_);
        ops.push_back(words({x, y}, fitted.text, fitted.height, Align::Left, isFirst));
        y += 3.6;
    }
}

// Two places along the seam, near its ends but clear of lettering and lines where there are such
// places.
std::vector<double> Tiler::markPlaces(bool isUpright, double cut, double from, double to) const {
    constexpr double kHalf = 4.5;
    constexpr double kInset = 18.0;
    std::vector<double> places;
    for (const bool atStart : {true, false}) {
        const double wanted = atStart ? from + kInset : to - kInset;
        double found = wanted;
        for (double off = 0.0; off < (to - from) / 2.0 - kInset - kHalf; off += 3.0) {
            const double along = atStart ? wanted + off : wanted - off;
            const Vec2 centre = isUpright ? Vec2{cut, along} : Vec2{along, cut};
            if (space_.isFree({centre - Vec2{kHalf, kHalf}, centre + Vec2{kHalf, kHalf}})) {
                found = along;
                break;
            }
        }
        places.push_back(found);
    }
    return places;
}

// Where along the seam words `width` wide lie on nothing of the drawing, near its middle; its
// middle where there is no such place.
double Tiler::namePlace(bool isUpright, double beside, double from, double to, double width) const {
    constexpr double kHalfHeight = 2.0;
    const double middle = (from + to) / 2.0;
    const double reach = (to - from) / 2.0 - width / 2.0 - 30.0;
    for (double off = 0.0; off < reach; off += 4.0) {
        for (const double along : {middle - off, middle + off}) {
            const Vec2 centre = isUpright ? Vec2{beside, along} : Vec2{along, beside};
            const Vec2 half = isUpright ? Vec2{kHalfHeight, width / 2.0 + 1.0}
                                        : Vec2{width / 2.0 + 1.0, kHalfHeight};
            if (space_.isFree({centre - half, centre + half})) {
                return along;
            }
        }
    }
    return middle;
}

// One line to cut along, in the drawing's coordinates, with its match marks, on the page that it
// crosses.
void Tiler::addSeam(bool isUpright,
                    double cut,
                    double from,
                    double to,
                    const std::string& here,
                    const std::string& next,
                    const Page& page,
                    std::vector<Op>& ops) const {
    const auto onPage = [&](double along) {
        const Vec2 inDrawing = isUpright ? Vec2{cut, along} : Vec2{along, cut};
        return inDrawing - page.origin + page.printable.min;
    };
    ops.push_back(Stroke{{onPage(from), onPage(to)}, LineRole::CutPlane});
    for (const double along : markPlaces(isUpright, cut, from, to)) {
        append(ops, matchMark(onPage(along)));
    }
    // The neighbour's name, on the side that the cut takes away.
    const Vec2 origin = page.origin + grid_.room() * 0.5;
    const bool isAhead = isUpright ? cut > origin.x : cut > origin.y;
    const double height = 2.5;
    const std::string text = here + " meets " + next;
    const Vec2 middle = onPage(namePlace(isUpright,
                                         cut + (isAhead ? 2.0 + height / 2.0 : -2.0 - height / 2.0),
                                         from,
                                         to,
                                         metrics_.width(text, height, false)));
    if (isUpright) {
        TextOp name =
            words(middle + Vec2{isAhead ? 2.0 + height : -2.0, 0.0}, text, height, Align::Centre);
        name.isTurned = true;
        ops.push_back(name);
    } else {
        ops.push_back(
            words(middle + Vec2{0.0, isAhead ? 2.0 + height : -2.0}, text, height, Align::Centre));
    }
}

void Tiler::addSeams(int row, int column, const Page& page, std::vector<Op>& ops) const {
    const Vec2 from = page.origin;
    const Vec2 to = page.origin + grid_.room();
    const std::string here = tileName(row, column);
    for (const int beside : {column - 1, column}) {
        if (beside >= 0 && beside + 1 < grid_.columns) {
            addSeam(true,
                    grid_.cutAfterColumn(beside),
                    from.y,
                    to.y,
                    here,
                    tileName(row, beside == column ? column + 1 : beside),
                    page,
                    ops);
        }
    }
    for (const int beside : {row - 1, row}) {
        if (beside >= 0 && beside + 1 < grid_.rows) {
            addSeam(false,
                    grid_.cutAfterRow(beside),
                    from.x,
                    to.x,
                    here,
                    tileName(beside == row ? row + 1 : beside, column),
                    page,
                    ops);
        }
    }
}

Page Tiler::tile(int row, int column, std::size_t content) const {
    Page page = blank();
    page.content = content;
    page.origin = grid_.origin(row, column);
    const bool isOne = grid_.count() == 1;
    page.name = isOne ? about_.name : about_.name + ", " + tileName(row, column);
    page.furniture.title = page.name;
    std::vector<Op>& ops = page.furniture.ops;
    addSeams(row, column, page, ops);

    std::vector<Op> occupied = ops;
    std::vector<Op> inside = drawing_.ops;
    move(inside, page.printable.min - page.origin);
    append(occupied, std::move(inside));
    const Rect room{page.printable.min, page.printable.max};
    if (const std::optional<Vec2> place =
            FreeSpace(occupied, metrics_).placeFor(checkSquareSize(inInches_), room)) {
        append(ops, checkSquare(*place, inInches_));
    }
    addCaption(isOne ? std::string() : tileName(row, column),
               isOne ? std::string()
                     : "row " + std::to_string(row + 1) + " of " + std::to_string(grid_.rows) +
                           ", column " + std::to_string(column + 1) + " of " +
                           std::to_string(grid_.columns),
               ops);
    return page;
}

std::vector<Page> Tiler::tiles(std::size_t content) const {
    std::vector<Page> pages;
    for (int row = 0; row < grid_.rows; ++row) {
        for (int column = 0; column < grid_.columns; ++column) {
            pages.push_back(tile(row, column, content));
        }
    }
    return pages;
}

// The drawing's outlines small, with the cuts and the names of the tiles.
std::vector<Op> Tiler::thumbnail(const Rect& room) const {
    const Vec2 covered =
        grid_.origin(grid_.rows - 1, grid_.columns - 1) + grid_.room() - grid_.start;
    const double scale = std::min({room.size().x / covered.x, room.size().y / covered.y, 0.5});
    const Vec2 corner = (room.min + room.max - covered * scale) * 0.5;
    const auto place = [&](Vec2 p) { return corner + (p - grid_.start) * scale; };
    std::vector<Op> ops;
    for (const Op& op : drawing_.ops) {
        const Stroke* const stroke = std::get_if<Stroke>(&op);
        if (stroke != nullptr && stroke->role == LineRole::Visible) {
            Stroke small{{}, LineRole::Construction};
            for (const Vec2& p : stroke->points) {
                small.points.push_back(place(p));
            }
            ops.push_back(std::move(small));
        }
    }
    for (int row = 0; row < grid_.rows; ++row) {
        for (int column = 0; column < grid_.columns; ++column) {
            const Vec2 min{column == 0 ? grid_.start.x : grid_.cutAfterColumn(column - 1),
                           row == 0 ? grid_.start.y : grid_.cutAfterRow(row - 1)};
            const Vec2 max{
                column + 1 == grid_.columns ? grid_.start.x + covered.x
                                            : grid_.cutAfterColumn(column),
                row + 1 == grid_.rows ? grid_.start.y + covered.y : grid_.cutAfterRow(row)};
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

Page Tiler::map(std::size_t emptyContent) const {
    Page page = blank();
    page.content = emptyContent;
    page.name = about_.name + ", map";
    page.furniture.title = page.name;
    std::vector<Op>& ops = page.furniture.ops;
    const Vec2 corner = page.printable.min;
    const double width = grid_.room().x;
    const FittedText title = fitText(
        about_.name + ": " + std::to_string(grid_.count()) + " sheets", 7.0, width, metrics_);
    ops.push_back(words(corner + Vec2{0, 8.0}, title.text, title.height, Align::Left, true));
    double y = 15.0;
    for (const std::string& text :
         {about_.size,
          std::string("Print every sheet at 100 %, actual size, and check the square with a rule."),
          std::string(
              "Cut one of two neighbours along the chain line, lay cross on cross, and tape.")}) {
        const FittedText fitted = fitText(text, 3.5, width, metrics_);
        ops.push_back(words(corner + Vec2{0, y}, fitted.text, fitted.height));
        y += 6.5;
    }
    const Vec2 square = checkSquareSize(inInches_);
    const Rect room{corner + Vec2{0, y}, page.printable.max};
    // The square beside the map on lying sheets, under it on upright ones.
    const bool isLying = room.size().x >= room.size().y;
    const bool hasSquare = room.size().x > square.x + 2.0 && room.size().y > square.y + 2.0;
    Rect mapRoom = room;
    if (hasSquare) {
        append(ops, checkSquare(room.max - square - Vec2{1.0, 2.0}, inInches_));
        (isLying ? mapRoom.max.x : mapRoom.max.y) -= (isLying ? square.x : square.y) + 8.0;
    }
    append(ops, thumbnail(mapRoom));
    addCaption("map of its sheets", {}, ops);
    return page;
}

}  // namespace

PrintJob tiledJob(const Piece& piece,
                  const std::string& title,
                  std::vector<FullSizeDrawing> drawings,
                  const Paper& paper,
                  const TileOptions& options,
                  const std::string& date,
                  const TextMetrics& metrics) {
    PrintJob job;
    job.title = title;
    job.contents.emplace_back();  // of the maps
    for (FullSizeDrawing& drawing : drawings) {
        job.contents.push_back(std::move(drawing.drawing));
        const Tiler tiler(piece, drawing, job.contents.back(), paper, options, date, metrics);
        if (tiler.needsMap()) {
            job.pages.push_back(tiler.map(0));
        }
        for (Page& page : tiler.tiles(job.contents.size() - 1)) {
            job.pages.push_back(std::move(page));
        }
    }
    return job;
}

PrintJob fullSizeJob(const Piece& piece,
                     const ResolvedPiece& resolved,
                     const std::vector<std::size_t>& kinds,
                     const Paper& paper,
                     const TileOptions& options,
                     const std::string& date,
                     const TextMetrics& metrics) {
    const std::vector<PartKind> all = partKinds(resolved);
    std::vector<std::size_t> chosen = kinds;
    if (chosen.empty()) {
        chosen.resize(all.size());
        std::iota(chosen.begin(), chosen.end(), std::size_t{0});
    }
    std::vector<FullSizeDrawing> drawings;
    for (const std::size_t i : chosen) {
        if (i >= all.size()) {
            continue;
        }
        const ResolvedPart& part = resolved.parts[all[i].parts.front()];
        drawings.push_back(
            {partDrawing(piece, resolved, all[i], 1.0, true, metrics),
             all[i].name,
             quantityText(resolved, all[i]) + "; " + materialText(piece, part),
             "finished size over all " + finishedSize(piece, part) + " " + unitsOf(piece)});
    }
    return tiledJob(
        piece, piece.name + ", full size", std::move(drawings), paper, options, date, metrics);
}

}  // namespace shoulderline
