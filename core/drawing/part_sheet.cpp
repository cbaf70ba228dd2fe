#include "core/drawing/part_sheet.h"

#include <algorithm>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/part_drawing.h"
#include "core/drawing/part_sizes.h"
#include "core/drawing/scales.h"
#include "core/drawing/title_block.h"
#include "core/drawing/trade_marks.h"

namespace shoulderline {

std::string quantityText(const ResolvedPiece& resolved, const PartKind& kind) {
    std::string text = "make " + std::to_string(kind.quantity);
    if (!kind.hasMirrorTwins) {
        return text;
    }
    const ResolvedPart& drawn = resolved.parts[kind.parts.front()];
    const auto asDrawn = std::count_if(kind.parts.begin(), kind.parts.end(), [&](std::size_t i) {
        return resolved.parts[i].frame.isRightHanded() == drawn.frame.isRightHanded();
    });
    const Hand other = drawn.hand == Hand::Left ? Hand::Right : Hand::Left;
    const auto named = [](Hand hand, Hand drawnHand) {
        return drawnHand == Hand::None ? std::string() : " " + std::string(wordFor(hand));
    };
    return text + ": " + std::to_string(asDrawn) + named(drawn.hand, drawn.hand) + " as drawn, " +
           std::to_string(kind.quantity - static_cast<int>(asDrawn)) + named(other, drawn.hand) +
           " mirrored";
}

std::string materialText(const Piece& piece, const ResolvedPart& part) {
    const auto stock = std::find_if(piece.stocks.begin(), piece.stocks.end(), [&](const Stock& s) {
        return s.name == part.stock;
    });
    if (stock == piece.stocks.end()) {
        return part.stock;
    }
    return stock->name + ": " + stock->species + ", " + std::string(wordFor(stock->cut));
}

namespace {

struct Fitted {
    Sheet drawing;
    double scale = 1.0;
    bool fits = false;
};

// Ways to set a part out at `scale`, the roomiest first.
std::vector<PartStyle> stylesAt(double scale, bool isCompact) {
    std::vector<PartStyle> styles;
    if (isCompact) {
        styles.push_back(PartStyle::compact(scale));
        styles.push_back(PartStyle::compact(scale));
        styles.back().largestEnd = 26.0;
    } else {
        styles.emplace_back();
        styles.back().scale = scale;
    }
    std::vector<PartStyle> all;
    for (PartStyle& style : styles) {
        style.withSections = true;
        for (const SectionPlace place :
             {SectionPlace::Beside, SectionPlace::WithEnds, SectionPlace::Below}) {
            style.sectionPlace = place;
            all.push_back(style);
        }
    }
    return all;
}

// The drawing at the scale asked for, or at the largest standard one that fits: in full lettering
// down to a fifth, else closer set. Where nothing fits, the smallest.
Fitted fitDrawing(const Piece& piece,
                  const ResolvedPiece& resolved,
                  const PartKind& kind,
                  double asked,
                  Vec2 room,
                  const TextMetrics& metrics) {
    constexpr double kLeastInFull = 0.2;
    const std::vector<double> scales =
        asked > 0.0 ? std::vector<double>{asked} : standardScales(piece.unit);
    Fitted fitted;
    for (const bool isCompact : {false, true}) {
        for (const double scale : scales) {
            if (!isCompact && asked <= 0.0 && scale < kLeastInFull) {
                break;
            }
            for (const PartStyle& style : stylesAt(scale, isCompact)) {
                fitted = {drawPart(piece, resolved, kind, style, metrics), scale, false};
                if (fitted.drawing.size.x <= room.x && fitted.drawing.size.y <= room.y) {
                    fitted.fits = true;
                    return fitted;
                }
            }
        }
    }
    return fitted;
}

void addLegend(Rect area, std::vector<Op>& ops) {
    constexpr double kHeight = 2.5;
    constexpr double kRow = 5.8;
    const double x = area.min.x + 6.0;
    const double words = x + 9.0;
    double y = area.min.y + 5.5;
    const auto say = [&](const std::string& text) {
        ops.push_back(TextOp{{words, y + kHeight / 2.0}, text, kHeight, Align::Left, false, false});
        y += kRow;
    };
    ops.push_back(faceSideMark({x, y - 3.0}, 5.5));
    say("face side: mark from here");
    ops.push_back(faceEdgeMark({x, y + 1.8}, 3.6, true));
    say("face edge: and from here");
    const auto mouth = [&](bool isThrough) {
        const Vec2 min{x - 3.5, y - 1.5};
        const Vec2 max{x + 3.5, y + 1.5};
        ops.push_back(Stroke{{min, {max.x, min.y}, max, {min.x, max.y}, min}, LineRole::Dimension});
        for (Op& op : mouthDiagonals(min, max, isThrough)) {
            ops.push_back(std::move(op));
        }
    };
    mouth(true);
    say("mortise right through");
    mouth(false);
    say("blind mortise");
    for (Op& op : grainArrow({x, y}, 7.0)) {
        ops.push_back(std::move(op));
    }
    say("the grain");
}

}  // namespace

ScaledSheet scaledPartSheet(const Piece& piece,
                            const ResolvedPiece& resolved,
                            const PartKind& kind,
                            const SheetFrame& frame,
                            const TextMetrics& metrics) {
    const Rect space = drawingSpace(frame.paper);
    constexpr double kClear = 3.0;
    const Vec2 room = space.size() - Vec2{2.0 * kClear, 2.0 * kClear};
    Fitted fitted = fitDrawing(piece, resolved, kind, frame.scale, room, metrics);
    const ResolvedPart& part = resolved.parts[kind.parts.front()];

    Sheet sheet;
    sheet.title = kind.name;
    sheet.size = frame.paper;
    TitleBlock block;
    block.title = kind.name;
    block.piece = piece.name;
    block.quantity = quantityText(resolved, kind);
    block.material = materialText(piece, part);
    block.size = finishedSize(piece, part);
    block.units = unitsOf(piece);
    block.scale = scaleText(fitted.scale);
    block.date = frame.date;
    block.sheet = sheetNumber(frame);
    block.isThirdAngle = piece.unit == Unit::Inch;
    sheet.ops = frameAndTitle(frame.paper, block, metrics);

    const Rect inner = innerFrame(frame.paper);
    if (inner.size().x >= kTitleWidth + 60.0) {
        addLegend({{inner.min.x, inner.max.y - kTitleHeight}, inner.max}, sheet.ops);
    }
    const Vec2 centred = (space.min + space.max - fitted.drawing.size) * 0.5;
    move(fitted.drawing.ops, {std::max(centred.x, space.min.x), std::max(centred.y, space.min.y)});
    sheet.ops.insert(sheet.ops.end(),
                     std::make_move_iterator(fitted.drawing.ops.begin()),
                     std::make_move_iterator(fitted.drawing.ops.end()));
    return {std::move(sheet), fitted.scale, fitted.fits};
}

Sheet partSheet(const Piece& piece,
                const ResolvedPiece& resolved,
                const PartKind& kind,
                const SheetFrame& frame,
                const TextMetrics& metrics) {
    return scaledPartSheet(piece, resolved, kind, frame, metrics).sheet;
}

}  // namespace shoulderline
