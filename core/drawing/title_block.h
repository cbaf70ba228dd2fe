#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet.h"
#include "core/drawing/sheets.h"
#include "core/geometry/rect.h"

namespace shoulderline {

// What the title block of a sheet says (after ISO 7200, with what a workshop needs beside it).
struct TitleBlock {
    std::string title;     // "front rail"
    std::string piece;     // "Waiting-room armchair"
    std::string quantity;  // "make 2: 1 as drawn, 1 mirrored"
    std::string material;  // "rail stock: white oak, quarter"
    std::string sizeCaption = "finished size over all, with the grain first";
    std::string size;   // length x width x thickness
    std::string units;  // "inches"
    std::string scale;  // "1 : 4"
    std::string date;
    std::string sheet;  // "3 of 16"
    bool isThirdAngle = true;
};

// The block of one sheet with what every sheet of a piece says alike: the piece, its units, date,
// number and way of projection (third angle for pieces stated in inches, first for others).
[[nodiscard]] TitleBlock titleBlock(std::string title, const Piece& piece, const SheetFrame& frame);
// "29 1/2 wide, 33 deep, 41 high"; `over` in millimetres.
void setSizeOverAll(TitleBlock& block, Vec3 over, const Piece& piece);

inline constexpr double kTitleHeight = 34.0;  // mm
inline constexpr double kTitleWidth = 180.0;  // mm at most, of ISO 7200

// The space inside the border of a sheet: 20 mm for filing at the left, 10 mm elsewhere (ISO 5457);
// less on papers under A4.
[[nodiscard]] Rect innerFrame(Vec2 paper);
// What is left of it for the drawing, over the title block.
[[nodiscard]] Rect drawingSpace(Vec2 paper);

// Border and title block at the bottom right of `paper`.
[[nodiscard]] std::vector<Op> frameAndTitle(Vec2 paper,
                                            const TitleBlock& block,
                                            const TextMetrics& metrics);

// "inches" or "millimetres", by how the piece shows its lengths.
[[nodiscard]] std::string unitsOf(const Piece& piece);
// "3 of 16"; empty without a number.
[[nodiscard]] std::string sheetNumber(const SheetFrame& frame);

// The largest height, of those that lettering has and not over `height`, at which `text` is at most
// `width` wide; the text is cut short with dots where even the smallest is too wide.
struct FittedText {
    std::string text;
    double height = 0.0;
};
[[nodiscard]] FittedText fitText(const std::string& text,
                                 double height,
                                 double width,
                                 const TextMetrics& metrics);

}  // namespace shoulderline
