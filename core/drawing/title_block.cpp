#include "core/drawing/title_block.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/drawing/trade_marks.h"
#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

constexpr double kInset = 1.5;
constexpr double kTitleCaptionHeight = 1.8;
constexpr double kValueHeight = 3.5;

// A cell of the block: `left` and `right` in parts of its width.
struct Cell {
    double left = 0.0;
    double right = 1.0;
    int row = 0;
    std::string caption;
    std::string value;
    double height = kValueHeight;
    bool isBold = false;
};

constexpr std::array<double, 4> kRows{0.0, 12.0, 23.0, kTitleHeight};

Stroke line(Vec2 a, Vec2 b, LineRole role) {
    return {{a, b}, role};
}

Stroke rectangle(const Rect& r, LineRole role) {
    return {{r.min, {r.max.x, r.min.y}, r.max, {r.min.x, r.max.y}, r.min}, role};
}

Rect titleRect(Vec2 paper) {
    const Rect inner = innerFrame(paper);
    const double width = std::min(kTitleWidth, inner.size().x);
    return {{inner.max.x - width, inner.max.y - kTitleHeight}, inner.max};
}

void addCell(const Rect& block,
             const Cell& cell,
             const TextMetrics& metrics,
             std::vector<Op>& ops) {
    const double width = block.size().x;
    const double left = block.min.x + cell.left * width;
    const double right = block.min.x + cell.right * width;
    const double top = block.min.y + kRows[static_cast<std::size_t>(cell.row)];
    const double bottom = block.min.y + kRows[static_cast<std::size_t>(cell.row) + 1];
    ops.push_back(rectangle({{left, top}, {right, bottom}}, LineRole::Dimension));
    ops.push_back(TextOp{{left + kInset, top + kInset + kTitleCaptionHeight},
                         cell.caption,
                         kTitleCaptionHeight,
                         Align::Left,
                         false,
                         false});
    const FittedText fitted =
        fitText(cell.value, cell.height, right - left - 2.0 * kInset, metrics);
    ops.push_back(TextOp{{left + kInset, bottom - 2.0},
                         fitted.text,
                         fitted.height,
                         Align::Left,
                         false,
                         cell.isBold});
}

}  // namespace

FittedText fitText(const std::string& text,
                   double height,
                   double width,
                   const TextMetrics& metrics) {
    constexpr std::array<double, 5> kHeights{7.0, 5.0, 3.5, 2.5, 1.8};  // ISO 3098
    for (const double h : kHeights) {
        if (h <= height && metrics.width(text, h, false) <= width) {
            return {text, h};
        }
    }
    std::string shorter = text;
    while (!shorter.empty() && metrics.width(shorter + "...", kHeights.back(), false) > width) {
        do {
            shorter.pop_back();
        } while (!shorter.empty() && (static_cast<unsigned char>(shorter.back()) & 0xC0) == 0x80);
    }
    return {shorter + "...", kHeights.back()};
}

Rect innerFrame(Vec2 paper) {
    const bool isSmall = std::min(paper.x, paper.y) < 200.0;
    const double edge = isSmall ? 5.0 : 10.0;
    const double filing = isSmall ? 5.0 : 20.0;
    return {{filing, edge}, {paper.x - edge, paper.y - edge}};
}

Rect drawingSpace(Vec2 paper) {
    Rect space = innerFrame(paper);
    space.max.y -= kTitleHeight;
    return space;
}

std::string unitsOf(const Piece& piece) {
    const bool isMetric = unitOf(piece.style) == Unit::Millimetre;
    if (piece.style.withOther) {
        return isMetric ? "mm [in]" : "in [mm]";
    }
    return isMetric ? "millimetres" : "inches";
}

std::string sheetNumber(const SheetFrame& frame) {
    return frame.number > 0 ? std::to_string(frame.number) + " of " + std::to_string(frame.count)
                            : std::string();
}

TitleBlock titleBlock(std::string title, const Piece& piece, const SheetFrame& frame) {
    TitleBlock block;
    block.title = std::move(title);
    block.piece = piece.name;
    block.units = unitsOf(piece);
    block.date = frame.date;
    block.sheet = sheetNumber(frame);
    block.isThirdAngle = piece.unit == Unit::Inch;
    return block;
}

void setSizeOverAll(TitleBlock& block, Vec3 over, const Piece& piece) {
    const auto shown = [&](double mm) { return letterLength(Length::mm(mm), piece.style); };
    block.sizeCaption = "size over all";
    block.size = shown(over.x) + " wide, " + shown(over.y) + " deep, " + shown(over.z) + " high";
}

std::vector<Op> frameAndTitle(Vec2 paper, const TitleBlock& block, const TextMetrics& metrics) {
    std::vector<Op> ops;
    ops.push_back(rectangle(innerFrame(paper), LineRole::Border));
    const Rect rect = titleRect(paper);
    ops.push_back(line(rect.min, {rect.max.x, rect.min.y}, LineRole::Visible));
    ops.push_back(line(rect.min, {rect.min.x, rect.max.y}, LineRole::Visible));
    const std::vector<Cell> cells{
        {0.0, 0.56, 0, "", block.title, 5.0, true},
        {0.56, 1.0, 0, "piece", block.piece, kValueHeight, false},
        {0.0,
         0.42,
         1,
         block.quantity.empty() ? "" : "quantity",
         block.quantity,
         kValueHeight,
         false},
        {0.42, 0.84, 1, "stock", block.material, kValueHeight, false},
        {0.0, 0.40, 2, block.sizeCaption, block.size, kValueHeight, false},
        {0.40, 0.54, 2, "sizes in", block.units, kValueHeight, false},
        {0.54, 0.65, 2, "scale", block.scale, kValueHeight, false},
        {0.65, 0.84, 2, "date", block.date, kValueHeight, false},
        {0.84, 1.0, 2, "sheet", block.sheet, kValueHeight, false},
    };
    for (const Cell& cell : cells) {
        addCell(rect, cell, metrics, ops);
    }
    // The sign of the projection has the cell that is left.
    const double left = rect.min.x + 0.84 * rect.size().x;
    const double h = std::min(2.5, 0.16 * rect.size().x / 8.0);
    const Vec2 middle{(left + rect.max.x) / 2.0 - 3.5 * h,
                      rect.min.y + (kRows[1] + kRows[2]) / 2.0};
    for (Op& op : projectionSymbol(middle, h, block.isThirdAngle)) {
        ops.push_back(std::move(op));
    }
    return ops;
}

}  // namespace shoulderline
