#include "core/drawing/index_sheet.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/drawing/title_block.h"
#include "core/drawing/wrapped_text.h"

namespace shoulderline {

namespace {

constexpr double kRoundIndex = 8.0;
constexpr double kRowHeight = 3.5;
constexpr double kNumber = 9.0;  // room for the number
constexpr double kBetweenLists = 8.0;

Vec2 roomForIndex(Vec2 paper) {
    return drawingSpace(paper).size() - Vec2{2.0 * kRoundIndex, 2.0 * kRoundIndex};
}

// How an index is set out: entries one under another in columns, each on as many lines as it takes.
struct Columns {
    double width = 0.0;  // of one, with the gap after it
    double row = 0.0;
    std::size_t each = 1;                          // entries to a sheet
    std::vector<std::vector<std::string>> titles;  // line by line
};

// Where the entries from `first` on stand: column and row of each, up to the end of the sheet.
struct IndexPlace {
    std::size_t column = 0;
    std::size_t row = 0;
};
std::vector<IndexPlace> placesFrom(std::size_t first,
                                   const Columns& columns,
                                   std::size_t rows,
                                   std::size_t most) {
    std::vector<IndexPlace> places;
    IndexPlace at;
    for (std::size_t i = first; i < columns.titles.size(); ++i) {
        const std::size_t lines = columns.titles[i].size();
        if (at.row + lines > rows && at.row > 0) {
            at = {at.column + 1, 0};
        }
        if (at.column >= most) {
            break;
        }
        places.push_back(at);
        at.row += lines;
    }
    return places;
}

// In as many columns as `width` of text lets stand side by side.
Columns columnsOf(const std::vector<std::string>& titles,
                  Vec2 room,
                  std::size_t count,
                  double row,
                  const TextMetrics& metrics) {
    Columns columns;
    columns.width = (room.x + kBetweenLists) / static_cast<double>(count);
    columns.row = row;
    for (const std::string& title : titles) {
        columns.titles.push_back(
            wrapText(title, columns.width - kBetweenLists - kNumber, kRowHeight, metrics, "  "));
    }
    const auto rows = static_cast<std::size_t>(room.y / row);
    columns.each = std::max<std::size_t>(1, placesFrom(0, columns, rows, count).size());
    return columns;
}

// The first of these that holds all entries on one sheet: titles in one line, rows closer, titles
// on two lines. Else the first of all.
Columns setOut(Vec2 paper, const std::vector<std::string>& titles, const TextMetrics& metrics) {
    constexpr double kWide = 6.5;
    constexpr double kClose = 5.6;
    const Vec2 room = roomForIndex(paper);
    double widest = 0.0;
    for (const std::string& title : titles) {
        widest = std::max(widest, metrics.width(title, kRowHeight, false) + 0.5);
    }
    const double full = kNumber + widest + kBetweenLists;
    const auto inFull =
        std::max<std::size_t>(1, static_cast<std::size_t>((room.x + kBetweenLists) / full));
    std::optional<Columns> first;
    for (const std::size_t count : {inFull, inFull + 1}) {
        for (const double row : {kWide, kClose}) {
            Columns columns = columnsOf(titles, room, count, row, metrics);
            if (columns.each >= titles.size()) {
                return columns;
            }
            if (!first) {
                first = std::move(columns);
            }
        }
    }
    // Shared out evenly over as many sheets as it takes.
    const std::size_t sheets = (titles.size() + first->each - 1) / first->each;
    first->each = (titles.size() + sheets - 1) / sheets;
    return *std::move(first);
}

}  // namespace

int indexSheetCount(Vec2 paper,
                    const std::vector<std::string>& titles,
                    const TextMetrics& metrics) {
    const std::size_t each = setOut(paper, titles, metrics).each;
    return static_cast<int>((titles.size() + each - 1) / each);
}

std::vector<Sheet> indexSheets(const Piece& piece,
                               const std::vector<std::string>& titles,
                               const SheetFrame& frame,
                               const TextMetrics& metrics) {
    const Rect space = drawingSpace(frame.paper);
    const Columns columns = setOut(frame.paper, titles, metrics);
    const auto rows = static_cast<std::size_t>(roomForIndex(frame.paper).y / columns.row);
    const auto most = static_cast<std::size_t>(
        std::lround((roomForIndex(frame.paper).x + kBetweenLists) / columns.width));
    const int own = indexSheetCount(frame.paper, titles, metrics);
    std::vector<Sheet> sheets;
    for (std::size_t first = 0; first < titles.size(); first += columns.each) {
        SheetFrame numbered = frame;
        numbered.number = static_cast<int>(sheets.size()) + 1;
        TitleBlock block = titleBlock("index of sheets", piece, numbered);
        block.sizeCaption = "";
        Sheet sheet;
        sheet.title = "index of sheets";
        sheet.size = frame.paper;
        sheet.ops = frameAndTitle(frame.paper, block, metrics);
        const std::vector<IndexPlace> places = placesFrom(first, columns, rows, most);
        for (std::size_t i = 0; i < std::min(places.size(), columns.each); ++i) {
            Vec2 at =
                space.min +
                Vec2{kRoundIndex + columns.width * static_cast<double>(places[i].column),
                     kRoundIndex + kRowHeight + columns.row * static_cast<double>(places[i].row)};
            sheet.ops.push_back(TextOp{at + Vec2{kNumber - 3.0, 0.0},
                                       std::to_string(own + static_cast<int>(first + i) + 1),
                                       kRowHeight,
                                       Align::Right,
                                       false,
                                       false});
            for (const std::string& line : columns.titles[first + i]) {
                sheet.ops.push_back(
                    TextOp{at + Vec2{kNumber, 0.0}, line, kRowHeight, Align::Left, false, false});
                at.y += columns.row;
            }
        }
        sheets.push_back(std::move(sheet));
    }
    return sheets;
}

}  // namespace shoulderline
