#include "core/drawing/part_sheet.h"

#include <algorithm>
#include <map>
#include <optional>
#include <tuple>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/free_space.h"
#include "core/drawing/part_drawing.h"
#include "core/drawing/part_layout.h"
#include "core/drawing/part_legend.h"
#include "core/drawing/part_sizes.h"
#include "core/drawing/scales.h"
#include "core/drawing/title_block.h"

namespace shoulderline {

namespace {

// ": 1 front cleat, 1 back cleat" where they have several names; empty else.
std::string eachText(const ResolvedPiece& resolved, const PartKind& kind) {
    std::vector<std::pair<std::string, int>> each;
    for (const std::size_t i : kind.parts) {
        const std::string& name = resolved.parts[i].of;
        const auto found = std::find_if(
            each.begin(), each.end(), [&](const auto& one) { return one.first == name; });
        if (found == each.end()) {
            each.emplace_back(name, 1);
        } else {
            ++found->second;
        }
    }
    std::string text;
    for (const auto& [name, count] : each) {
        text += (text.empty() ? ": " : ", ") + std::to_string(count) + " " + name;
    }
    return each.size() > 1 ? text : std::string();
}

}  // namespace

std::string quantityText(const ResolvedPiece& resolved, const PartKind& kind) {
    std::string text = "make " + std::to_string(kind.quantity);
    if (!kind.hasMirrorTwins) {
        return text + eachText(resolved, kind);
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

// Ways to set a part out at `scale`, the roomiest first.
std::vector<PartStyle> stylesAt(double scale, bool isCompact) {
    const PartStyle plain = isCompact ? PartStyle::compact(scale) : PartStyle();
    const std::vector<double> ends =
        isCompact ? std::vector<double>{62.0, 42.0, 26.0} : std::vector<double>{62.0, 36.0};
    std::vector<PartStyle> styles;
    for (const double end : ends) {
        styles.push_back(plain);
        styles.back().scale = scale;
        styles.back().largestEnd = end;
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

// At that many times the scale one more sheet is worth having.
constexpr double kWorthASheet = 2.0;

// Of a sheet's room: less is little to have on it.
constexpr double kLittle = 0.2;

// Whether a part may be spread over these sheets rather than be drawn at `other`: none has little
// on it, or the other is too small to read well.
bool isWellFilled(const PartOnSheets& spread, double other) {
    constexpr double kReadable = 0.19;  // 1 : 5
    return !spread.hasSparse || other < kReadable;
}

// Finds how a part goes on sheets of one size.
class SettingOut {
  public:
    SettingOut(const Piece& piece,
               const ResolvedPiece& resolved,
               const PartKind& kind,
               Vec2 room,
               const TextMetrics& metrics)
        : piece_(piece),
          resolved_(resolved),
          kind_(kind),
          room_(room),
          metrics_(metrics),
          lines_(resolved.parts[kind.parts.front()]) {}

    // In projection on one sheet, at the largest of `scales` that allows it; the drawing at the
    // last of them where none does.
    [[nodiscard]] PartOnSheets inProjection(const std::vector<double>& scales, bool isCompact) {
        PartOnSheets out;
        for (const double scale : scales) {
            for (const PartStyle& style : stylesAt(scale, isCompact)) {
                Sheet drawing =
                    setInProjection(blocksIn(style, isCompact), piece_, kind_, style, metrics_);
                out.fits = drawing.size.x <= room_.x && drawing.size.y <= room_.y;
                out.scale = scale;
                out.drawings = {std::move(drawing)};
                if (out.fits) {
                    return out;
                }
            }
        }
        return out;
    }

    // Views wherever they find room: on the fewest sheets, and then at the largest scale, but on
    // one more where it is twice as large; none where that takes more than `most`.
    [[nodiscard]] std::optional<PartOnSheets> packed(const std::vector<double>& scales,
                                                     bool isCompact,
                                                     std::size_t most,
                                                     bool isThrifty = false) {
        std::optional<PartOnSheets> best;
        for (const double scale : scales) {
            for (PartStyle& style : stylesAt(scale, isCompact)) {
                style.isThrifty = isThrifty;
                if (style.sectionPlace != SectionPlace::Beside) {
                    continue;  // says nothing of where these go
                }
                std::vector<Sheet> sheets =
                    setOnSheets(blocksIn(style, isCompact), piece_, kind_, style, room_, metrics_);
                if (sheets.empty() || sheets.size() > most) {
                    continue;
                }
                PartOnSheets out{std::move(sheets), scale, {}, true, false};
                out.hasSparse = leastFilled(out.drawings) < kLittle || hasSheetWithoutView(out);
                if (!best || isBetterSetOut(out, *best)) {
                    best = std::move(out);
                }
            }
        }
        return best;
    }

    // What takes several sheets, at its scale on fewer of them: closer set, or lettered a size
    // smaller too. None where neither does.
    [[nodiscard]] std::optional<PartOnSheets> onFewer(const PartOnSheets& spread) {
        const std::size_t most = spread.drawings.size() - 1;
        if (most == 0) {
            return std::nullopt;
        }
        std::optional<PartOnSheets> fewer = packed({spread.scale}, false, most, true);
        return fewer ? fewer : packed({spread.scale}, true, most, true);
    }

    // The share of the room that the drawing takes of the sheet with the least on it; 1 where all
    // is on one sheet.
    [[nodiscard]] double leastFilled(const std::vector<Sheet>& drawings) const {
        double least = 1.0;
        for (const Sheet& drawing : drawings) {
            least = std::min(least, drawing.size.x * drawing.size.y / (room_.x * room_.y));
        }
        return drawings.size() > 1 ? least : 1.0;
    }

  private:
    // Whether one of several sheets has sections, tables and words alone, which belong beside a
    // view.
    [[nodiscard]] static bool hasSheetWithoutView(const PartOnSheets& out) {
        return out.drawings.size() > 1 &&
               std::any_of(out.drawings.begin(), out.drawings.end(), [](const Sheet& sheet) {
                   return !showsFace(sheet.ops, Face::FaceSide) &&
                          !showsFace(sheet.ops, Face::BackSide) &&
                          !showsFace(sheet.ops, Face::FaceEdge) &&
                          !showsFace(sheet.ops, Face::BackEdge);
               });
    }

    // Its blocks in one style, drawn once, whatever way they are then set.
    [[nodiscard]] const PartDrawingBlocks& blocksIn(const PartStyle& style, bool isCompact) {
        const auto key = std::tuple(style.scale, isCompact, style.largestEnd);
        const auto found = blocks_.find(key);
        return found != blocks_.end()
                   ? found->second
                   : blocks_
                         .emplace(key,
                                  drawBlocks(piece_, resolved_, kind_, style, lines_, metrics_))
                         .first->second;
    }

    const Piece& piece_;
    const ResolvedPiece& resolved_;
    const PartKind& kind_;
    Vec2 room_;
    const TextMetrics& metrics_;
    PartLines lines_;
    std::map<std::tuple<double, bool, double>, PartDrawingBlocks> blocks_;
};

// Sections that are marked on another sheet say on which: the first that shows the face side; and
// tables that stand on another than their points, likewise.
void nameSheetsOf(const std::vector<Sheet>& all,
                  std::size_t index,
                  int number,
                  std::vector<Op>& ops) {
    const auto sheetOf = [&](Face face) {
        const auto shown = std::find_if(
            all.begin(), all.end(), [&](const Sheet& sheet) { return showsFace(sheet.ops, face); });
        const int at = static_cast<int>(shown - all.begin());
        return number > 0 ? "sheet " + std::to_string(number - static_cast<int>(index) + at)
                          : "sheet " + std::to_string(at + 1) + " of " + std::to_string(all.size());
    };
    const auto name = [&](TextOp& text, std::string_view words, Face face) {
        if (text.text == words) {
            text.text.replace(text.text.find("sheet 000"), std::string::npos, sheetOf(face));
        }
    };
    for (Op& op : ops) {
        if (auto* text = std::get_if<TextOp>(&op)) {
            name(*text, kMarkedOnSheet, Face::FaceSide);
            for (const Face face :
                 {Face::FaceSide, Face::BackSide, Face::FaceEdge, Face::BackEdge}) {
                name(*text, pointsOnSheet(face), face);
            }
        }
    }
}

}  // namespace

PartOnSheets setOutPart(const Piece& piece,
                        const ResolvedPiece& resolved,
                        const PartKind& kind,
                        Vec2 paper,
                        double scale,
                        const TextMetrics& metrics) {
    constexpr double kClear = 3.0;
    constexpr double kLeastInFull = 0.1;
    const Vec2 room = drawingSpace(paper).size() - Vec2{2.0 * kClear, 2.0 * kClear};
    SettingOut setting(piece, resolved, kind, room, metrics);
    std::vector<double> scales =
        scale > 0.0 ? std::vector<double>{scale} : standardScales(piece.unit);
    std::vector<double> large = scales;
    if (scale <= 0.0) {
        std::erase_if(large, [](double s) { return s < kLeastInFull; });
    }
    constexpr std::size_t kAny = 100;
    PartOnSheets out = setting.inProjection(large, false);
    std::optional<PartOnSheets> spread;
    if (!out.fits) {
        spread = setting.packed(large, false, kAny);
    } else {
        std::erase_if(large, [&](double s) { return s < kWorthASheet * out.scale - 1e-9; });
        spread = setting.packed(large, false, 2);
    }
    if (spread) {
        if (std::optional<PartOnSheets> fewer = setting.onFewer(*spread)) {
            spread = std::move(fewer);
        }
    }
    if (out.fits && spread && !isWellFilled(*spread, out.scale)) {
        spread.reset();
    }
    if (!out.fits && !spread) {
        out = setting.inProjection(scales, true);
    }
    if (!out.fits && !spread) {
        spread = setting.packed(scales, true, kAny);
    }
    if (spread) {
        out = std::move(*spread);
    }
    out.paper = paper;
    return out;
}

bool isBetterSetOut(const PartOnSheets& a, const PartOnSheets& b) {
    if (a.fits != b.fits) {
        return a.fits;
    }
    const auto isWorthIt = [](const PartOnSheets& larger, const PartOnSheets& smaller) {
        return isWellFilled(larger, smaller.scale) &&
               larger.scale >= kWorthASheet * smaller.scale - 1e-9 &&
               larger.drawings.size() <= smaller.drawings.size() + 1;
    };
    if (isWorthIt(a, b) || isWorthIt(b, a)) {
        return a.scale > b.scale;
    }
    return a.drawings.size() != b.drawings.size() ? a.drawings.size() < b.drawings.size()
                                                  : a.scale > b.scale;
}

std::string titleOf(const PartKind& kind, std::size_t index, std::size_t count) {
    return count > 1 ? kind.name + ", " + std::to_string(index + 1) + " of " + std::to_string(count)
                     : kind.name;
}

Sheet framedPartSheet(const Piece& piece,
                      const ResolvedPiece& resolved,
                      const PartKind& kind,
                      PartOnSheets setOut,
                      std::size_t index,
                      const SheetFrame& frame,
                      const TextMetrics& metrics) {
    const ResolvedPart& part = resolved.parts[kind.parts.front()];
    Sheet sheet;
    sheet.title = titleOf(kind, index, setOut.drawings.size());
    sheet.size = setOut.paper;
    TitleBlock block = titleBlock(sheet.title, piece, frame);
    block.quantity = quantityText(resolved, kind);
    block.material = materialText(piece, part);
    block.size = finishedSize(piece, part);
    block.scale = scaleText(setOut.scale);
    sheet.ops = frameAndTitle(setOut.paper, block, metrics);

    const Rect inner = innerFrame(setOut.paper);
    nameSheetsOf(setOut.drawings, index, frame.number, setOut.drawings[index].ops);
    Sheet& drawing = setOut.drawings[index];
    const Vec2 besideTitle{inner.min.x, inner.max.y - kTitleHeight};
    std::vector<Op> legend = legendOf(drawing.ops, besideTitle);
    const bool isBesideTitle = inner.size().x >= kTitleWidth + 60.0;
    const Rect space = drawingSpace(setOut.paper);
    const Vec2 centred = (space.min + space.max - drawing.size) * 0.5;
    move(drawing.ops, {std::max(centred.x, space.min.x), std::max(centred.y, space.min.y)});
    if (!isBesideTitle && !legend.empty()) {
        // Where the title block takes the whole width, wherever the drawing leaves room.
        const FreeSpace taken(drawing.ops, metrics);
        std::optional<Vec2> place;
        for (int columns = 1; columns <= 3 && !place; ++columns) {
            legend = legendOf(drawing.ops, besideTitle, columns);
            const Rect bounds = boundsOf(legend, metrics);
            place = taken.placeFor(bounds.size(), space);
            if (place) {
                move(legend, *place - bounds.min);
            }
        }
        if (!place) {
            legend.clear();
        }
    }
    append(sheet.ops, std::move(legend));
    sheet.ops.insert(sheet.ops.end(),
                     std::make_move_iterator(drawing.ops.begin()),
                     std::make_move_iterator(drawing.ops.end()));
    return sheet;
}

std::vector<Sheet> partSheets(const Piece& piece,
                              const ResolvedPiece& resolved,
                              const PartKind& kind,
                              SheetFrame frame,
                              const TextMetrics& metrics) {
    const PartOnSheets out = setOutPart(piece, resolved, kind, frame.paper, frame.scale, metrics);
    std::vector<Sheet> sheets;
    for (std::size_t i = 0; i < out.drawings.size(); ++i) {
        sheets.push_back(framedPartSheet(piece, resolved, kind, out, i, frame, metrics));
        frame.number += frame.number > 0 ? 1 : 0;
    }
    return sheets;
}

}  // namespace shoulderline
