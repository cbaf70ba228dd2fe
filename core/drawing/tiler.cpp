#include "core/drawing/tiler.h"

#include <algorithm>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/hatching.h"
#include "core/drawing/scale_checks.h"
#include "core/drawing/tile_map.h"
#include "core/drawing/tile_places.h"
#include "core/drawing/tile_seams.h"
#include "core/drawing/title_block.h"
#include "core/drawing/wrapped_text.h"

namespace shoulderline {

namespace {

TextOp tileWords(Vec2 at,
                 const std::string& text,
                 double height,
                 Align align = Align::Left,
                 bool isBold = false) {
    return {at, text, height, align, false, isBold};
}

// The faces of parts that come within `area` of the drawing, in words: "face side, back edge".
std::string facesWithin(const Sheet& drawing, const Rect& area) {
    std::string names;
    std::string open;
    const auto add = [&](const Vec2& a, const Vec2& b) {
        const bool meets = std::max(a.x, b.x) > area.min.x && std::min(a.x, b.x) < area.max.x &&
                           std::max(a.y, b.y) > area.min.y && std::min(a.y, b.y) < area.max.y;
        if (meets && !open.empty() && names.find(open) == std::string::npos) {
            names += (names.empty() ? "" : ", ") + open;
        }
    };
    for (const Op& op : drawing.ops) {
        if (const auto* group = std::get_if<BeginGroup>(&op);
            group != nullptr && group->subject.kind == SubjectKind::Part) {
            open.clear();
            for (const Face face : {Face::FaceSide,
                                    Face::BackSide,
                                    Face::FaceEdge,
                                    Face::BackEdge,
                                    Face::StartEnd,
                                    Face::FarEnd}) {
                const std::string word = ", " + std::string(wordFor(face));
                if (group->name.size() > word.size() &&
                    group->name.compare(group->name.size() - word.size(), word.size(), word) == 0) {
                    open = wordFor(face);
                }
            }
        } else if (const auto* stroke = std::get_if<Stroke>(&op);
                   stroke != nullptr && stroke->role == LineRole::Visible) {
            for (std::size_t i = 0; i + 1 < stroke->points.size(); ++i) {
                add(stroke->points[i], stroke->points[i + 1]);
            }
        }
    }
    return names;
}

}  // namespace

Tiler::Tiler(const Piece& piece,
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
      grid_(tileGrid(drawing.size, paper, options, placesToKeepWhole(drawing, metrics))),
      inInches_(piece.unit == Unit::Inch) {
    if (grid_.count() > 1) {
        diagonal_ = diagonalOn(drawing.size, paper, options);
    }
}

Page Tiler::blank() const {
    Page page;
    page.size = grid_.page;
    page.printable = grid_.printable;
    page.furniture.size = grid_.page;
    page.furniture.lines = LineGroup::Fine;
    return page;
}

// Under the drawing: the bar, and beside it what the page is.
void Tiler::addCaption(const std::string& name, const std::string& where, Page& page) const {
    std::vector<Op>& ops = page.furniture.ops;
    const double top = page.printable.max.y;
    const double left = page.printable.min.x;
    append(ops, checkBar({left + 0.5, top + 8.0}, inInches_));
    append(ops, uprightCheckBar({page.printable.max.x + 1.2, page.printable.max.y}));
    const double x = left + (inInches_ ? kCheckInches * Length::kMmPerInch : kCheckLength) + 5.0;
    const double width = page.size.x - page.printable.min.x - x;
    constexpr double kTitle = 3.5;
    const std::string part = about_.name + (name.empty() ? std::string() : ", " + name);
    const std::string faces =
        page.turn != Angle() || name == "map of its sheets"
            ? std::string()
            : facesWithin(drawing_, {page.origin, page.origin + grid_.room()});
    const FittedText title = fitText(part, kTitle, width, metrics_);
    ops.push_back(tileWords({x, top + 4.0}, title.text, title.height, Align::Left, true));
    addCaptionLines(
        {about_.about + (faces.empty() ? "" : "; " + faces),
         piece_.name + (where.empty() ? "" : "; " + where) + (date_.empty() ? "" : "; " + date_),
         "full size: print at 100 %, actual size; the middle of a line is the size"},
        {x, top + 7.6},
        width,
        ops);
}

// In lettering that lets all of them stand in full in the strip.
void Tiler::addCaptionLines(const std::vector<std::string>& texts,
                            Vec2 at,
                            double width,
                            std::vector<Op>& ops) const {
    constexpr double kLarge = 2.5;
    constexpr double kSmall = 1.8;
    const auto linesAt = [&](double height) {
        std::vector<std::string> lines;
        for (const std::string& text : texts) {
            for (std::string& line : wrapText(text, width, height, metrics_, " ")) {
                lines.push_back(std::move(line));
            }
        }
        return lines;
    };
    std::vector<std::string> lines = linesAt(kLarge);
    double height = kLarge;
    double row = 3.6;
    if (lines.size() > texts.size()) {
        lines = linesAt(kSmall);
        height = kSmall;
        const double room = 2.0 * row + 0.6;  // the strip's, from the first line to the last
        row = std::min(row, room / static_cast<double>(std::max<std::size_t>(1, lines.size() - 1)));
    }
    for (const std::string& line : lines) {
        ops.push_back(tileWords(at, line, height));
        at.y += row;
    }
}

void Tiler::addSquare(Page& page) const {
    std::vector<Op> occupied = page.furniture.ops;
    if (diagonal_) {
        // The drawing's slanting rectangle, crossed so that nothing goes inside it.
        const Vec2 size = drawing_.size;
        std::vector<Vec2> ring = ringOf({{0, 0}, size});
        for (Vec2& p : ring) {
            p = page.onPage(p);
        }
        append(occupied, hatch({{ring}, {}}, Angle(), 5.0));
        ring.push_back(ring.front());
        occupied.push_back(Stroke{ring, LineRole::Construction});
    } else {
        std::vector<Op> inside = drawing_.ops;
        move(inside, page.printable.min - page.origin);
        append(occupied, std::move(inside));
    }
    const std::optional<Vec2> place =
        FreeSpace(occupied, metrics_)
            .placeFor(checkSquareSize(inInches_), {page.printable.min, page.printable.max});
    if (place) {
        append(page.furniture.ops, checkSquare(*place, inInches_));
    }
}

Page Tiler::tile(int row, int column, std::size_t content) const {
    Page page = blank();
    page.content = content;
    page.origin = grid_.origin(row, column);
    const bool isOne = grid_.count() == 1;
    page.name = isOne ? about_.name : about_.name + ", " + tileName(row, column);
    page.furniture.title = page.name;
    append(page.furniture.ops, seamsOf(grid_, row, column, page, space_, metrics_));
    addCaption(isOne ? std::string() : tileName(row, column),
               isOne ? std::string()
                     : "row " + std::to_string(row + 1) + " of " + std::to_string(grid_.rows) +
                           ", column " + std::to_string(column + 1) + " of " +
                           std::to_string(grid_.columns),
               page);
    return page;
}

Page Tiler::alongDiagonal(std::size_t content) const {
    Page page = blank();
    page.size = page.furniture.size = diagonal_->page;
    page.printable = diagonal_->printable;
    page.origin = diagonal_->origin;
    page.turn = diagonal_->turn;
    page.content = content;
    page.name = page.furniture.title = about_.name;
    addCaption({}, "along the diagonal", page);
    addSquare(page);
    return page;
}

std::vector<Page> Tiler::pages(std::size_t content, std::size_t empty) const {
    if (diagonal_) {
        return {alongDiagonal(content)};
    }
    std::vector<Page> pages;
    if (grid_.count() > 1) {
        pages.push_back(map(empty));
    }
    for (int r = 0; r < grid_.rows; ++r) {
        for (int column = 0; column < grid_.columns; ++column) {
            pages.push_back(tile(r, column, content));
            addSquare(pages.back());
        }
    }
    return pages;
}

Page Tiler::map(std::size_t empty) const {
    Page page = blank();
    page.content = empty;
    page.name = about_.name + ", map";
    page.furniture.title = page.name;
    std::vector<Op>& ops = page.furniture.ops;
    const Vec2 corner = page.printable.min;
    const double width = grid_.room().x;
    const FittedText title = fitText(
        about_.name + ": " + std::to_string(grid_.count()) + " sheets", 7.0, width, metrics_);
    ops.push_back(tileWords(corner + Vec2{0, 8.0}, title.text, title.height, Align::Left, true));
    double y = 15.0;
    for (const std::string& text :
         {about_.size,
          std::string("Print every sheet at 100 %, actual size, and check a square with a rule."),
          std::string("Join each row from the left: cut along the chain line of the left sheet and "
                      "glue it on the right one,"),
          std::string("its edge to the fine line, cross on cross. Then join the rows from the top "
                      "in the same way.")}) {
        for (const std::string& line : wrapText(text, width, 3.5, metrics_)) {
            ops.push_back(tileWords(corner + Vec2{0, y}, line, 3.5));
            y += 6.5;
        }
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
    append(ops, tileMap(grid_, drawing_, mapRoom, metrics_));
    addCaption("map of its sheets", {}, page);
    return page;
}

}  // namespace shoulderline
