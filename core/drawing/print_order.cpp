#include "core/drawing/print_order.h"

#include <array>
#include <utility>

#include "core/drawing/patterns.h"
#include "core/drawing/story.h"
#include "core/drawing/strips.h"

namespace shoulderline {

namespace {

LengthStyle styleIn(PrintUnits units, const LengthStyle& own) {
    const bool isInches = unitOf(own) == Unit::Inch;
    const LengthStyle inches = isInches ? own : LengthStyle::fractions(32);
    const LengthStyle millimetres = isInches ? LengthStyle::millimetres(1) : own;
    switch (units) {
        case PrintUnits::AsPiece:
            return own;
        case PrintUnits::Fractions:
            return own.kind == LengthStyle::Kind::Fractions ? own : LengthStyle::fractions(32);
        case PrintUnits::DecimalInches:
            return own.kind == LengthStyle::Kind::DecimalInches ? own
                                                                : LengthStyle::decimalInches(3);
        case PrintUnits::Millimetres:
            return millimetres;
        case PrintUnits::InchesAndMillimetres:
            return inches.inBothUnits();
        case PrintUnits::MillimetresAndInches:
            return millimetres.inBothUnits();
    }
    return own;
}

}  // namespace

bool isFullSize(PrintKind kind) {
    return kind == PrintKind::PartsFullSize || kind == PrintKind::PieceFullSize ||
           kind == PrintKind::Patterns || kind == PrintKind::Rods || kind == PrintKind::Story;
}

bool hasScale(PrintKind kind) {
    return kind == PrintKind::PartSheets || kind == PrintKind::PieceSheet ||
           kind == PrintKind::Pictorial || kind == PrintKind::Assemblies;
}

std::optional<PrintUnits> printUnitsFrom(std::string_view word) {
    static constexpr std::array<std::pair<std::string_view, PrintUnits>, 6> kWords{
        {{"as-piece", PrintUnits::AsPiece},
         {"fractions", PrintUnits::Fractions},
         {"decimal", PrintUnits::DecimalInches},
         {"mm", PrintUnits::Millimetres},
         {"in-mm", PrintUnits::InchesAndMillimetres},
         {"mm-in", PrintUnits::MillimetresAndInches}}};
    for (const auto& [known, units] : kWords) {
        if (known == word) {
            return units;
        }
    }
    return std::nullopt;
}

PrintJob printJob(const Piece& piece,
                  const ResolvedPiece& resolved,
                  const PrintOrder& order,
                  const TextMetrics& metrics) {
    const LengthStyle style = styleIn(order.units, piece.style);
    Piece lettered;
    if (style != piece.style) {
        lettered = piece;
        lettered.style = style;
    }
    const Piece& shown = style != piece.style ? lettered : piece;
    const Paper& paper = order.paper;
    const std::string& date = order.date;
    switch (order.kind) {
        case PrintKind::PartsFullSize:
            return fullSizeJob(shown, resolved, order.parts, paper, order.tiles, date, metrics);
        case PrintKind::PartSheets:
            return sheetJob(
                shown, resolved, true, paper, order.scale, date, metrics, order.tiles.held);
        case PrintKind::PieceFullSize:
            return fullSizePieceJob(shown, resolved, paper, order.tiles, date, metrics);
        case PrintKind::PieceSheet:
            return sheetJob(
                shown, resolved, false, paper, order.scale, date, metrics, order.tiles.held);
        case PrintKind::Pictorial:
            return pictorialJob(
                shown, resolved, paper, order.scale, date, metrics, order.tiles.held);
        case PrintKind::Assemblies:
            return assembliesJob(
                shown, resolved, paper, order.scale, date, metrics, order.tiles.held);
        case PrintKind::Set:
            return setJob(shown, resolved, paper, date, metrics, order.tiles.held);
        case PrintKind::Patterns:
            return patternsJob(shown, resolved, paper, order.tiles, date, metrics);
        case PrintKind::Rods:
            return rodsJob(shown, resolved, paper, order.tiles, date, metrics);
        case PrintKind::Story:
            return storyJob(shown, resolved, paper, order.tiles, date, metrics);
    }
    return {};
}

}  // namespace shoulderline
