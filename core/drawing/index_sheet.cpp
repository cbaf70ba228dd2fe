#include "core/drawing/index_sheet.h"

#include <algorithm>

#include "core/drawing/title_block.h"

namespace shoulderline {

namespace {

constexpr double kClear = 8.0;
constexpr double kRow = 6.5;
constexpr double kHeight = 3.5;
constexpr double kColumn = 84.0;
constexpr double kNumber = 9.0;  // room for the number

struct Columns {
    std::size_t rows = 1;
    std::size_t columns = 1;
};

Columns columnsOn(Vec2 paper) {
    const Vec2 room = drawingSpace(paper).size() - Vec2{2.0 * kClear, 2.0 * kClear};
    return {std::max<std::size_t>(1, static_cast<std::size_t>(room.y / kRow)),
            std::max<std::size_t>(1, static_cast<std::size_t>(room.x / kColumn))};
}

}  // namespace

int indexSheetCount(Vec2 paper, std::size_t entries) {
    const Columns columns = columnsOn(paper);
    const std::size_t each = columns.rows * columns.columns;
    return static_cast<int>((entries + each - 1) / each);
}

std::vector<Sheet> indexSheets(const Piece& piece,
                               const std::vector<std::string>& titles,
                               const SheetFrame& frame,
                               const TextMetrics& metrics) {
    const Rect space = drawingSpace(frame.paper);
    const Columns columns = columnsOn(frame.paper);
    const std::size_t each = columns.rows * columns.columns;
    const int own = indexSheetCount(frame.paper, titles.size());
    std::vector<Sheet> sheets;
    for (std::size_t first = 0; first < titles.size(); first += each) {
        SheetFrame numbered = frame;
        numbered.number = static_cast<int>(sheets.size()) + 1;
        TitleBlock block;
        block.title = "index of sheets";
        block.piece = piece.name;
        block.sizeCaption = "";
        block.units = unitsOf(piece);
        block.date = frame.date;
        block.sheet = sheetNumber(numbered);
        block.isThirdAngle = piece.unit == Unit::Inch;
        Sheet sheet;
        sheet.title = "index of sheets";
        sheet.size = frame.paper;
        sheet.ops = frameAndTitle(frame.paper, block, metrics);
        for (std::size_t i = first; i < std::min(titles.size(), first + each); ++i) {
            const std::size_t place = i - first;
            const Vec2 at =
                space.min +
                Vec2{kClear + kColumn * static_cast<double>(place / columns.rows),
                     kClear + kHeight + kRow * static_cast<double>(place % columns.rows)};
            const FittedText title = fitText(titles[i], kHeight, kColumn - kNumber - 6.0, metrics);
            sheet.ops.push_back(TextOp{at + Vec2{kNumber - 3.0, 0.0},
                                       std::to_string(own + static_cast<int>(i) + 1),
                                       kHeight,
                                       Align::Right,
                                       false,
                                       false});
            sheet.ops.push_back(TextOp{
                at + Vec2{kNumber, 0.0}, title.text, title.height, Align::Left, false, false});
        }
        sheets.push_back(std::move(sheet));
    }
    return sheets;
}

}  // namespace shoulderline
